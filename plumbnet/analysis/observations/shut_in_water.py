"""The network and its heaters to the water that is shut in: zones in which growth is trapped or sealed."""

from collections.abc import Collection, Iterator, Mapping, Sequence

from networkx.utils import UnionFind

from plumbnet.layout.model import End
from plumbnet.network import Network
from plumbnet.network.piping import Node, Zone
from plumbnet.rules.facts import HeaterFacts, ShutInFacts, Verdict

_FROM_WORST = (Verdict.SEALED, Verdict.TRAPPED)


def shut_in(network: Network, heaters: Sequence[HeaterFacts]) -> Iterator[ShutInFacts]:
    """The zones in trouble, each with those that a pump without a check joins to it. Linear."""
    troubled = [heater for verdict in _FROM_WORST for heater in heaters if heater.verdict is verdict]
    if not troubled:
        return
    joined = _joined(network)
    inlets = {heated.name: heated.inlet for heated in network.heated}
    of_zone: dict[Zone, list[HeaterFacts]] = {}
    for heater in troubled:
        nodes = _nodes_of(heater, network, inlets)
        for zone in dict.fromkeys(joined[each] for each in sorted(network.zoning.zone_of[node] for node in nodes)):
            of_zone.setdefault(zone, []).append(heater)
    ends = _ends(network, joined, of_zone)
    for zone, own in sorted(of_zone.items()):
        yield ShutInFacts(own[0].verdict, tuple(heater.name for heater in own), frozenset(ends[zone]))


def _joined(network: Network) -> dict[Zone, Zone]:
    """For every zone the first of those with whose water its own goes either way: pumps without a check join them."""
    zoning = network.zoning
    level: UnionFind[Zone] = UnionFind(range(zoning.zone_count))
    for gate in network.piping.gates:
        if gate.is_joint:
            level.union(zoning.zone_of[gate.start], zoning.zone_of[gate.end])
    return {zone: min(zones) for zones in level.to_sets() for zone in zones}


def _nodes_of(heater: HeaterFacts, network: Network, inlets: Mapping[str, Node]) -> Iterator[Node]:
    """Where a heater heats, and where its answer stands."""
    yield inlets[heater.name]
    if heater.stands_at and heater.stands_at != heater.name:
        yield next(network.piping.nodes_of(heater.stands_at))


def _ends(network: Network, joined: Mapping[Zone, Zone], zones: Collection[Zone]) -> dict[Zone, list[End]]:
    """The connections in each of some zones, and in those that are joined to it."""
    found: dict[Zone, list[End]] = {zone: [] for zone in zones}
    for port, zone in zip(network.piping.ports, network.zoning.zone_of, strict=True):
        if joined[zone] in found:
            found[joined[zone]].append(port)
    return found
