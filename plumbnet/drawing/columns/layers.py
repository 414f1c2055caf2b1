"""A diagram to its layers: nodes in columns from the top down, and the footprint of each station."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from plumbnet.drawing.columns.arcs import arc_graph
from plumbnet.drawing.columns.assignment import assigned_columns
from plumbnet.drawing.columns.footprints import Footprint, Footprints, Tip
from plumbnet.drawing.columns.grid import Grid, grid_of
from plumbnet.drawing.columns.order import order
from plumbnet.drawing.items import Diagram, stacks, without_stacks


@dataclass(frozen=True, slots=True)
class Layers:
    """All that is decided of a drawing but lengths.

    `columns` are the nodes of the grid from the top down, with the wraps among them: a wrap is a waypoint beside a
    station, round which an arc turns that leaves the station on its far side. `wraps` has one for each such tip.
    """

    grid: Grid
    footprints: tuple[Footprint, ...]
    columns: tuple[tuple[int, ...], ...]
    wraps: Mapping[Tip, int]


def layers_of(diagram: Diagram) -> Layers:
    """The layers of a diagram: columns from supply to use, few crossings."""
    mounted = stacks(diagram)
    graph = arc_graph(without_stacks(diagram, mounted))
    grid = grid_of(graph, assigned_columns(graph))
    columns = order(grid)
    return wrapped(grid, columns, Footprints(grid, columns, diagram, mounted).all())


def wrapped(grid: Grid, columns: Sequence[Sequence[int]], footprints: tuple[Footprint, ...]) -> Layers:
    """The columns with a wrap next to each station that needs one, on the side of what its arc leads to."""
    place = {node: (at + 0.5) / len(column) for column in columns for at, node in enumerate(column)}
    wraps: dict[Tip, int] = {}
    found: list[tuple[int, ...]] = []
    number = len(grid.column_of)
    for column in columns:
        ranked: list[int] = []
        for node in column:
            above, below = list[int](), list[int]()
            for tip in sorted(footprints[node].backward) if not grid.is_waypoint(node) else ():
                chain = grid.chains[tip.arc]
                beyond = place[chain[-2] if tip.is_head else chain[1]]
                (above if beyond < place[node] else below).append(number)
                wraps[tip] = number
                number += 1
            ranked += [*above, node, *below]
        found.append(tuple(ranked))
    return Layers(grid, footprints, tuple(found), wraps)
