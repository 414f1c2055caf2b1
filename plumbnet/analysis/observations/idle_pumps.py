"""Pumps that a reducer keeps from driving their loop, and what is taken for granted of pumps in loops."""

from collections.abc import Iterator

from plumbnet.network import Network
from plumbnet.rules.facts import HinderedFacts

NO_HEAD = "a circulator adds less than a reducer in its loop asks for"
LIFTS_NOTHING = "a booster pump that feeds its own inlet adds nothing to what stands behind it"
TAKEN_WHOLE = (
    "the loop of a pump was not sought to the end, there being too many pumps or ways in one piece of piping: all the "
    "water that could go round with it counts as driven"
)


def hindered_pumps(network: Network) -> Iterator[HinderedFacts]:
    """Every such pump, in the order of the file."""
    for one in network.circulation.hindered:
        part = network.piping.system.parts[one.pump]
        yield HinderedFacts(
            pump=one.pump,
            reducer=one.why.reducer,
            set_pa=one.why.set_pa,
            at=one.why.at.part,
            comes_pa=one.why.comes_pa,
            stands_pa=one.why.stands_pa,
            head_pa=part.driving_pa(),
            head_helps=one.head_helps,
        )


def pumps_assumed(network: Network) -> Iterator[tuple[str, str]]:
    """What is taken for granted, with the pump of which it is."""
    for one in network.circulation.hindered:
        if one.head_helps and network.piping.system.parts[one.pump].driving_pa() is None:
            yield NO_HEAD, one.pump
    for name in network.standing.circling:
        yield LIFTS_NOTHING, name
    for name in network.circulation.whole:
        yield TAKEN_WHOLE, name
