"""Drawn layouts and what is asked of their remedies."""

from conftest import PSI, system

import plumbnet
from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.model.system import System
from plumbnet.rules.facts.heater_answer import HeaterFacts
from plumbnet.study.remedies.candidate import Effort
from plumbnet.study.remedies.remedy import Remedy
from plumbnet.study.remedies.remedy_context import RemedyContext
from plumbnet.study.remedies.remedy_search import remedies

RELIEVED = "relief: {pressure: 150 psi, temperature: 210 degF}"
"""Fields of a heater that has its relief valve."""
HOUSE = """street -> cv -> tee -> heater -> tap.hot
           tee -> tap.cold"""
TANKED = f"""{HOUSE}
             tee -> tank"""


def house(runs: str = HOUSE, **parts: str) -> System:
    """A layout whose heater has a relief valve, unless told otherwise."""
    return system(runs, **{"heater": RELIEVED, **parts})


def scene(layout: System) -> RemedyContext:
    return RemedyContext(plumbnet.check(layout))


def heater(layout: System, name: str = "heater") -> HeaterFacts:
    return scene(layout).heaters[name]


def cures(layout: System, name: str = "heater") -> tuple[Remedy, ...]:
    """The remedies of a heater; none where it needs none."""
    return remedies(plumbnet.check(layout)).get(name, ())


def efforts(layout: System, name: str = "heater") -> list[Effort]:
    return [remedy.effort for remedy in cures(layout, name)]


def cure(layout: System, effort: Effort, name: str = "heater") -> Remedy:
    """The first remedy of that effort."""
    return next(remedy for remedy in cures(layout, name) if remedy.effort is effort)


def cured(layout: System, remedy: Remedy) -> HeaterFacts:
    """The heater of a remedy once it is made."""
    return heater(with_changes(layout, remedy.changes), remedy.heater)


def psi(pressure_pa: float | None) -> float | None:
    return None if pressure_pa is None else round(pressure_pa / PSI, 1)
