"""A report to its remedies: for each heater in trouble the changes that cure it and break nothing, least work first."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from plumbnet.analysis import Report
from plumbnet.api import Layout, as_report
from plumbnet.rules.facts import HeaterFacts, Verdict
from plumbnet.study.remedies.candidate import Candidate, RemedyType
from plumbnet.study.remedies.relief_first import Safeguard, safeguards
from plumbnet.study.remedies.remedy import MOST_PARTS, Found, Remedy
from plumbnet.study.remedies.remedy_context import RemedyContext
from plumbnet.study.remedies.remedy_types import (
    add_tank,
    bypass,
    enlarge,
    exchange,
    lower,
    move,
    open_valve,
    recharge,
    remove_check,
    shut_filling_loop,
)
from plumbnet.study.remedies.trial import Trial, tried

SORTS: tuple[RemedyType, ...] = (
    open_valve,
    shut_filling_loop,
    recharge,
    exchange,
    enlarge,
    move,
    add_tank,
    bypass,
    remove_check,
    lower,
)
"""Every sort of remedy, least work first."""


def remedies(layout: Layout | Report) -> Found:
    """What would cure each heater in trouble, least work first; heaters that need nothing are left out.

    Every remedy was made to a copy and analysed again. It leaves the heater open or controlled (with no tank in its
    reach at fault, where that was the trouble), makes no other heater trapped or sealed, and brings no new finding
    of severity error; one that breaks a milder requirement which was met is offered only where no other cures the
    heater. For a sealed heater each one begins with a relief valve that can open. An empty tuple says that
    no remedy was found. Cost: some ten analyses for each heater in trouble.

    `layout` is a report, or what `check` makes one of; raises what `check` does.

    >>> import plumbnet
    >>> found = plumbnet.remedies("systems/house-with-check.yaml")
    >>> first = found["heater"][0]
    >>> first.effort.name, first.verdict.value, first.settled_pa < 551581
    ('ADD', 'controlled', True)
    """
    return RemedySearch(RemedyContext(as_report(layout))).found()


def remedies_if_small(report: Report) -> Found | None:
    """The remedies of a layout of at most `MOST_PARTS` parts; None for a larger one, where they take long."""
    return remedies(report) if len(report.system.parts) <= MOST_PARTS else None


@dataclass
class RemedySearch:
    """Tries candidates heater by heater; what cures several is found once."""

    scene: RemedyContext

    def found(self) -> Found:
        """The remedies of each heater in trouble, in the order of the file."""
        ailing = [name for name in self.scene.heaters if self.scene.is_ailing(name)]
        kept: dict[str, dict[str, Remedy]] = {name: {} for name in ailing}
        second: dict[str, dict[str, Remedy]] = {name: {} for name in ailing}
        for name in ailing:
            for candidate in self._candidates(self.scene.heaters[name]):
                if candidate.key not in kept[name]:
                    for remedy, breaks_nothing in self._proved(candidate, name):
                        (kept if breaks_nothing else second)[remedy.heater].setdefault(candidate.key, remedy)
        chosen = {name: own or second[name] for name, own in kept.items()}
        return {name: tuple(sorted(own.values(), key=lambda one: one.rank)) for name, own in chosen.items()}

    def _candidates(self, heater: HeaterFacts) -> Iterator[Candidate]:
        """What may cure a heater; for a sealed one each with what makes it safe first."""
        if heater.verdict is not Verdict.SEALED:
            for sort in SORTS:
                yield from sort(self.scene, heater)
            return
        for safeguard in safeguards(self.scene, heater):
            yield from self._safeguarded(safeguard, heater.name)

    def _safeguarded(self, safeguard: Safeguard, heater: str) -> Iterator[Candidate]:
        """Candidates for a heater once it is safe."""
        trial = tried(self.scene, safeguard.changes)
        if trial is None or trial.after.heaters[heater].verdict is Verdict.SEALED:
            return
        for sort in SORTS:
            for candidate in sort(trial.after, trial.after.heaters[heater]):
                yield replace(
                    candidate,
                    title=f"{safeguard.title}; then {candidate.title}",
                    changes=(*safeguard.changes, *candidate.changes),
                )

    def _proved(self, candidate: Candidate, heater: str) -> Iterator[tuple[Remedy, bool]]:
        """The candidate as a remedy for each heater it cures; none where it does not cure `heater` or does harm.

        Beside it, whether all requirements that were met are met still.
        """
        trial = tried(self.scene, candidate.changes)
        if trial is None or not trial.is_harmless or not trial.is_cured(heater):
            return
        if candidate.keeps_check and not trial.keeps_check(heater):
            return
        cures = tuple(trial.cures())
        for name in cures:
            yield _remedy(candidate, trial, name, cures), not any(trial.broken_anew())


def _remedy(candidate: Candidate, trial: Trial, heater: str, cures: tuple[str, ...]) -> Remedy:
    now = trial.after.heaters[heater]
    title = f"{candidate.title[:1].upper()}{candidate.title[1:]}."
    return Remedy(candidate.changes, now.verdict, heater, title, candidate.effort, now.settled_pa, cures)
