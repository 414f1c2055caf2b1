"""Heights of trunks where only their ends have any: a joint stands as low as the lowest of what it feeds."""

from collections.abc import Mapping
from typing import NamedTuple

import networkx as nx

from plumbnet.drawing.items import BuildingFacts, Diagram
from plumbnet.drawing.palette import Service

TALL_M = 1.8
"""A pipe that climbs less leads to no other storey: a storey's tees lie within it."""
_SEVERAL = 2


class _Span(NamedTuple):
    """From the lowest to the highest of some heights."""

    low: float
    high: float


def trunk_heights(diagram: Diagram, building: BuildingFacts, known: Mapping[str, float]) -> dict[str, float]:
    """Heights in metres of joints and devices in line that have none, but for those of the plant.

    A joint takes the lowest height of what it feeds, the highest where it is fed from above. A header, from which two
    or more risers part, and what leads into one, keep the height of the plant.
    """
    onward: nx.DiGraph[str] = nx.DiGraph()
    onward.add_nodes_from(diagram.items)
    for link in diagram.links:
        if link.service is not Service.RETURN:
            onward.add_edge(link.start.part, link.end.part)
    spans = _spans(diagram, onward, known)
    headers = {name for name in onward if _is_header(diagram, onward, spans, name)}
    heads = [known[name] for name, one in building.parts.items() if one.is_head and name in known]
    top = max(heads, default=0.0)
    found: dict[str, float] = {}
    for name in diagram.items:
        span = spans[name]
        stays = name in headers or any(each in headers or building.parts[each].is_equipment for each in onward[name])
        if span is None or name in known or stays or not is_in_pipe(diagram, name):
            continue
        if not building.parts[name].is_equipment:
            found[name] = span.high if top >= span.high else span.low
    return found


def _spans(diagram: Diagram, onward: "nx.DiGraph[str]", known: Mapping[str, float]) -> dict[str, _Span | None]:
    """Between which heights lies what each part feeds, itself included; None where nothing of it has a height."""
    fed = nx.DiGraph(onward)
    fed.remove_edges_from([(a, b) for a, b in onward.edges if not is_in_pipe(diagram, a)])
    circles = nx.condensation(fed)
    spans: dict[int, _Span | None] = {}
    for circle in reversed(list(nx.topological_sort(circles))):
        heights = [known[name] for name in circles.nodes[circle]["members"] if name in known]
        heights += [height for each in circles.successors(circle) for height in spans[each] or ()]
        spans[circle] = _Span(min(heights), max(heights)) if heights else None
    where: Mapping[str, int] = circles.graph["mapping"]
    return {name: spans[circle] for name, circle in where.items()}


def _is_header(diagram: Diagram, onward: "nx.DiGraph[str]", spans: Mapping[str, _Span | None], name: str) -> bool:
    tall = [span for span in (spans[each] for each in onward[name]) if span and span.high - span.low >= TALL_M]
    return is_in_pipe(diagram, name) and len(tall) >= _SEVERAL


def is_in_pipe(diagram: Diagram, name: str) -> bool:
    """Whether a part is a joint, or stands in line."""
    symbol = diagram.items[name].symbol
    return symbol.is_joint or symbol.is_in_line
