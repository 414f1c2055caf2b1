"""The sums of a survey as text: files, heaters from verdict to verdict, what the what-if traps, findings, mistakes."""

from collections.abc import Callable, Iterable, Iterator, Mapping

from plumbnet.report.output import Fate, program_line, rules_line
from plumbnet.report.prose import Block, Heading, Paragraph, Points, Table, document_text
from plumbnet.report.studies import all_done_in_words
from plumbnet.report.survey.survey_entry import WhatIfFate
from plumbnet.report.survey.survey_query import SurveyQuery
from plumbnet.report.survey.survey_sums import (
    FilePlace,
    First,
    Item,
    Misread,
    OtherSort,
    StandingFinding,
    SurveySums,
    VerdictTurn,
)
from plumbnet.report.text import CAUTION, NO_LAYOUT, counted
from plumbnet.rules import Acceptor, rules_in_words
from plumbnet.rules.facts import FROM_BEST_TO_WORST, Verdict

ALL = "all"
NO_ACCEPTANCE = "none counts that a file has of its own"
NO_ANSWER = "no answer"
"""Where the what-if cannot be made, or takes the heater out or brings it in."""


def survey_text(asked: SurveyQuery, sums: SurveySums) -> str:
    """The whole summary; ends with a line break."""
    blocks = [*_heading(asked, sums), *_files(sums), *_heaters(sums), *_findings(sums), *_misread(sums), *_others(sums)]
    return document_text([*blocks, *_record(asked), Paragraph(CAUTION)])


def _heading(asked: SurveyQuery, sums: SurveySums) -> Iterator[Block]:
    yield Heading(f"survey of {counted(sum(sums.files.values()) - sums.files[Fate.NO_LAYOUT], 'layout')}", 1)
    yield Paragraph(
        "each file's own" if asked.rules is None else rules_in_words(asked.rules.told(lambda profile: profile.in_full)),
        "rules",
    )
    if asked.own is not None:
        yield Paragraph(asked.own.file or NO_ACCEPTANCE, "acceptances")
    if asked.supposed.scenario is not None:
        yield Paragraph(f"scenario {asked.supposed.scenario}, in each layout that has it", "what if")
    if asked.supposed.to_each:
        yield Paragraph(all_done_in_words(asked.supposed.to_each), "what if")


def _files(sums: SurveySums) -> Iterator[Block]:
    yield Heading("Files")
    yield Points(tuple(_counts(sums)))


def _counts(sums: SurveySums) -> Iterator[str]:
    yield f"{sums.files[Fate.CHECKED]} checked"
    for count, what in (
        (sums.files[Fate.NOT_UNDERSTOOD], "not understood"),
        (sums.files[Fate.NO_LAYOUT], NO_LAYOUT),
        (sums.missing, "of an earlier run no longer there: kept, and not counted"),
    ):
        if count:
            yield f"{count} {what}"
    if sums.is_supposed:
        yield (
            f"the what-if: made in {sums.changes[WhatIfFate.MADE]}, nothing to change in "
            f"{sums.changes[WhatIfFate.NOT_TOUCHED]}, cannot be made in {sums.changes[WhatIfFate.REFUSED]}"
        )
        yield f"{sums.worse_files} worse with it, {sums.better_files} better"


def _heaters(sums: SurveySums) -> Iterator[Block]:
    yield Heading("Heaters")
    if sums.is_supposed:
        yield _turned(sums.turns)
        yield Points((f"{counted(sums.worse_heaters, 'heater')} worse with it, {sums.better_heaters} better",))
    else:
        rows = ((verdict.value, str(count)) for verdict, count in sums.before.items())
        yield Table(("verdict", "heaters"), tuple(rows))
    title = "Would become trapped or sealed" if sums.is_supposed else "Trapped or sealed"
    yield from _listed(title, sums.places, _place, "heater")


def _turned(turns: Mapping[VerdictTurn, int]) -> Table:
    """A row for each verdict before and a column for each after; those that no heater has are left out."""
    rows = _in_order(old for old, _ in turns)
    columns = _in_order(new for _, new in turns)
    table = [[turns.get((old, new), 0) for new in columns] for old in rows]
    if table:
        table.append([sum(column) for column in zip(*table, strict=True)])
    cells = zip((*map(_said, rows), ALL), table, strict=False)
    return Table(
        ("before; after:", *map(_said, columns), ALL),
        tuple((word, *map(str, counts), str(sum(counts))) for word, counts in cells),
    )


def _in_order(verdicts: Iterable[Verdict | None]) -> list[Verdict | None]:
    found = set(verdicts)
    return [verdict for verdict in (*FROM_BEST_TO_WORST, None) if verdict in found]


def _said(verdict: Verdict | None) -> str:
    return NO_ANSWER if verdict is None else verdict.value


def _findings(sums: SurveySums) -> Iterator[Block]:
    if not sums.findings.items and not sums.accepted:
        return
    yield Heading("Findings")
    head = (
        ("finding", "severity", "before", "after", "files")
        if sums.is_supposed
        else ("finding", "severity", "stands", "files")
    )
    if sums.findings.items:
        yield Table(head, tuple(_standing(one, sums) for one in sums.findings.items))
    yield from _rest(sums.findings, "finding")
    if sums.accepted:
        yield Points(tuple(_accepted(sums)))


def _accepted(sums: SurveySums) -> Iterator[str]:
    for by in Acceptor:
        own = {name: count for (acceptor, name), count in sums.accepted_by.items() if acceptor is by}
        if own:
            names = ", ".join(name if count == 1 else f"{name} ({count} times)" for name, count in own.items())
            yield f"{sum(own.values())} accepted by the {by.value}, each with its reason: {names}"


def _standing(one: StandingFinding, sums: SurveySums) -> tuple[str, ...]:
    counts = (one.before, one.after, one.files) if sums.is_supposed else (one.before, one.files)
    return one.name, one.severity.value, *map(str, counts)


def _misread(sums: SurveySums) -> Iterator[Block]:
    yield from _listed("Not understood, or the what-if cannot be made", sums.misread, _mistake, "file")


def _others(sums: SurveySums) -> Iterator[Block]:
    yield from _listed("Not layouts", sums.others, _other, "file")


def _other(file: OtherSort) -> str:
    return f"{_at(file.path, file.line)}: {file.sort}: {file.text}"


def _listed(title: str, first: First[Item], line: Callable[[Item], str], what: str) -> Iterator[Block]:
    """What there are of something, a line each; nothing where there are none."""
    if first.items:
        yield Heading(title)
        yield Points(tuple(map(line, first.items)))
        yield from _rest(first, what)


def _rest(first: First[Item], what: str) -> Iterator[Block]:
    if first.more:
        yield Paragraph(f"and {counted(first.more, f'more {what}')}")


def _place(place: FilePlace) -> str:
    turn = " -> ".join(verdict.value for verdict in place.turn if verdict is not None)
    stopped = f", stopped by {place.stopped_by}" if place.stopped_by else ""
    return f"{_at(place.path, place.line)}: {place.name}: {turn}{stopped}"


def _mistake(file: Misread) -> str:
    more = f" ({file.mistakes - 1} more)" if file.mistakes > 1 else ""
    return f"{_at(file.path, file.line)}: {file.text}{more}"


def _at(path: str, line: int | None) -> str:
    return path if line is None else f"{path}:{line}"


def _record(asked: SurveyQuery) -> Iterator[Block]:
    rows = [("program", program_line())]
    if asked.rules is not None:
        rows.append(("rules", rules_line(asked.rules)))
    yield Heading("Record")
    yield Table(("what", "value"), tuple(rows))
