"""A plan to the column of each cell: as few as its arcs allow, ends drawn close to what feeds them."""

from plumbnet.report.drawing.linear import Programme
from plumbnet.report.drawing.plan import Plan

_END_WEIGHT = 3.0
"""How much shorter a pipe to an end should be than another: it pulls a cold tee under its hot tee."""
_RUN_WEIGHT = 1.5
_PULL = 1e-4
"""Just enough to draw to the left what could stand anywhere."""


def columns(plan: Plan) -> tuple[int, ...]:
    """The column of each cell, from 0 at the left.

    The shortest total length of arcs; the programme is totally unimodular, so its answer is whole.
    """
    programme = Programme()
    for _ in plan.cells:
        programme.value(_PULL)
    leads_on = {arc.tail for arc in plan.arcs}
    leads_in = {arc.head for arc in plan.arcs}
    for arc in plan.arcs:
        weight = _RUN_WEIGHT if arc.is_run else 1.0 if arc.head in leads_on else _END_WEIGHT
        programme.costs[arc.head] += weight
        programme.costs[arc.tail] -= weight
        programme.demand(arc.tail, arc.head, float(arc.least))
    for cell in plan.cells:
        if cell.item is not None and cell.item.is_source and cell.number not in leads_in:
            programme.fixed[cell.number] = 0.0
    return tuple(round(value) for value in programme.solved())
