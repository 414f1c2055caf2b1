"""The walk of the water in words, a line for each step."""

from collections.abc import Iterator, Sequence

from plumbnet.analysis.water_walk import Conduct, Gated, Refusing, Taking, WalkStep, WaterWalk
from plumbnet.report.prose import spoken
from plumbnet.report.trace.gate_phrases import gated
from plumbnet.report.trace.outlet_phrases import refusing, taking
from plumbnet.rules.facts import Facts

MOST_LINES = 60
"""Lines of the walk before quiet branches, which hold neither an outlet nor a gate, are told in one line."""
_CONDUCT = {
    Conduct.SPREADS: "it goes every way from here",
    Conduct.LETS_THROUGH: "lets it through",
    Conduct.ENDS: "shut, a dead end",
    Conduct.IS_FULL: "full: its air is gone, and it takes nothing",
    Conduct.IS_PLUGGED: "plugged: it opens at no pressure, DANGER",
}


def walked(facts: Facts, walk: WaterWalk) -> Iterator[str]:
    """The walk from a heater, a line for each part that its water meets; of a long one only what matters."""
    yield "The water pushes out of every connection. In turn it meets:"
    steps = walk.steps
    told = _loud(steps) if len(steps) > MOST_LINES else set(range(len(steps)))
    for number, step in enumerate(steps):
        if number in told:
            lead = f"{'  ' * step.forks}  {_lead(step, steps)}"
            yield f"{lead}{step.part}, {spoken(step.kind)}: {_met(facts, step)}"
    if len(told) < len(steps):
        yield f"  and {len(steps) - len(told)} more steps that end at shut fixtures and capped pipes"


def _loud(steps: Sequence[WalkStep]) -> set[int]:
    """Steps that matter to the answer, and those that lead to them."""
    told: set[int] = set()
    for number, step in enumerate(steps):
        at: int | None = number if step.matters else None
        while at is not None and at not in told:
            told.add(at)
            at = steps[at].came_from
    return told


def _lead(step: WalkStep, steps: Sequence[WalkStep]) -> str:
    """How the water comes to a step: by a connection of the heater, straight on, or by one way of several."""
    if step.came_from is None:
        return f"by its {step.by} connection, "
    return "then " if step.forks == steps[step.came_from].forks else ""


def _met(facts: Facts, step: WalkStep) -> str:
    match step.met:
        case Taking() as outlet:
            return taking(facts, outlet)
        case Refusing() as outlet:
            return refusing(outlet)
        case Gated() as part:
            return gated(facts, part)
        case conduct:
            return _CONDUCT[conduct]
