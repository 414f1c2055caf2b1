"""What a sort of question asks of a layout drawn in a line or two."""

from conftest import system
from sketching import chance

import plumbnet
from plumbnet.study.exercise import generator as dealing  # noqa: F401  registers the questions
from plumbnet.study.exercise.question import QUESTIONS, Asked, World


def asked(name: str, runs: str, level: int = 2, **parts: str) -> list[Asked]:
    """All that the question asks, in the order in which the heaters come."""
    report = plumbnet.check(system(runs, **parts))
    return sorted(QUESTIONS[name].ask(World(report, level, chance(1))), key=lambda one: one.heater or "")
