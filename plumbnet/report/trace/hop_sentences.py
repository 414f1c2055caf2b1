"""The walk of the water a hop at a time: one sentence from a part to the next."""

from collections.abc import Iterator

from plumbnet.analysis.water_walk import Conduct, Gated, Refusing, Taking, WalkStep, WaterWalk
from plumbnet.report.prose import spoken
from plumbnet.report.trace.gate_phrases import gated
from plumbnet.report.trace.outlet_phrases import refusing, taking
from plumbnet.rules.facts import Facts

_CONDUCT = {
    Conduct.SPREADS: "it goes every way from there",
    Conduct.LETS_THROUGH: "it lets the water through",
    Conduct.ENDS: "it is shut, a dead end",
    Conduct.IS_FULL: "it is full of water and takes none",
    Conduct.IS_PLUGGED: "it is plugged and opens at no pressure, DANGER",
}


def single_hops(facts: Facts, walk: WaterWalk) -> Iterator[str]:
    """A sentence for every part that the water of a heater meets, in the order of the walk."""
    for step in walk.steps:
        before = walk.heater.name if step.came_from is None else walk.steps[step.came_from].part
        yield f"From {before} it comes to {step.part}, {spoken(step.kind)}: {_met(facts, step)}."


def _met(facts: Facts, step: WalkStep) -> str:
    match step.met:
        case Taking() as outlet:
            return f"it {taking(facts, outlet)}"
        case Refusing() as outlet:
            return f"it {refusing(outlet)}"
        case Gated() as part:
            return f"it {gated(facts, part)}"
        case conduct:
            return _CONDUCT[conduct]
