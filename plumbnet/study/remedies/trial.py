"""Changes tried on a copy of a layout: the report afterwards, whom they cure, and whether anything is worse."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from plumbnet.analysis import Report, analyse
from plumbnet.analysis.equilibrium import Unanswerable
from plumbnet.budgets import analysis_steps
from plumbnet.layout.edits import ChangeError, change_fields, with_changes
from plumbnet.layout.model import Change, OneWay
from plumbnet.rules import Finding, Severity
from plumbnet.rules.facts import TROUBLED, Verdict
from plumbnet.study.remedies.remedy_context import RemedyContext

TOO_LITTLE = frozenset({"tap-below-least", "tap-without-water", "circuit-top-below-least"})
"""Findings of places where less stands than must."""
_HELD = frozenset({Verdict.OPEN, Verdict.CONTROLLED})


@dataclass(frozen=True)
class Trial:
    """A layout before and after changes."""

    before: RemedyContext
    after: RemedyContext

    @property
    def is_harmless(self) -> bool:
        """Whether no heater is worse off and no finding of severity error is new."""
        return not any(self._is_worse(name) for name in self.before.heaters) and not any(self.new_errors())

    @property
    def is_faultless(self) -> bool:
        """Whether it is harmless and every requirement that was met, of whatever severity, is met still."""
        return self.is_harmless and not any(self.broken_anew())

    def cures(self) -> Iterator[str]:
        """Heaters in trouble before that are held after, in the order of the file."""
        for name in self.before.heaters:
            if self.before.is_ailing(name) and self.is_cured(name):
                yield name

    def is_cured(self, heater: str) -> bool:
        """Whether a heater in trouble is held now; one held before must be rid of every tank at fault."""
        now = self.after.heaters.get(heater)
        if now is None:
            return False
        if self.before.heaters[heater].verdict in TROUBLED:
            return now.verdict in _HELD
        return now.verdict not in TROUBLED and not self.after.tank_errors(heater)

    def keeps_check(self, heater: str) -> bool:
        """Whether a heater is still closed, with a check of some sort on every shortest way to the street."""
        now, parts = self.after.heaters[heater], self.after.system.parts
        return now.verdict is not Verdict.OPEN and all(
            any(isinstance(passage, OneWay) for name in devices for passage in parts[name].passages())
            for devices in now.stopped_by.sets
        )

    def new_errors(self) -> Iterator[Finding]:
        """Errors that were not there before.

        One led by a heater that was in trouble already is its old trouble in other words: a tank too small, say,
        where there was none.
        """
        old = {(one.name, one.parts[0]) for one in _errors(self.before.report)}
        troubled = {name for name, heater in self.before.heaters.items() if heater.verdict in TROUBLED}
        for one in _errors(self.after.report):
            if (one.name, one.parts[0]) not in old and one.parts[0] not in troubled:
                yield one

    def broken_anew(self) -> Iterator[Finding]:
        """Findings, of whatever severity, of requirements that were met before."""
        for one in self.after.report.findings:
            if (one.name, one.parts[0]) in self.before.met:
                yield one

    def _is_worse(self, heater: str) -> bool:
        """Whether a heater that was held is in trouble now, or one that was trapped has no relief valve left."""
        was, now = self.before.heaters[heater].verdict, self.after.heaters[heater].verdict
        return now in TROUBLED and (was not in TROUBLED or (was is Verdict.TRAPPED and now is Verdict.SEALED))


def tried(scene: RemedyContext, changes: Sequence[Change]) -> Trial | None:
    """The changes made to a copy and analysed, once; None where they cannot be made or nothing can be computed then.

    Raises Spent (budgets) where nothing is left to spend on another analysis.
    """
    key = repr([change_fields(change) for change in changes])
    if key not in scene.trials:
        scene.budget.demand()
        scene.trials[key] = _tried(scene, changes)
    known = scene.trials[key]
    return known if isinstance(known, Trial) else None


def _tried(scene: RemedyContext, changes: Sequence[Change]) -> Trial | None:
    try:
        system = with_changes(scene.system, changes)
    except ChangeError:
        return None
    before = scene.report
    try:
        report = analyse(system, before.rules, units=before.facts.units, own=before.own_acceptances)
    except Unanswerable:
        scene.budget.spend(analysis_steps(len(system.parts), 0, 0))
        return None
    scene.budget.spend(analysis_steps(len(system.parts), report.facts.rungs, report.network.budget.spent))
    return Trial(scene, RemedyContext(report, budget=scene.budget))


def _errors(report: Report) -> list[Finding]:
    return [one for one in report.findings if one.severity is Severity.ERROR]
