"""Reviews as data: the JSON to which a resubmission is compared, and a table for spreadsheets."""

import csv
import io
from collections.abc import Iterable, Iterator
from typing import Final

from plumbnet.analysis import Report
from plumbnet.layout.units import FRACTION, LENGTH, POWER, PRESSURE, TEMPERATURE, VOLUME
from plumbnet.report.formats import BETWEEN, CsvRow, Json, accepted_fields, cell, error_rows, in_order, note_rows
from plumbnet.report.output import Noted, Unread, program_build, program_version
from plumbnet.report.review.review_words import found_in_words
from plumbnet.report.review.reviewed_files import ReviewedFiles
from plumbnet.rules import Answered, rules_in_words
from plumbnet.study.review import Review

SI: Final = {
    PRESSURE.name: "Pa",
    TEMPERATURE.name: "K",
    VOLUME.name: "m3",
    POWER.name: "W",
    FRACTION.name: "1",
    LENGTH.name: "m",
}
"""The unit of a value, by the name of its dimension."""
COLUMNS: Final = (
    "file",
    "number",
    "requirement",
    "answer",
    "severity",
    "parts",
    "line",
    "value",
    "bound",
    "sense",
    "unit",
    "found",
    "advice",
    "asks",
    "clause",
    "clause_state",
    "rules",
    "sha256",
    "plumbnet",
)
"""Names of the columns; more may come behind them. A row with an empty `answer` is an error of its file."""


def review_document(files: ReviewedFiles) -> str:
    """What `plumbnet review --format json` prints, less the line break; values are SI, pressures gauge."""
    errors = [row for one in files.refused for row in error_rows(one)]
    notes = [row for one in files.others for row in note_rows(one)]
    reviews = [review_fields(one) for one in files.reviews]
    return in_order({"build": program_build(), "reviews": reviews, "errors": errors, "notes": notes})


def review_fields(review: Review) -> Json:
    """One review in it."""
    report = review.report
    return {
        "file": report.system.record.file,
        "sha256": report.system.record.sha256,
        "title": report.system.title,
        "job": dict(report.system.job.said()),
        "rules": report.rules.named,
        "rules_sha256": report.rules.sha256,
        "rules_from": report.rules.named_by,
        "reviewer": review.reviewer or None,
        "date": review.date or None,
        "counts": {word.value: count for word, count in sorted(review.counts.items())},
        "accepted": [accepted_fields(one) for one in report.accepted],
        "accepted_in_vain": [{**accepted_fields(one), "why": one.why} for one in report.claimed],
        "requirements": [_answer(review, one) for one in review.answers],
        "site": [{"asks": one.asks, "clause": one.clause, "clause_state": one.ground.value} for one in review.site],
    }


def _answer(review: Review, one: Answered) -> Json:
    measured, found = one.measured, one.finding
    return {
        "name": one.rule.name,
        "number": review.number_of(one),
        "asks": one.rule.asks,
        "clause": one.ruling.clause,
        "clause_state": one.ruling.ground.value,
        "parts": list(one.parts),
        "line": one.line or None,
        "answer": one.word.value,
        "value": None if measured is None else measured.value,
        "bound": None if measured is None else measured.bound,
        "sense": None if measured is None else _sense(one),
        "unit": None if measured is None else SI[measured.dimension.name],
        "text": one.text,
        "advice": None if found is None else found.advice,
        "severity": None if found is None else found.severity.value,
    }


def _sense(one: Answered) -> str | None:
    if one.measured is None:
        return None
    return "at least" if one.measured.at_least else "at most"


def review_table(files: ReviewedFiles) -> str:
    """A row to an answer, and one to each mistake of a file that could not be understood. Source: RFC 4180."""
    text = io.StringIO()
    table = csv.writer(text, lineterminator="\r\n")
    table.writerow(COLUMNS)
    for row in (*_rows(files.reviews), *_faults(files.refused), *_notes(files.others)):
        table.writerow([cell(row.get(column)) for column in COLUMNS])
    return text.getvalue()


def _rows(reviews: Iterable[Review]) -> Iterator[CsvRow]:
    for review in reviews:
        units = review.report.facts.units
        for one in review.answers:
            measured, found = one.measured, one.finding
            yield {
                "file": review.report.system.record.file,
                "number": review.number_of(one),
                "requirement": one.rule.name,
                "answer": one.word.value,
                "severity": None if found is None else found.severity.value,
                "parts": BETWEEN.join(one.parts),
                "line": one.line or None,
                "value": None if measured is None else measured.value,
                "bound": None if measured is None else measured.bound,
                "sense": _sense(one),
                "unit": None if measured is None else SI[measured.dimension.name],
                "found": found_in_words(one, units),
                "advice": None if found is None else found.advice,
                "asks": one.rule.asks,
                "clause": one.ruling.clause,
                "clause_state": one.ruling.ground.value,
                "rules": _rules(review.report, one),
                "sha256": review.report.system.record.sha256,
                "plumbnet": program_version(),
            }


def _rules(report: Report, one: Answered) -> str:
    """The rules by which something is answered: those of its circuit."""
    return report.profile_of(one.parts[0]).profile if one.parts else rules_in_words(report.rules.named)


def _faults(refused: Iterable[Unread]) -> Iterator[CsvRow]:
    for unread in refused:
        for fault in unread.faults:
            yield {"file": unread.file, "line": fault.line or None, "found": fault.sentence}


def _notes(others: Iterable[Noted]) -> Iterator[CsvRow]:
    for noted in others:
        for fault in noted.faults:
            yield {"file": noted.file, "line": fault.line or None, "found": f"{noted.sort}: {fault.sentence}"}
