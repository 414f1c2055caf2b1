"""Events to what they do, at no cost where a twin is known to change nothing, its pipes made like the other's."""

from collections.abc import Hashable
from dataclasses import dataclass, field
from functools import cached_property
from typing import Final

from plumbnet.analysis import Report, analyse
from plumbnet.analysis.equilibrium import Unanswerable
from plumbnet.rules.facts import Verdict
from plumbnet.study.contingency.contingencies import Contingency
from plumbnet.study.contingency.levelled_pipes import Correspondence
from plumbnet.study.contingency.outcome import outcome
from plumbnet.study.contingency.twin_events import TwinEvents
from plumbnet.study.contingency.worlds import SingleEvent, Worlds

_CALM: Final = frozenset({Verdict.CONTROLLED, Verdict.ON_DEMAND})
"""Verdicts that stand where less water is heated, if they stand where more is."""


@dataclass(frozen=True)
class _Twinned:
    """A layout in which events happen, and which of them are known to be like one that changes nothing."""

    worlds: Worlds
    twins: TwinEvents

    def is_idle(self, event: Contingency) -> bool:
        """Whether it is like one that changes nothing."""
        return self.twins.is_like_an_idle_one(event)

    def single(self, event: Contingency) -> SingleEvent:
        """One event and its answer, kept for its twins."""
        found = self.worlds.single(event)
        if self.changes_nothing(found):
            self.twins.changes_nothing(event)
        return found

    def changes_nothing(self, found: SingleEvent) -> bool:
        """Whether the answer for an event is that without it."""
        return outcome(self.worlds.before, found.answer).changes_nothing


@dataclass(frozen=True)
class FoldedEvents:
    """Answers events one by one; where a twin is known to change nothing, at no cost.

    What is alike but for what its pipes hold is looked for in the layout with those pipes levelled: there it holds as
    much water or more, and an event that changes nothing there changes nothing here (`Correspondence` says why).
    """

    worlds: Worlds
    _in_vain: set[Hashable] = field(default_factory=set)
    """How events look that change something in the levelled layout: their twins are not tried there."""

    def single(self, event: Contingency) -> SingleEvent:
        """One event and its answer."""
        if self._own.is_idle(event) or (self._levelled is not None and self._changes_nothing(self._levelled, event)):
            return SingleEvent(event, self.worlds.before, None, is_idle=True)
        return self._own.single(event)

    def _changes_nothing(self, levelled: _Twinned, event: Contingency) -> bool:
        """Whether it changes nothing with the pipes levelled, as far as that was tried."""
        look = levelled.twins.look(event)
        if look in self._in_vain:
            return False
        if levelled.is_idle(event):
            return True
        is_idle = levelled.changes_nothing(levelled.single(event))
        if not is_idle:
            self._in_vain.add(look)
        return is_idle

    @cached_property
    def _own(self) -> _Twinned:
        return _Twinned(self.worlds, TwinEvents(self.worlds.report.system, self._named, self._corresponding.parts))

    @cached_property
    def _levelled(self) -> _Twinned | None:
        """The layout with pipes levelled; None where none differ, or where that would not tell of less water."""
        report, before = self.worlds.report, self.worlds.before
        system = self._corresponding.levelled()
        if system is report.system or not _CALM.issuperset(before.verdicts.values()):
            return None
        try:
            levelled = Worlds(analyse(system, report.rules, units=report.facts.units, own=report.own_acceptances))
        except Unanswerable:
            return None
        twins = TwinEvents(system, self._named, self._corresponding.parts)  # what pipes hold counts for nothing in them
        return _Twinned(levelled, twins) if levelled.before == before else None

    @cached_property
    def _corresponding(self) -> Correspondence:
        return Correspondence(self.worlds.report.system)

    @cached_property
    def _named(self) -> frozenset[str]:
        """Parts that answers or acceptances name, so that no other may stand for them."""
        report = self.worlds.report
        return _accepted(report) | _leading(report, self.worlds)


def _accepted(report: Report) -> frozenset[str]:
    said = {one.part for one in report.system.accept}
    if report.own_acceptances is not None:
        said |= {one.part for one in report.own_acceptances.accept}
    return frozenset(said)


def _leading(report: Report, worlds: Worlds) -> frozenset[str]:
    """Parts that lead errors, and the heaters; none where no error stands, for then none comes by a change of names."""
    errors = worlds.before.errors
    heaters = {heater.name for heater in report.heaters}
    return frozenset({one.part for one in errors} | heaters) if errors else frozenset()
