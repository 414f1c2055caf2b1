"""A layout and its revision as text: what became worse first, then every heater side by side, then what was changed."""

from collections.abc import Iterator
from dataclasses import dataclass

from plumbnet.analysis import Report
from plumbnet.layout.model import FieldChange
from plumbnet.report.output import imprint_lines
from plumbnet.report.prose import Block, Heading, Paragraph, Points, Table, document_text
from plumbnet.report.studies.difference_report import OTHER, SAME, WORSE, difference_rows, difference_told
from plumbnet.report.text import CAUTION
from plumbnet.rules import Finding, listed
from plumbnet.study.compare import Changes, Difference, Figure, HeaterChange, Revision

_LEGEND = f"{WORSE} is worse than before, {OTHER} is otherwise different."
RENAMED = "Parts are matched by name and pipes by the ports they join: what got another name is told as gone and new."


@dataclass(frozen=True, slots=True)
class Comparison:
    """A layout and its revision: both reports, what differs in the answers, and what was changed for it."""

    before: Report
    after: Report
    difference: Difference
    revision: Revision

    def to_text(self) -> str:
        """What `plumbnet compare` prints of it; ends with a line break."""
        return comparison_text(self)


def comparison_text(compared: Comparison) -> str:
    """The whole comparison; ends with a line break."""
    blocks = [*_heading(compared), *_answers(compared), *_changed(compared.revision), *_grounds(compared)]
    return document_text([*blocks, Paragraph(CAUTION)])


def _heading(compared: Comparison) -> Iterator[Block]:
    system = compared.after.system
    yield Heading(f"{system.title or system.record.file}: revision", 1)
    for label, report in (("before", compared.before), ("after", compared.after)):
        yield Paragraph(f"{report.system.record.file}, rules: {report.rules.in_full}", label)


def _answers(compared: Comparison) -> Iterator[Block]:
    found = compared.difference
    yield Points(tuple(difference_told(found, compared.after.facts, now="now")))
    for one in found.altered:
        yield Paragraph(f"{_named(one.before)}: {one.before.text}", "was")
        yield Paragraph(f"{_named(one.after)}: {one.after.text}", "now")
    for heater in found.heaters:
        yield Heading(heater.name)
        if heater.differs:
            yield Table((" ", "", "before", "after"), tuple(_rows(compared, heater)))
        else:
            yield Paragraph(f"as before: {'' if heater.after is None else heater.after.verdict.value}")
    if found.differs:
        yield Paragraph(_LEGEND)


def _rows(compared: Comparison, heater: HeaterChange) -> Iterator[tuple[str, ...]]:
    """What is said of a heater, and what finds no room where anything does not."""
    yield from difference_rows(heater, compared.before.facts, compared.after.facts)
    short = next(figure for figure in heater.figures if figure.key == "short_m3")
    if short.before or short.after:
        yield OTHER if short.differs else SAME, short.name, _volume(compared, short, 0), _volume(compared, short, 1)


def _volume(compared: Comparison, figure: Figure, side: int) -> str:
    volume_m3 = (figure.before, figure.after)[side]
    return "" if volume_m3 is None else compared.after.facts.volume(volume_m3)


def _named(finding: Finding) -> str:
    return f"{finding.severity.value} {finding.name} ({', '.join(finding.parts)})"


def _changed(revision: Revision) -> Iterator[Block]:
    yield Heading("What was changed")
    if not revision:
        yield Paragraph("Nothing: parts, pipes, scenarios and accepted findings are as before.")
        return
    yield Points(tuple(_points(revision)))
    if any(changes.added and changes.removed for changes in (revision.parts, revision.pipes)):
        yield Paragraph(RENAMED)


def _grounds(compared: Comparison) -> Iterator[Block]:
    """What was taken where the later file says nothing, and what it takes to make the comparison again."""
    if compared.after.facts.assumed:
        yield Heading("Assumed where the later file says nothing")
        yield Points(tuple(f"{words}: {listed(parts)}" for words, parts in compared.after.facts.assumed.items()))
    yield Heading("Record")
    sides = (("before", compared.before), ("after", compared.after))
    lines = tuple((side, label, text) for side, report in sides for label, text in imprint_lines(report))
    yield Table(("", "what", "value"), lines)


def _points(revision: Revision) -> Iterator[str]:
    for one in revision.head:
        yield _field(one)
    for what, changes in (
        ("part", revision.parts),
        ("pipe", revision.pipes),
        ("scenario", revision.scenarios),
        ("accepted finding", revision.accepted),
    ):
        yield from _listed(what, changes)


def _listed(what: str, changes: Changes) -> Iterator[str]:
    for how, things in (("added", changes.added), ("removed", changes.removed)):
        for thing in things:
            yield f"{what} {how}: {thing.name}{f' ({thing.kind})' if thing.kind else ''}"
    for one in changes.altered:
        yield f"{what} altered: {one.name}: {'; '.join(map(_field, one.fields))}"


def _field(change: FieldChange) -> str:
    return f"{change.field}: {change.before} -> {change.after}"
