"""The network and its heaters to the water of each, and to what of it is shut in: trapped or sealed."""

from collections.abc import Collection, Iterator, Mapping, Sequence

from plumbnet.layout.model import End
from plumbnet.network import Network
from plumbnet.network.graphs import groups
from plumbnet.network.piping import Node
from plumbnet.rules.facts import HeaterFacts, ShutInFacts, Verdict

_FROM_WORST = (Verdict.SEALED, Verdict.TRAPPED)


def shut_in(network: Network, heaters: Sequence[HeaterFacts]) -> Iterator[ShutInFacts]:
    """The zones in trouble, each with those that a pump without a check joins to it. Linear."""
    troubled = [heater for verdict in _FROM_WORST for heater in heaters if heater.verdict is verdict]
    if not troubled:
        return
    joined = _joined(network)
    inlets = {heated.name: heated.inlet for heated in network.heated}
    of_group: dict[int, list[HeaterFacts]] = {}
    for heater in troubled:
        nodes = _nodes_of(heater, network, inlets)
        for group in {joined[network.zoning.zone_of[node]] for node in nodes}:
            of_group.setdefault(group, []).append(heater)
    ends = _ends(network, joined, of_group)
    for group, own in sorted(of_group.items()):
        yield ShutInFacts(own[0].verdict, tuple(heater.name for heater in own), frozenset(ends[group]))


def heater_waters(network: Network, heaters: Sequence[HeaterFacts]) -> Mapping[str, frozenset[End]]:
    """The connections in the water of each heater: its zone, with those that a pump without a check joins to it."""
    joined, zone_of = _joined(network), network.zoning.zone_of
    inlets = {heated.name: heated.inlet for heated in network.heated}
    groups_of = {one.name: {joined[zone_of[node]] for node in _nodes_of(one, network, inlets)} for one in heaters}
    ends = _ends(network, joined, frozenset[int]().union(*groups_of.values()))
    return {name: frozenset(end for group in found for end in ends[group]) for name, found in groups_of.items()}


def _joined(network: Network) -> list[int]:
    """For every zone the group of those with whose water its own goes either way: pumps without a check join them."""
    zone_of = network.zoning.zone_of
    joints = ((zone_of[gate.start], zone_of[gate.end]) for gate in network.piping.gates if gate.is_joint)
    return groups(network.zoning.zone_count, joints)[0]


def _nodes_of(heater: HeaterFacts, network: Network, inlets: Mapping[str, Node]) -> Iterator[Node]:
    """Where a heater heats, and where its answer stands."""
    yield inlets[heater.name]
    if heater.stands_at and heater.stands_at != heater.name:
        yield next(network.piping.nodes_of(heater.stands_at))


def _ends(network: Network, joined: Sequence[int], wanted: Collection[int]) -> dict[int, list[End]]:
    """The connections in the zones of each of some groups."""
    found: dict[int, list[End]] = {group: [] for group in wanted}
    for port, zone in zip(network.piping.ports, network.zoning.zone_of, strict=True):
        if joined[zone] in found:
            found[joined[zone]].append(port)
    return found
