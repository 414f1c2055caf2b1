"""A structure to what of it is alike: branches by their class, and shafts; names and lengths do not count."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

import networkx as nx

from plumbnet.drawing.items import Link
from plumbnet.drawing.palette import Service
from plumbnet.drawing.riser.likeness.graph_classes import graph_classes
from plumbnet.drawing.riser.structure import Component, Shaft, Structure, chains_in

_CENTIMETRES = 2


@dataclass(frozen=True, slots=True)
class Likeness:
    """The class of each branch and of each shaft, named by the number of the first in it."""

    branches: Mapping[int, int]
    shafts: tuple[int, ...]

    def branches_like(self, number: int) -> list[int]:
        """The branches of the class of one, itself included, in the order of the file."""
        return [each for each, first in self.branches.items() if first == self.branches[number]]


def likeness_of(structure: Structure) -> Likeness:
    """What is alike in a building: whatever is drawn and told of it, its heights above its foot, its pipes."""
    branches = [component for component in structure.components if not component.is_plant]
    inner = _links_inside(structure)
    first = graph_classes([_branch_graph(structure, branch, inner[branch.number]) for branch in branches])
    classes = {branch.number: branches[number].number for branch, number in zip(branches, first, strict=True)}
    return Likeness(classes, tuple(graph_classes([_shaft_graph(structure, shaft) for shaft in structure.shafts])))


def _links_inside(structure: Structure) -> Mapping[int, list[Link]]:
    """The links inside each component."""
    found: dict[int, list[Link]] = defaultdict(list)
    for link in structure.diagram.links:
        homes = [structure.home.get(end.part) for end in link.ends]
        if homes[0] is not None and homes[0] is homes[1] and link.number not in structure.upright:
            found[homes[0].number].append(link)
    return found


def _branch_graph(structure: Structure, branch: Component, links: Iterable[Link]) -> "nx.MultiDiGraph[str]":
    foot = min((structure.height[each.end.part] for each in branch.ends), default=0.0)
    hung: dict[str, set[tuple[str, str]]] = defaultdict(set)
    for each in branch.ends:
        hung[each.end.part].add((each.end.port, each.chain.service.value))
    graph: nx.MultiDiGraph[str] = nx.MultiDiGraph()
    for name in branch.members:
        services = sorted(hung[name])
        supply = [each for each in services if each[1] != Service.RETURN.value]
        graph.add_node(name, label=(_part(structure, name, foot), str(_ports(structure, name, supply or services))))
    _add_links(structure, graph, links)
    return graph


def _ports(structure: Structure, name: str, hung: list[tuple[str, str]]) -> list[tuple[str, str]]:
    """The services of risers at a part; at a joint, which is the same all round, without its ports."""
    if structure.diagram.items[name].symbol.is_joint:
        return sorted({("", service) for _, service in hung})
    return hung


def _shaft_graph(structure: Structure, shaft: Shaft) -> "nx.MultiDiGraph[str]":
    """All of a shaft, with the parts of plants from which it starts under their own names."""
    graph: nx.MultiDiGraph[str] = nx.MultiDiGraph()
    chains = chains_in(shaft.risers)
    inside = [name for number in shaft.branches for name in structure.components[number].members]
    for name in (*inside, *(device for chain in chains for device in chain.devices)):
        graph.add_node(name, label=(_part(structure, name, 0.0), ""))
    for end in (end for chain in chains for end in chain.ends if end.part not in graph):
        graph.add_node(end.part, label=(end.part, "plant"))
    own = [link for chain in chains for link in chain.links]
    own += [
        link for name in inside for link in structure.diagram.links_at[name] if link.number not in structure.upright
    ]
    _add_links(structure, graph, dict.fromkeys(own))
    return graph


def _add_links(structure: Structure, graph: "nx.MultiDiGraph[str]", links: Iterable[Link]) -> None:
    for link in links:
        ends = ["" if structure.diagram.items[end.part].symbol.is_joint else end.port for end in (link.start, link.end)]
        label = (*ends, link.service.value, structure.building.pipes[link.number])
        graph.add_edge(link.start.part, link.end.part, label=label)


def _part(structure: Structure, name: str, foot_m: float) -> str:
    above = round(structure.height[name] - foot_m, _CENTIMETRES) + 0.0
    return f"{structure.building.parts[name].likeness} at {above}"
