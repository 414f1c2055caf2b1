"""What-ifs as text: one before and after side by side, several as a row each; what is worse is told first."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from plumbnet.layout.quantity import Units
from plumbnet.report.changing import changes_in_words
from plumbnet.report.document import Block, Heading, Paragraph, Points, Table, to_text
from plumbnet.report.table import pressure_in_words
from plumbnet.report.text import CAUTION
from plumbnet.rules.facts import Facts, HeaterFacts, Verdict
from plumbnet.rules.finding import Finding
from plumbnet.rules.sentences import needed
from plumbnet.study.difference import HeaterChange
from plumbnet.study.whatif import WhatIf

WORSE, OTHER, SAME = "!", "*", ""
LEGEND = f"{WORSE} is worse than the layout as it is, {OTHER} is otherwise different."
ACROSS = 3
"""Heaters that stand side by side in one table."""


def whatifs_text(found: Sequence[WhatIf]) -> str:
    """One what-if in full, several in a table; ends with a line break."""
    return to_text([*(_one(found[0]) if len(found) == 1 else _several(found)), Paragraph(CAUTION)])


def title(one: WhatIf) -> str:
    """What a what-if is called: its scenario, or the changes themselves."""
    return changes_in_words(one.changes) if one.scenario is None else one.scenario


def _one(one: WhatIf) -> Iterator[Block]:
    yield from _heading(one, f"what if: {title(one)}")
    if one.note:
        yield Paragraph(one.note, "supposed")
    if one.scenario is not None:
        yield Paragraph(changes_in_words(one.changes), "changes")
    yield Points(tuple(_told(one)))
    for heater in one.difference.heaters:
        yield Heading(heater.name)
        yield Table((" ", "", "before", "after"), tuple(_rows(one, heater)))
    yield Paragraph(LEGEND)


def _several(found: Sequence[WhatIf]) -> Iterator[Block]:
    yield from _heading(found[0], f"{len(found)} what-ifs")
    yield from side_by_side(found)


def side_by_side(found: Sequence[WhatIf]) -> Iterator[Block]:
    """What-ifs of one layout in a table, a row each, and what of each is worth telling, those that are worse first."""
    names = list(dict.fromkeys(heater.name for one in found for heater in _in_order(one)))
    for start in range(0, len(names), ACROSS):
        across = names[start : start + ACROSS]
        rows = [("as it is", *(_cell_before(found[0], name) for name in across))]
        rows += [(title(one), *(_cell(one, name) for name in across)) for one in found]
        yield Table(("scenario", *across), tuple(rows))
    yield Paragraph(LEGEND)
    for one in sorted(found, key=lambda each: not each.difference.is_worse):
        yield Heading(title(one))
        if one.note:
            yield Paragraph(one.note, "supposed")
        yield Points(tuple(_told(one)))


def _heading(one: WhatIf, what: str) -> Iterator[Block]:
    system, profile = one.before.system, one.before.profile
    yield Heading(f"{system.title or system.record.file}: {what}", 1)
    yield Paragraph(system.record.file, "file")
    yield Paragraph(f"{profile.title} ({profile.profile})", "rules")


def _told(one: WhatIf) -> Iterator[str]:
    """What changed, in sentences: worse heaters, then better ones, then findings."""
    facts = one.after.facts
    for heater in one.difference.heaters:
        if heater.is_worse or heater.is_better:
            yield f"{heater.name} is {'worse' if heater.is_worse else 'better'}: {_step(heater, facts)}."
    for finding in one.difference.new:
        yield f"new {_finding(finding)}"
    for altered in one.difference.altered:
        if altered.before.severity is not altered.after.severity:
            yield f"now {_finding(altered.after)}"
    for finding in one.difference.gone:
        yield f"gone: {finding.severity.value} {finding.name} ({finding.parts[0]})."
    if not one.difference.differs:
        yield "nothing: verdicts, figures and findings are as before."
    elif not any(heater.is_worse or heater.is_better for heater in one.difference.heaters):
        yield "no heater is worse or better for it."


def _finding(finding: Finding) -> str:
    return f"{finding.severity.value} {finding.name} ({finding.parts[0]}): {finding.text} {finding.advice}"


def _step(heater: HeaterChange, facts: Facts) -> str:
    before, after = heater.before, heater.after
    if before is None or after is None:
        return "it is new" if before is None else "it is gone"
    if before.verdict is not after.verdict:
        return f"{before.verdict.value} before, {after.verdict.value} then{_settling(after, facts.units)}"
    return f"{after.verdict.value} as before, but{_settling(after, facts.units).removeprefix(',')}"


def _settling(heater: HeaterFacts, units: Units) -> str:
    if heater.verdict is Verdict.SEALED:
        return ", and no relief valve can open"
    if heater.settled_pa is None:
        return ", and nothing holds its pressure" if heater.verdict is Verdict.TRAPPED else ""
    beyond = ", past the limit" if heater.verdict is Verdict.TRAPPED else ""
    return f", at {pressure_in_words(heater.settled_pa, units)} when all is hot{beyond}"


def _in_order(one: WhatIf) -> Iterator[HeaterFacts]:
    yield from one.before.heaters
    yield from one.after.heaters


def _cell_before(one: WhatIf, name: str) -> str:
    return _summary(next((heater for heater in one.before.heaters if heater.name == name), None), one)


def _cell(one: WhatIf, name: str) -> str:
    change = next(heater for heater in one.difference.heaters if heater.name == name)
    return f"{_mark(change)} {_summary(change.after, one)}".strip()


def _summary(heater: HeaterFacts | None, one: WhatIf) -> str:
    """Verdict and settled pressure."""
    if heater is None:
        return "not there"
    if heater.settled_pa is None:
        return heater.verdict.value
    return f"{heater.verdict.value}, {pressure_in_words(heater.settled_pa, one.after.facts.units)}"


def _mark(change: HeaterChange) -> str:
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


def _rows(one: WhatIf, change: HeaterChange) -> Iterator[tuple[str, ...]]:
    before, after = _Side(one.before.facts, change.before), _Side(one.after.facts, change.after)
    mark = WORSE if change.is_worse else OTHER
    for label, was, now in zip(LABELS, before.lines(), after.lines(), strict=True):
        yield (mark if was != now and label == LABELS[0] else OTHER if was != now else SAME, label, was, now)
