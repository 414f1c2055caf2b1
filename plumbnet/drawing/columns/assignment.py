"""A graph to the column of each station: as few as its arcs allow, ends drawn close to what feeds them."""

from plumbnet.drawing.columns.arcs import ArcGraph
from plumbnet.drawing.columns.programme import Programme

_END_WEIGHT = 3.0
"""How much shorter a pipe to an end should be than another: it pulls a cold tee under its hot tee."""
_RUN_WEIGHT = 1.5
_PULL = 1e-4
"""Just enough to draw to the left what could stand anywhere."""


def assigned_columns(graph: ArcGraph) -> tuple[int, ...]:
    """The column of each station, from 0 at the left.

    The shortest total length of arcs; the programme is totally unimodular, so its answer is whole.
    """
    programme = Programme()
    for _ in graph.stations:
        programme.value(_PULL)
    leads_on = {arc.tail for arc in graph.arcs}
    leads_in = {arc.head for arc in graph.arcs}
    for arc in graph.arcs:
        weight = _RUN_WEIGHT if arc.is_run else 1.0 if arc.head in leads_on else _END_WEIGHT
        programme.costs[arc.head] += weight
        programme.costs[arc.tail] -= weight
        programme.demand(arc.tail, arc.head, float(arc.least))
    for station in graph.stations:
        if station.item is not None and station.item.is_source and station.number not in leads_in:
            programme.fixed[station.number] = 0.0
    return _with_last(graph, [round(value) for value in programme.solved()])


def _with_last(graph: ArcGraph, columns: list[int]) -> tuple[int, ...]:
    """The columns with what is to stand in the last one behind all else."""
    last = {station.number for station in graph.stations if station.item is not None and station.item.is_last}
    end = max((column for number, column in enumerate(columns) if number not in last), default=-1) + 1
    return tuple(end if number in last else column for number, column in enumerate(columns))
