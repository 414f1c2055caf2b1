"""A report to its remedies: for each heater in trouble the changes that cure it and break nothing, least work first."""

from collections import defaultdict, deque
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from plumbnet.analysis import Report
from plumbnet.api import Layout, as_report
from plumbnet.budgets import REMEDIES_ASKED_FOR, REMEDIES_BESIDE_CHECK, Budget, Spent
from plumbnet.rules.facts import HeaterFacts, Verdict
from plumbnet.study.remedies.candidate import Candidate, Effort, RemedyType
from plumbnet.study.remedies.mended_candidate import proved
from plumbnet.study.remedies.relief_first import Safeguard, safeguards
from plumbnet.study.remedies.remedy import MOST_PARTS, MOST_WORK, Found, FoundRemedies, Remedy, left_out
from plumbnet.study.remedies.remedy_context import RemedyContext
from plumbnet.study.remedies.remedy_types import (
    add_tank,
    bypass,
    enlarge,
    exchange,
    join_and_fit,
    lower,
    move,
    open_and_fit,
    open_valve,
    recharge,
    remove_check,
    renew_reducer,
    set_and_fit,
    set_reducer,
    shut_filling_loop,
)
from plumbnet.study.remedies.trial import Trial, tried

SORTS: tuple[RemedyType, ...] = (
    recharge,
    set_reducer,
    open_valve,
    shut_filling_loop,
    renew_reducer,
    exchange,
    enlarge,
    move,
    add_tank,
    set_and_fit,
    bypass,
    remove_check,
    lower,
)
"""Every sort of remedy, least work first."""
PAIRS: tuple[RemedyType, ...] = (open_and_fit,)
"""Two jobs at once, tried where no single one cures."""
TOGETHER: tuple[RemedyType, ...] = (join_and_fit,)
"""Two jobs at once that cure heaters which do not share their water."""
ENOUGH = 3
"""Lesser remedies beside which no device is exchanged and no check taken out."""


def remedies(layout: Layout | Report) -> Found:
    """What would cure each heater in trouble, least work first; heaters that need nothing are left out.

    Every remedy was made to a copy and analysed again. It leaves the heater open or controlled (with no tank in its
    reach at fault, where that was the trouble), makes no other heater trapped or sealed, brings no new finding of
    severity error, and breaks no requirement that was met. For a sealed heater each one begins with a relief valve
    that can open. An empty tuple says that no remedy was found. Devices are exchanged or taken out only where fewer
    than three lesser remedies were found. Cost: some five analyses for all heaters in trouble that share their water;
    where that comes to more than the budget has, heaters whose search did not end are named (`left_out`).

    `layout` is a report, or what `check` makes one of; raises what `check` does.

    >>> import plumbnet
    >>> found = plumbnet.remedies("systems/house-with-check.yaml")
    >>> first = found["heater"][0]
    >>> first.effort.name, first.verdict.value, first.settled_pa < 551581
    ('ADD', 'controlled', True)
    """
    return RemedySearch(RemedyContext(as_report(layout), budget=Budget(REMEDIES_ASKED_FOR))).found()


def remedies_of(report: Report, heater: str) -> Found:
    """The remedies of one heater in trouble; where the budget ends before its turn comes, sought for it alone."""
    found = remedies(report)
    if heater in left_out(found):
        return RemedySearch(RemedyContext(report, budget=Budget(REMEDIES_ASKED_FOR))).found(heater)
    return {name: some for name, some in found.items() if name == heater}


def remedies_if_small(report: Report) -> Found | None:
    """The remedies of a layout; None for a large one with many heaters in trouble.

    Of any other not every change is tried where that would take long: `left_out` tells of which heaters.
    """
    scene, parts = RemedyContext(report), len(report.system.parts)
    ailing = sum(scene.is_ailing(name) for name in scene.heaters)
    if parts > MOST_PARTS and parts * ailing > MOST_WORK:
        return None
    return RemedySearch(RemedyContext(report, budget=Budget(REMEDIES_BESIDE_CHECK))).found()


