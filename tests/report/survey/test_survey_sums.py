from collections.abc import Iterator

import pytest

from plumbnet.report.output.writer import Fate
from plumbnet.report.survey.survey_book import Book
from plumbnet.report.survey.survey_entry import SurveyEntry, WhatIfFate
from plumbnet.report.survey.survey_query import SurveyQuery
from plumbnet.report.survey.survey_sums import MOST_SHOWN_FIRST, FilePlace, Misread, StandingFinding, sums
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.rules.finding import Severity
from plumbnet.study.whatif.bulk_changes import Supposed


@pytest.fixture
def book() -> Iterator[Book]:
    with Book(None, SurveyQuery(None, None, Supposed("repair"))) as book:
        yield book


def heater(name: str, before: str | None, after: str | None) -> dict[str, str | int | None]:
    is_worse = int((before, after) == ("open", "trapped"))
    return {
        "name": name,
        "kind": "boiler",
        "line": 4,
        "verdict": before,
        "after_verdict": after,
        "after_stopped_by": "meter",
        "stopped_by": "cv",
        "is_worse": is_worse,
        "is_better": int((after, before) == ("open", "trapped")),
    }


def finding(severity: str, before: int, after: int, reason: str | None = None) -> dict[str, str | int | None]:
    row: dict[str, str | int | None] = {
        "name": f"f-{severity}",
        "severity": severity,
        "parts": "heater",
        "text": "what",
        "reason": reason,
    }
    row |= {} if reason is None else {"accepted_by": "applicant", "accepted_line": 9}
    return {**row, "stands_before": before, "stands_after": after}


def house(
    path: str, *turns: tuple[str | None, str | None], findings: tuple[dict[str, str | int | None], ...] = ()
) -> SurveyEntry:
    rows = tuple(heater(f"h{number}", *turn) for number, turn in enumerate(turns))
    file: dict[str, str | int] = {
        "what_if": WhatIfFate.MADE,
        "is_worse": max((int(str(row["is_worse"])) for row in rows), default=0),
    }
    return SurveyEntry(path, "ab", Fate.CHECKED, file, rows, findings)


def test_files_heaters_and_findings_are_summed(book: Book) -> None:
    book.add(
        [
            house(
                "b",
                ("open", "trapped"),
                ("trapped", "trapped"),
                findings=(finding("error", 1, 1), finding("note", 1, 0)),
            ),
            house(
                "a",
                ("open", "trapped"),
                ("trapped", "open"),
                findings=(finding("error", 0, 1), finding("error", 1, 1, "so")),
            ),
            house("c", ("open", None), (None, "sealed")),
            SurveyEntry(
                "d", None, Fate.NOT_UNDERSTOOD, {}, errors=({"line": 3, "text": "first"}, {"line": 9, "text": "then"})
            ),
            SurveyEntry("e", "ab", Fate.NO_LAYOUT, {}),
        ]
    )
    found = sums(book.file, is_supposed=True)
    assert found.files == {Fate.CHECKED: 3, Fate.NOT_UNDERSTOOD: 1, Fate.NO_LAYOUT: 1}
    assert found.changes == {WhatIfFate.MADE: 3, WhatIfFate.NOT_TOUCHED: 0, WhatIfFate.REFUSED: 0}
    assert (found.worse_files, found.worse_heaters, found.better_heaters) == (2, 2, 1)
    opened, trapped = Verdict.OPEN, Verdict.TRAPPED
    assert found.turns[opened, trapped] == 2
    assert found.turns[None, Verdict.SEALED] == 1
    assert next(iter(found.before.items())) == (opened, 3)
    assert (found.after[trapped], found.after[Verdict.SEALED], found.after[opened]) == (3, 1, 1)
    assert found.places.items == (
        FilePlace("a", 4, "h0", (opened, trapped), "meter"),
        FilePlace("b", 4, "h0", (opened, trapped), "meter"),
        FilePlace("c", 4, "h1", (None, Verdict.SEALED), "meter"),
    )
    assert found.findings.items == (
        StandingFinding("f-error", Severity.ERROR, 1, 2, 2),
        StandingFinding("f-note", Severity.NOTE, 1, 0, 1),
    )
    assert (found.errors, found.accepted) == (2, 1)
    assert found.misread.items == (Misread("d", 3, "first", 2),)


def test_only_the_first_are_named_and_the_rest_counted(book: Book) -> None:
    book.add([house(f"{number:03}", ("open", "trapped")) for number in range(MOST_SHOWN_FIRST + 7)])
    found = sums(book.file, is_supposed=True)
    assert [place.path for place in found.places.items] == [f"{number:03}" for number in range(MOST_SHOWN_FIRST)]
    assert (found.places.in_all, found.places.more) == (MOST_SHOWN_FIRST + 7, 7)


def test_where_nothing_is_supposed_the_trapped_are_named(book: Book) -> None:
    book.add([house("a", ("open", None), ("trapped", None))])
    assert sums(book.file, is_supposed=False).places.items == (FilePlace("a", 4, "h1", (Verdict.TRAPPED, None), "cv"),)


def test_files_that_are_gone_count_in_nothing_but_their_number(book: Book) -> None:
    broken = SurveyEntry("b", None, Fate.NOT_UNDERSTOOD, {}, errors=({"line": 3, "text": "first"},))
    book.add([house("a", ("open", "trapped"), findings=(finding("error", 1, 1, "so"), finding("error", 1, 1))), broken])
    book.finish()  # it has met none
    found = sums(book.file, is_supposed=True)
    assert found.missing == 2
    assert sum(found.files.values()) == sum(found.changes.values()) == sum(found.turns.values()) == 0
    assert (found.places.in_all, found.findings.in_all, found.misread.in_all) == (0, 0, 0)
    assert (found.errors, found.accepted, found.worse_files, found.worse_heaters) == (0, 0, 0, 0)


def test_empty_survey_has_sums_too(book: Book) -> None:
    assert set(sums(book.file, is_supposed=True).before.values()) == {0}
