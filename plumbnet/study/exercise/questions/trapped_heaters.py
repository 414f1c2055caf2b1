"""Which of several heaters are trapped."""

from collections.abc import Iterator
from itertools import combinations

from plumbnet.rules import closed, listed
from plumbnet.rules.facts import Verdict
from plumbnet.study.exercise.answer import Choice
from plumbnet.study.exercise.question import Asked, World, question

OUTCOMES = {4: ("none", "some", "all")}
_MOST = 3
"""Heaters of which every combination is offered."""


@question("trapped-heaters", OUTCOMES)
def trapped_heaters(world: World) -> Iterator[Asked]:
    """Which of the heaters are trapped when all of them heat up with every fixture shut?"""
    facts = world.report.facts
    names = [heater.name for heater in facts.heaters]
    if not 1 < len(names) <= _MOST or any(heater.verdict is Verdict.SEALED for heater in facts.heaters):
        return
    trapped = [heater for heater in facts.heaters if heater.verdict is Verdict.TRAPPED]
    options = [listed(some) for number in range(1, len(names) + 1) for some in combinations(names, number)]
    right = listed([heater.name for heater in trapped]) if trapped else "none"
    outcome = "none" if not trapped else "all" if len(trapped) == len(names) else "some"
    because = [closed(facts, heater) for heater in trapped]
    because += [
        f"{heater.name} is {heater.verdict.value}." for heater in facts.heaters if heater.verdict is not Verdict.TRAPPED
    ]
    prompt = (
        "Every fixture is shut, and all heaters heat up. Which of them are trapped, so that nothing but the safety "
        "relief valve stands behind them?"
    )
    yield Asked(prompt, (Choice("Trapped:", (*options, "none"), right),), outcome, tuple(because))
