"""Which of several heaters are trapped."""

from collections.abc import Iterator
from itertools import combinations

from plumbnet.rules import closed, listed
from plumbnet.rules.facts import Verdict
from plumbnet.study.exercise.answer import Choice
from plumbnet.study.exercise.question import Asked, World, question, reducer_note

OUTCOMES = {4: ("none", "some", "all")}
LEANS = {
    4: {
        "branch_checks": 1.0,
        "shared": 0.5,
        "annex": 1.0,
        "annex_check": 0.7,
        "annex_tankless": 0.05,
        "tankless": 0.05,
        "own_check": 0.4,
        "yard_check": 0.5,
        "tank": 0.5,
    }
}
_MOST = 3
"""Heaters of which every combination is offered."""


@question("trapped-heaters", OUTCOMES, fewest={4: 3}, leans=LEANS)
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
        "Every fixture is shut, and every heater heats up that can with no water drawn. Which of them are trapped, so "
        f"that nothing but a safety relief valve stands behind them?{reducer_note(world)}"
    )
    yield Asked(prompt, (Choice("Trapped:", (*options, "none"), right),), outcome, tuple(because))
