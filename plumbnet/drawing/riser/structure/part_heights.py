"""Heights of all parts for a drawing: as written, else taken over from what stands beside them, else 0."""

from collections import defaultdict
from collections.abc import Collection, Mapping

import networkx as nx

from plumbnet.drawing.items import BuildingFacts, Diagram
from plumbnet.drawing.riser.structure.trunk_heights import is_in_pipe, trunk_heights


def part_heights(diagram: Diagram, building: BuildingFacts) -> dict[str, float]:
    """The height of every part in metres.

    What was left out is that of the nearest part with one, the lower of two; it is 0, as the analysis has it, where
    equipment stands among those without, or nothing near has one. Where no joint beside a fixture has a height, the
    trunks take theirs from what they feed.
    """
    known = {name: one.height_m for name, one in building.parts.items() if one.height_m is not None}
    if not any(name in known for name in _beside_uses(diagram, building, known)):
        known |= trunk_heights(diagram, building, known)
    graph: nx.Graph[str] = nx.Graph()
    graph.add_nodes_from(diagram.items)
    graph.add_edges_from((link.start.part, link.end.part) for link in diagram.links)
    rest = graph.subgraph(name for name in graph if name not in known)
    found = dict(known)
    for group in nx.connected_components(rest):
        if not any(building.parts[name].is_equipment for name in group):
            found |= _taken_over(graph, group, known)
    return {name: found.get(name, 0.0) for name in diagram.items}


def _beside_uses(diagram: Diagram, building: BuildingFacts, known: Mapping[str, float]) -> list[str]:
    """What stands in the pipes to fixtures with a height."""
    uses = [name for name, one in building.parts.items() if one.is_use and name in known]
    beside = (link.far(name).part for name in uses for link in diagram.links_at[name])
    return [name for name in beside if is_in_pipe(diagram, name)]


def _taken_over(graph: "nx.Graph[str]", group: Collection[str], known: Mapping[str, float]) -> dict[str, float]:
    """The heights nearest to each of a group, rim by rim from the parts round it."""
    found: dict[str, float] = {}
    rim = {name: known[name] for member in group for name in graph[member] if name in known}
    while rim:
        following: dict[str, list[float]] = defaultdict(list)
        for name, height in rim.items():
            for beside in graph[name]:
                if beside in group and beside not in found:
                    following[beside].append(height)
        rim = {name: min(heights) for name, heights in following.items()}
        found |= rim
    return found