_ByKey = dict[str, Remedy]
"""Remedies by the key of their candidates."""


@dataclass
class RemedySearch:
    """Tries candidates heater by heater; what cures several is found once. `kept` are the remedies of each heater."""

    scene: RemedyContext
    kept: defaultdict[str, _ByKey] = field(default_factory=lambda: defaultdict(dict))

    def found(self, heater: str | None = None) -> Found:
        """The remedies of each heater in trouble, in the order of the file; or of the one that is named.

        Heaters whose turn has not come, or not ended, when the budget is spent are left out of the search, and told.
        """
        ailing = [name for name in self.scene.heaters if heater in {None, name} and self.scene.is_ailing(name)]
        waiting = deque(ailing)
        try:
            while waiting:
                self._search(waiting[0], SORTS)
                if not self.kept[waiting[0]]:
                    self._search(waiting[0], PAIRS)
                waiting.popleft()
            for name in ailing:
                self._search(name, TOGETHER)
        except Spent:
            pass
        found = FoundRemedies(
            (name, tuple(sorted(self.kept[name].values(), key=lambda one: one.rank))) for name in ailing
        )
        found.left_out = tuple(waiting)
        return found

    def _search(self, heater: str, sorts: Sequence[RemedyType]) -> None:
        self.scene.budget.demand()
        self.scene.budget.spend(len(self.scene.system.parts))  # candidates are sought in all of the layout
        for candidate in self._candidates(self.scene.heaters[heater], sorts):
            proved = self._proved(candidate, heater) if self._is_wanted(candidate, heater) else None
            if proved is not None:
                self._keep(*proved)

    def _is_wanted(self, candidate: Candidate, heater: str) -> bool:
        is_late = candidate.effort >= Effort.EXCHANGE_DEVICE and len(self.kept[heater]) >= ENOUGH
        return candidate.key not in self.kept[heater] and not is_late

    def _keep(self, candidate: Candidate, trial: Trial) -> None:
        """A proved candidate as a remedy of each heater that it cures."""
        cures = tuple(trial.cures())
        for name in cures:
            self.kept[name].setdefault(candidate.key, _remedy(candidate, trial, name, cures))

    def _candidates(self, heater: HeaterFacts, sorts: Sequence[RemedyType]) -> Iterator[Candidate]:
        """What may cure a heater; for a sealed one each with what makes it safe first."""
        if heater.verdict is not Verdict.SEALED:
            for sort in sorts:
                yield from sort(self.scene, heater)
            return
        for safeguard in safeguards(self.scene, heater):
            yield from self._safeguarded(safeguard, heater.name, sorts)

    def _safeguarded(self, safeguard: Safeguard, heater: str, sorts: Sequence[RemedyType]) -> Iterator[Candidate]:
        """Candidates for a heater once it is safe."""
        trial = tried(self.scene, safeguard.changes)
        if trial is None or trial.after.heaters[heater].verdict is Verdict.SEALED:
            return
        for sort in sorts:
            for candidate in sort(trial.after, trial.after.heaters[heater]):
                yield candidate.behind(safeguard.title, safeguard.changes)

    def _proved(self, candidate: Candidate, heater: str) -> tuple[Candidate, Trial] | None:
        """The candidate, with what has to be set right by the way, and its trial; None where it is no remedy."""
        made = proved(self.scene, candidate, heater)
        if made is None:
            return None
        told, trial = made
        if told.keeps_check and not trial.keeps_check(heater):
            return None
        return made if all(map(trial.is_cured, told.for_all)) else None


def _remedy(candidate: Candidate, trial: Trial, heater: str, cures: tuple[str, ...]) -> Remedy:
    now = trial.after.heaters[heater]
    title = f"{candidate.title[:1].upper()}{candidate.title[1:]}."
    return Remedy(
        changes=candidate.changes,
        verdict=now.verdict,
        heater=heater,
        title=title,
        effort=candidate.effort,
        settled_pa=now.settled_pa,
        cures=cures,
        why=candidate.why,
        size_m3=candidate.size_m3,
    )
