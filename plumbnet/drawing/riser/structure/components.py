"""Risers to components: what hangs together on one level without them, a plant or a branch."""

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass

import networkx as nx

from plumbnet.drawing.items import BuildingFacts, Diagram
from plumbnet.drawing.palette import Service
from plumbnet.drawing.riser.structure.riser_chains import Chain
from plumbnet.layout.model import End


@dataclass(frozen=True, slots=True)
class RiserEnd:
    """The end of a riser's chain at a component; `is_low` where the riser goes up from there."""

    chain: Chain
    end: End

    @property
    def is_low(self) -> bool:
        """Whether the riser goes up from here."""
        return self.end == self.chain.low


@dataclass(frozen=True, slots=True)
class Component:
    """What hangs together without the risers: its parts in the order of the file, and the risers that end there."""

    number: int
    members: tuple[str, ...]
    ends: tuple[RiserEnd, ...]
    is_plant: bool
    level: int = 0


def components_of(
    diagram: Diagram, building: BuildingFacts, chains: Sequence[Chain], risers: Sequence[Chain]
) -> tuple[Component, ...]:
    """The components in the order of the file, all on level 0 yet."""
    graph: nx.Graph[str] = nx.Graph()
    upright = {chain.number for chain in risers}
    inside = {device for chain in risers for device in chain.devices}
    graph.add_nodes_from(name for name in diagram.items if name not in inside)
    for chain in chains:
        if chain.number not in upright:
            nx.add_path(graph, [chain.low.part, *chain.devices, chain.high.part])
    place = {name: at for at, name in enumerate(diagram.items)}
    groups = [sorted(group, key=place.__getitem__) for group in nx.connected_components(graph)]
    groups.sort(key=lambda group: place[group[0]])
    home = {name: number for number, group in enumerate(groups) for name in group}
    ends: dict[int, list[RiserEnd]] = defaultdict(list)
    for chain in risers:
        for end in chain.ends:
            ends[home[end.part]].append(RiserEnd(chain, end))
    return tuple(
        Component(number, tuple(members), tuple(ends[number]), _is_plant(building, members, ends[number]))
        for number, members in enumerate(groups)
    )


def _is_plant(building: BuildingFacts, members: Sequence[str], ends: Sequence[RiserEnd]) -> bool:
    """Whether it supplies risers: it holds a source, or equipment and a riser of supply begins in it.

    A flat with a heater of its own stays a branch: the riser passes it.
    """
    if not ends or any(building.parts[name].is_source for name in members):
        return True
    if not any(building.parts[name].is_equipment for name in members):
        return False
    ways: dict[tuple[str, Service], set[tuple[bool, bool]]] = defaultdict(set)
    for each in ends:
        if each.chain.service is not Service.RETURN:
            ways[each.end.part, each.chain.service].add((each.is_low, each.chain.begins_at(each.end)))
    return any(begins for met in ways.values() if {is_low for is_low, _ in met} != {True, False} for _, begins in met)
