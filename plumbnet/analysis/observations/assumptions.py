"""A network to what its answer takes for granted: of parts of which the file says nothing, and of the method."""

from collections.abc import Iterator, Mapping

from plumbnet.analysis.observations.idle_pumps import pumps_assumed
from plumbnet.layout.model import Boosting, System, with_article
from plumbnet.network import Network
from plumbnet.network.piping import Node

GAS = "the gas in a tank stays at one temperature; it is warmed slowly"
"""How tanks are sized and settled: isothermal; taken of every tank."""
BOOSTED = "a booster pump runs for the pressure at rest and stands still for growth"
"""What is taken of a pump that raises the pressure."""
COLD_PIPES = "water in a hot pipe that no pump drives round stays cold"
"""What is taken of hot pipes outside the loops of a heater."""


def assumed(network: Network, hot: frozenset[Node]) -> Mapping[str, tuple[str, ...]]:
    """What was taken where the file says nothing, and by the calculation, each with the parts it was taken for.

    `hot` are the nodes on the hot side of heaters.
    """
    parts = network.piping.system.parts
    taken = {
        BOOSTED: tuple(name for name, part in parts.items() if any(isinstance(p, Boosting) for p in part.passages())),
        GAS: tuple(name for name, part in parts.items() if part.cushion() is not None),
        COLD_PIPES: tuple(_beside_cold_pipes(network, hot)),
    }
    unsaid = _unsaid(network.piping.system)
    of_pumps: dict[str, list[str]] = {}
    for words, name in pumps_assumed(network):
        of_pumps.setdefault(words, []).append(name)
    unsaid |= {words: (*unsaid.get(words, ()), *names) for words, names in of_pumps.items()}
    return unsaid | {words: names for words, names in taken.items() if names}


def _beside_cold_pipes(network: Network, hot: frozenset[Node]) -> Iterator[str]:
    """The heaters that fire with every fixture shut, where some hot pipe holds water that none of them warms."""
    piping = network.piping
    firing = [heated for heated in network.heated if not heated.is_idle]
    warmed = {piece.name for heated in firing for piece in heated.pieces}
    beside = ((number, pipe) for number, pipe in enumerate(piping.system.pipes) if f"pipe {number}" not in warmed)
    if any(pipe.volume_m3 > 0.0 and not hot.isdisjoint(piping.pipes[number]) for number, pipe in beside):
        yield from (heated.name for heated in firing)


def _unsaid(system: System) -> dict[str, tuple[str, ...]]:
    """What each kind is taken to be where its author says nothing, with the parts it was taken for."""
    found: dict[str, list[str]] = {}
    for name, part in system.parts.items():
        for field in part.unsaid():
            words = f"{with_article(part.kind).replace('_', ' ')} {part.taken(field)}"
            found.setdefault(words, []).append(name)
    return {words: tuple(names) for words, names in found.items()}
