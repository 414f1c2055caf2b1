"""Numbers and values to the answer of the layout with them: verdicts and errors, each trial made once."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property

from plumbnet.analysis import Report
from plumbnet.budgets import Budget
from plumbnet.layout.edits import ChangeError, change_of, with_changes
from plumbnet.layout.model import Change, System
from plumbnet.layout.units import Units, show
from plumbnet.study.contingency import WorldAnswer, Worlds
from plumbnet.study.margins.margin import UncertainNumber

DIGITS = 9
"""Digits of a value that is tried."""


@dataclass
class MarginTrials:
    """Answers for a layout whose numbers have strayed; `heater` is the only one whose answer counts, None for all.

    `checks` counts the layouts that were analysed, and `budget` what was spent on them.
    """

    report: Report
    heater: str | None = None
    checks: int = 0
    budget: Budget = field(default_factory=Budget)
    _known: dict[tuple[str, ...], WorldAnswer] = field(default_factory=dict)

    @cached_property
    def before(self) -> WorldAnswer:
        """The answer with every number as it is."""
        return self._seen(self._worlds.before)

    def after(self, values: Mapping[UncertainNumber, float]) -> WorldAnswer | None:
        """The answer with these values; None where no part can have them. Raises Spent where nothing is left for it."""
        changes = tuple(changed(number, value, self.report.system.units) for number, value in values.items())
        key = tuple(change.model_dump_json() for change in changes)
        if key not in self._known:
            system = self._with(changes)
            if system is None:
                return None
            self.budget.demand()
            self.checks += 1
            self._known[key] = self._seen(self._worlds.whole(system))
        return self._known[key]

    def can_be(self, number: UncertainNumber, value: float) -> bool:
        """Whether the part can have that value at all."""
        return self._with((changed(number, value, self.report.system.units),)) is not None

    def _with(self, changes: tuple[Change, ...]) -> System | None:
        try:
            return with_changes(self.report.system, changes)
        except ChangeError:
            return None

    def _seen(self, answer: WorldAnswer) -> WorldAnswer:
        """Of an answer what counts: of one heater its verdict and the errors that it leads."""
        if self.heater is None or answer.refused:
            return answer
        errors = frozenset(one for one in answer.errors if one.part == self.heater)
        return replace(answer, verdicts={self.heater: answer.verdicts[self.heater]}, errors=errors)

    @cached_property
    def _worlds(self) -> Worlds:
        return Worlds(self.report, budget=self.budget)


def changed(number: UncertainNumber, value: float, units: Units) -> Change:
    """The change that gives a number another value, SI."""
    text = show(value, number.dimension, units, DIGITS)
    return change_of("set", {"part": number.part, number.field: text})
