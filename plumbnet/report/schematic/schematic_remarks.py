"""A report to what the drawing says beyond the piping: trapped zones, what stops the water, the way out."""

from collections.abc import Iterator, Sequence

from networkx.utils import UnionFind

from plumbnet.analysis import Report
from plumbnet.drawing.items import Shading
from plumbnet.network import Network
from plumbnet.network.piping import Zone
from plumbnet.rules import HeaterFacts, Verdict

_SHADED = (Verdict.SEALED, Verdict.TRAPPED)
"""Verdicts whose zones are shaded, the worst first."""
_MOST_NAMED = 3
_LONGEST_NAME = 30


def stops(report: Report) -> frozenset[str]:
    """The devices that stand against the water of some heater."""
    return frozenset(name for heater in report.heaters for names in heater.stopped_by.sets for name in names)


def ways(report: Report) -> tuple[tuple[str, ...], ...]:
    """The parts on the way out of each open heater, from the heater on."""
    open_ways = (heater.way_out for heater in report.heaters if heater.verdict is Verdict.OPEN)
    return tuple(dict.fromkeys(rung.way for rung in open_ways if rung is not None))


def shadings(report: Report) -> Iterator[Shading]:
    """The zones in trouble, each with those that a pump without a check joins to it."""
    network = report.network
    joined = _joined(network)
    worst: dict[Zone, Verdict] = {}
    heaters: dict[Zone, list[str]] = {}
    for verdict in _SHADED:
        for heater in report.heaters:
            if heater.verdict is verdict:
                for zone in dict.fromkeys(joined[each] for each in _zones_of(heater, network)):
                    worst.setdefault(zone, verdict)
                    heaters.setdefault(zone, []).append(heater.name)
    ports = network.piping.ports
    for zone in sorted(worst):
        members = (ports[node] for node, its_zone in enumerate(network.zoning.zone_of) if joined[its_zone] == zone)
        yield Shading(worst[zone], tag(worst[zone], heaters[zone]), frozenset(members))


def tag(verdict: Verdict, heaters: Sequence[str]) -> str:
    """The words that mark a zone: its verdict, and the heaters it is about."""
    names = [name if len(name) <= _LONGEST_NAME else f"{name[: _LONGEST_NAME - 3]}..." for name in heaters]
    more = ["..."] if len(names) > _MOST_NAMED else []
    return f"{verdict.value.upper()}: {', '.join([*names[:_MOST_NAMED], *more])}"


def _joined(network: Network) -> dict[Zone, Zone]:
    """For every zone the first of those with whose water its own goes either way: pumps without a check join them."""
    zoning = network.zoning
    level: UnionFind[Zone] = UnionFind(range(zoning.zone_count))
    for gate in network.piping.gates:
        if gate.is_joint:
            level.union(zoning.zone_of[gate.start], zoning.zone_of[gate.end])
    return {zone: min(zones) for zones in level.to_sets() for zone in zones}


def _zones_of(heater: HeaterFacts, network: Network) -> list[Zone]:
    """The zone a heater heats, and the one its answer stands in."""
    piping, zone_of = network.piping, network.zoning.zone_of
    heated = next(each for each in network.heated if each.name == heater.name)
    found = {zone_of[heated.inlet]}
    if heater.stands_at and heater.stands_at != heater.name:
        found.add(zone_of[next(piping.nodes_of(heater.stands_at))])
    return sorted(found)
