"""A layout and its revision as text: what became worse first, then every heater side by side, then what was changed."""

from collections.abc import Iterator
from dataclasses import dataclass

from plumbnet.layout.model import FieldChange
from plumbnet.report.comparison.resubmission_report import first_to_read, less_accepted, other_rules, what_was_asked
from plumbnet.report.output import imprint_lines
from plumbnet.report.prose import Block, Heading, Paragraph, Points, Table, document_text
from plumbnet.report.studies import OTHER, SAME, WORSE, difference_rows, difference_told
from plumbnet.report.text import CAUTION
from plumbnet.rules import Finding, listed
from plumbnet.study.compare import Alike, Changes, Comparison, Figure, HeaterChange, Revision

_LEGEND = f"{WORSE} is worse than before, {OTHER} is otherwise different."
DIFFERENCE = "What differs"
RENAMED = "A part of another name that kept kind, pipes and values is the same part: all is told by the names of now."
MATCHED = "Other parts are matched by name, and pipes by the ports they join."
"""Said where something is gone and something new."""


@dataclass(frozen=True, slots=True)
class ComparisonChapter:
    """A chapter of a comparison; `key` is its name in links, and one without a title goes on with what was said."""

    key: str
    title: str
    blocks: tuple[Block, ...]


def comparison_text(compared: Comparison) -> str:
    """The whole comparison; ends with a line break."""
    blocks = list(_heading(compared))
    for chapter in comparison_chapters(compared):
        blocks += [Heading(chapter.title)] if chapter.title else []
        blocks += chapter.blocks
    return document_text([*blocks, Paragraph(CAUTION)])


def comparison_chapters(compared: Comparison) -> Iterator[ComparisonChapter]:
    """What is told of a layout and its revision, in the order in which a reviewer reads it; empty chapters left out."""
    written = (
        ("first", "First to read", first_to_read(compared)),
        ("rules", "Other rules than before", other_rules(compared)),
        ("asked", "What the last review asked", what_was_asked(compared)),
        ("answers", DIFFERENCE if _is_led(compared) else "", _answers(compared)),
        ("changes", "What was changed", _changed(compared)),
        ("assumed", "Assumed where the later file says nothing", _assumed(compared)),
        ("record", "Record", _record(compared)),
    )
    for key, title, blocks in written:
        told = tuple(blocks)
        if told:
            yield ComparisonChapter(key, title, told)


def _is_led(compared: Comparison) -> bool:
    """Whether something is told before the answers."""
    return any(True for part in (first_to_read, other_rules, what_was_asked) for _ in part(compared))


def comparison_title(compared: Comparison) -> str:
    """What stands above all."""
    system = compared.after.system
    return f"{system.title or system.record.file}: revision"


def _heading(compared: Comparison) -> Iterator[Block]:
    yield Heading(comparison_title(compared), 1)
    for label, words in compared_files(compared):
        yield Paragraph(words, label)


def compared_files(compared: Comparison) -> Iterator[tuple[str, str]]:
    """Each of the files behind what it is, and its rules."""
    for label, report in (("before", compared.before), ("after", compared.after)):
        yield label, f"{report.system.record.file}, rules: {report.rules.in_full}"


def _answers(compared: Comparison) -> Iterator[Block]:
    found = compared.difference
    yield Points((*difference_told(found, compared.after.facts, now="now"), *less_accepted(compared)))
    for one in found.altered:
        yield Paragraph(f"{_named(one.before)}: {one.before.text}", "was")
        yield Paragraph(f"{_named(one.after)}: {one.after.text}", "now")
    for heater in found.heaters:
        yield Heading(_called(compared, heater.name))
        if heater.differs:
            yield Table((" ", "", "before", "after"), tuple(_rows(compared, heater)))
        else:
            yield Paragraph(f"as before: {'' if heater.after is None else heater.after.verdict.value}")
    if found.differs:
        yield Paragraph(_LEGEND)


def _called(compared: Comparison, name: str) -> str:
    """A part by its name, and by the one that it had."""
    was = next((one.before for one in compared.revision.renamed if one.after == name), None)
    return name if was is None else f"{name} ({was} before)"


def _rows(compared: Comparison, heater: HeaterChange) -> Iterator[tuple[str, ...]]:
    """What is said of a heater, and what finds no room where anything does not."""
    yield from difference_rows(heater, compared.told_before.facts, compared.after.facts)
    short = next(figure for figure in heater.figures if figure.key == "short_m3")
    if short.before or short.after:
        yield OTHER if short.differs else SAME, short.name, _volume(compared, short, 0), _volume(compared, short, 1)


def _volume(compared: Comparison, figure: Figure, side: int) -> str:
    volume_m3 = (figure.before, figure.after)[side]
    return "" if volume_m3 is None else compared.after.facts.volume(volume_m3)


def _named(finding: Finding) -> str:
    return f"{finding.severity.value} {finding.name} ({', '.join(finding.parts)})"


def _changed(compared: Comparison) -> Iterator[Block]:
    revision = compared.revision
    if not revision:
        yield Paragraph("Nothing: parts, pipes, scenarios and accepted findings are as before.")
        return
    yield Points(tuple(_points(revision)))
    if revision.renamed:
        yield Paragraph(RENAMED)
    if any(changes.added and changes.removed for changes in (revision.parts, revision.pipes)):
        yield Paragraph(MATCHED)
    for one in compared.alike:
        yield Paragraph(_alike(one))


def _alike(one: Alike) -> str:
    """What is gone and what is new in its place."""
    stand = "stands" if len(one.after) == 1 else "stand"
    return f"{listed(one.after)} {stand} where {listed(one.before)} stood, with other values."


def _assumed(compared: Comparison) -> Iterator[Block]:
    """What was taken where the later file says nothing."""
    if compared.after.facts.assumed:
        yield Points(tuple(f"{words}: {listed(parts)}" for words, parts in compared.after.facts.assumed.items()))


def _record(compared: Comparison) -> Iterator[Block]:
    """What it takes to make the comparison again."""
    sides = (("before", compared.before), ("after", compared.after))
    lines = tuple((side, label, text) for side, report in sides for label, text in imprint_lines(report))
    yield Table(("", "what", "value"), lines)


def _points(revision: Revision) -> Iterator[str]:
    for one in revision.head:
        yield _field(one)
    for renamed in revision.renamed:
        yield f"part renamed: {renamed.before} -> {renamed.after} ({renamed.kind})"
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
