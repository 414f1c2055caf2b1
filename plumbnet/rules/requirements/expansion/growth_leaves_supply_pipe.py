"""Growth that goes back further than the building's own supply pipe, or warms that pipe too far."""

from collections.abc import Iterator

from plumbnet.layout.units import VOLUME
from plumbnet.rules.facts import Facts, ReturnFacts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import NOT_ASKED, Answer, Breach, Measured, Met, NotApplicable
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.ruling import WayBackRuling
from plumbnet.rules.sentences import listed

BAD = """\
plumbnet: 1
rules: uk-2010
parts:
  street: {kind: main, pressure: 3 bar}
  stop: valve
  heater:  # <- growth-leaves-supply-pipe
    {kind: storage_heater, volume: 120 L, setpoint: 60 degC, relief: {pressure: 7 bar, temperature: 95 degC}}
  tap: fixture
runs:
  - street -> stop
  - {path: stop -> heater, pipe: copper-B 22, length: 5 m}
  - heater -> tap.hot
"""

GOOD = BAD.replace("  # <- growth-leaves-supply-pipe", "").replace("22, length: 5 m", "28, length: 12 m")


@requirement(
    "growth-leaves-supply-pipe",
    Severity.ERROR,
    bad=BAD,
    good=GOOD,
    rests_on="way_back",
    asks="Growth that goes back stays in the building's own supply pipe, and leaves it cool.",
    of="ways on which growth goes back to a main",
)
def growth_leaves_supply_pipe(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """Growth goes back further than the building's own supply pipe, or warms the water in it too far.

    Where the rules keep heated water out of the supplier's pipe, an open way is good only if the building's own supply
    pipe holds all of the growth and stays cool. The pipe that touches the main is taken for the supplier's. The store
    is taken as well mixed, which is the safe side. Fit a check with an expansion vessel and an expansion valve, or
    lengthen the pipe.
    """
    ruling = profile.way_back
    if ruling.value != "supply-pipe":
        yield NOT_ASKED
        return
    for growth in facts.returns:
        wrong = _wrong(facts, growth, ruling)
        if growth.store_m3 <= profile.control_for.exempt_volume_m3:
            exempt = facts.volume(profile.control_for.exempt_volume_m3)
            yield NotApplicable(growth.heaters, f"heaters up to {exempt} are exempt")
        elif wrong:
            yield Breach(
                growth.heaters,
                f"{listed(growth.heaters)} {_gives(growth)} {facts.volume(growth.expansion_m3)} back towards "
                f"{growth.main}; {wrong}.",
                "Fit a check in the cold pipe and an expansion vessel behind it, or make the pipe hold enough.",
                Measured(growth.expansion_m3, growth.held_m3, VOLUME),
            )
        else:
            yield Met(growth.heaters, measured=Measured(growth.expansion_m3, growth.held_m3, VOLUME))


def _gives(growth: ReturnFacts) -> str:
    return "gives" if len(growth.heaters) == 1 else "together give"


def _wrong(facts: Facts, growth: ReturnFacts, ruling: WayBackRuling) -> str:
    """What is wrong with the way back; nothing where it holds the growth and stays cool."""
    held = facts.volume(growth.held_m3)
    if growth.mixed_k is None:
        return f"the building's own supply pipe holds {held} of it"
    if ruling.warmest_k is not None and growth.mixed_k > ruling.warmest_k:
        return (
            f"its own supply pipe holds that, but its {held} come to {facts.temperature(growth.mixed_k)}, above the "
            f"{facts.temperature(ruling.warmest_k)} allowed"
        )
    return ""
