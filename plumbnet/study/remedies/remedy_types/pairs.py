"""Two jobs where no single one cures: a valve opened, and the tank behind it charged, exchanged, or one added."""

from collections.abc import Iterator
from dataclasses import replace

from plumbnet.rules.facts import TROUBLED, HeaterFacts
from plumbnet.study.remedies.candidate import Candidate, Effort
from plumbnet.study.remedies.remedy_context import RemedyContext
from plumbnet.study.remedies.remedy_types.tank_connection import add_tank
from plumbnet.study.remedies.remedy_types.tank_cures import enlarge, exchange, recharge
from plumbnet.study.remedies.remedy_types.valve_cures import open_valve
from plumbnet.study.remedies.trial import tried

MOST_FIRST = 2
"""First jobs of which each is followed by others."""


def open_and_fit(scene: RemedyContext, heater: HeaterFacts) -> Iterator[Candidate]:
    """Open a valve that alone does not cure, and then set right what tanks there are, or add one."""
    for _, first in zip(range(MOST_FIRST), open_valve(scene, heater), strict=False):
        trial = tried(scene, first.changes)
        if trial is None or trial.after.heaters[heater.name].verdict not in TROUBLED:
            continue
        for sort in (recharge, exchange, enlarge, add_tank):
            for then in sort(trial.after, trial.after.heaters[heater.name]):
                yield replace(then.behind(first.title, first.changes), effort=Effort.PAIR, key="pair")
