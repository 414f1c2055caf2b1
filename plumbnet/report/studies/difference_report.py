"""What differs between two reports as sentences and as rows side by side; what is worse is told first."""

from collections.abc import Iterator
from dataclasses import dataclass

from plumbnet.layout.units import Units
from plumbnet.report.prose import pressure_in_words
from plumbnet.rules import Finding, needed
from plumbnet.rules.facts import Facts, HeaterFacts, Verdict
from plumbnet.study.compare import Difference, HeaterChange

WORSE, OTHER, SAME = "!", "*", ""
"""Marks of what is worse, of what is otherwise different, and of what is as it was."""


def difference_told(found: Difference, facts: Facts, *, now: str = "then") -> Iterator[str]:
    """What differs, in sentences: worse heaters, then better ones, then findings; `facts` are those afterwards.

    `now` is the word for afterwards.
    """
    for heater in found.heaters:
        if heater.is_worse or heater.is_better:
            yield f"{heater.name} is {'worse' if heater.is_worse else 'better'}: {_step(heater, facts, now)}."
    for finding in found.new:
        yield f"new {_finding(finding)}"
    for altered in found.altered:
        if altered.before.severity is not altered.after.severity:
            yield f"now {_finding(altered.after)}"
    for finding in found.gone:
        yield f"gone: {finding.severity.value} {finding.name} ({finding.parts[0]})."
    for finding in found.accepted:
        yield f"accepted now: {finding.severity.value} {finding.name} ({finding.parts[0]})."
    if not found.differs:
        yield "nothing: verdicts, figures and findings are as before."
    elif not any(heater.is_worse or heater.is_better for heater in found.heaters):
        yield "no heater is worse or better for it."


def _finding(finding: Finding) -> str:
    return f"{finding.severity.value} {finding.name} ({finding.parts[0]}): {finding.text} {finding.advice}"


def _step(heater: HeaterChange, facts: Facts, now: str) -> str:
    before, after = heater.before, heater.after
    if before is None or after is None:
        return "it is gone" if after is None else f"it is new, and {after.verdict.value}"
    if before.verdict is not after.verdict:
        return f"{before.verdict.value} before, {after.verdict.value} {now}{_settling(after, facts.units)}"
    return f"{after.verdict.value} as before, but{_settling(after, facts.units).removeprefix(',')}"


def _settling(heater: HeaterFacts, units: Units) -> str:
    if heater.verdict is Verdict.SEALED:
        return ", and no relief valve can open"
    if heater.settled_pa is None:
        return ", and nothing holds its pressure" if heater.verdict is Verdict.TRAPPED else ""
    beyond = ", past the limit" if heater.is_past_limit else ""
    return f", at {pressure_in_words(heater.settled_pa, units)} when all is hot{beyond}"


def mark(change: HeaterChange) -> str:
    """The mark of a heater that is worse, or otherwise different."""
    if change.is_worse:
        return WORSE
    return OTHER if change.differs else SAME


@dataclass(frozen=True, slots=True)
class _Side:
    """A heater in one of the reports, as it is told."""

    facts: Facts
    heater: HeaterFacts | None

    def lines(self) -> Iterator[str]:
        """What is said of it, label by label."""
        heater, units = self.heater, self.facts.units
        if heater is None:
            yield from ("not there", *[""] * (len(LABELS) - 1))
            return
        yield heater.verdict.value
        yield pressure_in_words(heater.static_pa, units) if heater.static_pa is not None else "no water"
        yield pressure_in_words(heater.limit_pa, units)
        yield ", then ".join(f"{rung.outlet} at {self.facts.pressure(rung.opens_pa)}" for rung in heater.ladder) or "-"
        yield pressure_in_words(heater.settled_pa, units)
        yield self.facts.volume(heater.expansion_m3)
        yield " or ".join(" and ".join(names) for names in heater.stopped_by.sets) or "nothing"
        yield "nothing" if heater.need is None else needed(self.facts, heater)


LABELS = ("verdict", "static", "limit", "opens first", "settles at", "grows by", "stopped by", "needs")


def difference_rows(change: HeaterChange, before: Facts, after: Facts) -> Iterator[tuple[str, ...]]:
    """A row for each thing said of a heater: a mark where it differs, what it is, before, after."""
    was_lines, now_lines = _Side(before, change.before).lines(), _Side(after, change.after).lines()
    for label, was, now in zip(LABELS, was_lines, now_lines, strict=True):
        is_told_worse = change.is_worse and label == LABELS[0]
        yield (SAME if was == now else WORSE if is_told_worse else OTHER, label, was, now)
