"""A report to the answers of other worlds: what stands once some events have happened, at the least cost."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import cached_property

from plumbnet.analysis import Report, facts_of
from plumbnet.analysis.equilibrium import Unanswerable
from plumbnet.budgets import Budget, analysis_steps
from plumbnet.layout.edits import with_changes
from plumbnet.layout.model import System
from plumbnet.network import Network, network_of
from plumbnet.rules import Silencer, silencer_of
from plumbnet.rules.facts import Facts
from plumbnet.study.contingency.contingencies import Contingency
from plumbnet.study.contingency.district import District, Districts
from plumbnet.study.contingency.district_effect import Effect, Effects
from plumbnet.study.contingency.outcome import WorldAnswer, answer
from plumbnet.study.contingency.verdict_only import NotTold, hasty_network_of

HEATERS_PER_PART = 3
"""Heaters looked at for findings that cost as much as one part analysed."""


@dataclass(frozen=True, slots=True)
class SingleEvent:
    """An event, the answer once it has happened, and what it does where that is felt in one district only.

    `is_idle` says that no fact at all is another one for it.
    """

    event: Contingency
    answer: WorldAnswer
    effect: Effect | None
    is_idle: bool


@dataclass
class Worlds:
    """Answers for a layout in which events have happened.

    `analysed` counts the parts of the layouts and districts that were analysed for them, `budget` the steps for layouts
    that were analysed as a whole.
    """

    report: Report
    analysed: int = 0
    budget: Budget = field(default_factory=Budget)
    _told: dict[tuple[str, str], bool] = field(default_factory=dict)
    _at_rest: dict[tuple[str, str], Effect] = field(default_factory=dict)

    @cached_property
    def before(self) -> WorldAnswer:
        """The answer with nothing having happened."""
        return self._answer(self.report.facts)

    def after(self, events: Sequence[Contingency]) -> WorldAnswer:
        """The answer once some events have happened; only the district that can feel them is analysed again.

        Raises ChangeError where they cannot all happen.
        """
        effect = self.effect(events)
        return self.whole(self._with(events)) if effect is None else self.together([effect], events)

    def single(self, event: Contingency) -> SingleEvent:
        """One event and its answer."""
        effect = self.effect([event])
        if effect is None:
            return SingleEvent(event, self.whole(self._with([event])), None, is_idle=False)
        if effect == self._idle(effect.district) and self._is_told(effect):
            return SingleEvent(event, self.before, effect, is_idle=True)
        return SingleEvent(event, self.together([effect], [event]), effect, is_idle=False)

    def effect(self, events: Sequence[Contingency]) -> Effect | None:
        """What some events do inside the smallest district beyond which they are not felt; None where there is none.

        Where circuits have rules of their own there is none: to which a part belongs is told by the whole alone. Raises
        ChangeError where they cannot all happen.
        """
        if not self.report.rules.is_one:
            return None
        try:
            for district in self._districts.around([event.part for event in events]):
                self.analysed += len(district.names)
                effect = self._effects.of(district, [event.change for event in events])
                if effect is not None and self._idle(district):
                    return effect
        except (NotTold, Unanswerable):
            return None
        return None

    def together(self, effects: Sequence[Effect], events: Sequence[Contingency]) -> WorldAnswer:
        """The answer for events that have these effects, in districts apart from each other."""
        whole = self._with(events)
        self.analysed += len(self.report.heaters) // HEATERS_PER_PART
        try:
            return self._answer(self._effects.facts(effects, [self._idle(one.district) for one in effects], whole))
        except NotTold:
            return self.whole(whole)

    def whole(self, system: System) -> WorldAnswer:
        """The answer for another system under the same rules, analysed as a whole."""
        try:
            return self._analysed(hasty_network_of(system))
        except NotTold:
            return self._analysed(network_of(system))

    def _analysed(self, network: Network) -> WorldAnswer:
        parts = len(network.piping.system.parts)
        self.analysed += parts
        try:
            facts = facts_of(network, self.report.rules, units=self.report.facts.units)
        except Unanswerable as error:
            self.budget.spend(analysis_steps(parts, 0, 0))
            return WorldAnswer({}, frozenset(), f"{error.heater}: {error}")
        self.budget.spend(analysis_steps(parts, facts.rungs, network.budget.spent))
        return self._answer(facts)

    def _idle(self, district: District) -> Effect:
        """What a district is with nothing having happened in it. Raises NotTold."""
        key = _key(district)
        if key not in self._at_rest:
            self.analysed += len(district.names)
            effect = self._effects.of(district, ())
            if effect is None:
                raise NotTold
            self._at_rest[key] = effect
        return self._at_rest[key]

    def _is_told(self, effect: Effect) -> bool:
        """Whether the rules ask for nothing that is withheld when this is all that is known of its district."""
        key = _key(effect.district)
        if key not in self._told:
            try:
                self._answer(self._effects.facts([effect], [effect], self.report.system))
                self._told[key] = True
            except NotTold:
                self._told[key] = False
        return self._told[key]

    def _with(self, events: Sequence[Contingency]) -> System:
        return with_changes(self.report.system, [event.change for event in events])

    def _answer(self, facts: Facts) -> WorldAnswer:
        return answer(facts, self.report.rules, self._silencer)

    @cached_property
    def _silencer(self) -> Silencer:
        return silencer_of(self.report.system, self.report.own_acceptances)

    @cached_property
    def _districts(self) -> Districts:
        return Districts(self.report.network)

    @cached_property
    def _effects(self) -> Effects:
        return Effects(self.report)


def _key(district: District) -> tuple[str, str]:
    """Tells districts apart: the tee, and the first part of what hangs on it."""
    return district.boundary.tee, min(district.names - {district.boundary.tee})
