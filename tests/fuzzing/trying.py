"""One input to what the program makes of it, or to the promise that it broke."""

import csv
import io
import json
import resource
import signal
import time
import xml.etree.ElementTree as ET
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Final, Literal, NoReturn

import plumbnet
from fuzzing.asking import questions
from plumbnet.analysis.report import Report
from plumbnet.layout.yaml.fault import LayoutError, split_lines
from plumbnet.report.formats.csv1 import CsvWriter
from plumbnet.report.formats.json1 import JsonWriter
from plumbnet.report.formats.junit import JunitWriter
from plumbnet.report.formats.sarif import SarifWriter
from plumbnet.report.output.writer import Fate, FileOutcome, Unread, Writer, unread
from plumbnet.report.prose.word_colours import plain
from plumbnet.report.text.text_writers import LineWriter, TextWriter
from plumbnet.rules.finding import Severity
from plumbnet.study.remedies.checked_file import Checked
from plumbnet.study.remedies.remedy_search import remedies_if_small

LONGEST_S: Final = 2.0
"""CPU time that an input may take to be read, checked and written."""
LONGEST_ANSWER_S: Final = 20.0
"""CPU time that any other question about it may take: a warm-up follows many zones for hours in small steps."""
MOST_MIB: Final = 500
"""Memory that the process may hold at any time."""
FILE: Final = "input.yaml"
Fortune = Literal["refused", "analysed"]


class Broken(Exception):
    """A promise that does not hold, in one sentence."""


class TooLong(BaseException):
    """More time is gone than one question may take; no `except Exception` keeps it."""


def _in_json(text: str) -> None:
    json.loads(text, parse_constant=_no_number)


def _no_number(word: str) -> NoReturn:
    raise Broken(f"{word} stands in the JSON")


def _in_xml(text: str) -> None:
    ET.fromstring(text)  # noqa: S314  our own, and it is the program that is tried


def _in_csv(text: str) -> None:
    widths = {len(row) for row in csv.reader(io.StringIO(text, newline=""), strict=True)}
    if len(widths) > 1:
        raise Broken(f"rows of the CSV have {sorted(widths)} columns")


def _for_terminal(text: str) -> None:
    odd = next((c for c in text if not c.isprintable() and c != "\n"), None)
    if odd is not None:
        raise Broken(f"U+{ord(odd):04X} would reach a terminal")


WRITERS: Final[tuple[tuple[Writer, Callable[[str], None]], ...]] = (
    (TextWriter(plain), _for_terminal),
    (LineWriter(plain), _for_terminal),
    (JsonWriter(), _in_json),
    (SarifWriter(), _in_json),
    (JunitWriter(frozenset({Severity.ERROR})), _in_xml),
    (CsvWriter(), _in_csv),
)
"""Every form of output, and what looks through it."""


def tried(data: bytes, number: int) -> Fortune:
    """What becomes of an input: read, checked, written in one form or in all, in some asked everything.

    Raises whatever the program does that it should not: Broken, TooLong, MemoryError, any other exception. The forms
    go by the number, which is thus part of what makes a failure come again.
    """
    every = number % 30 == 0
    chosen = WRITERS if every else (WRITERS[number // 10 % len(WRITERS)],)
    with watched():
        fortune, written = _written(data, chosen)
    if every:
        with watched():
            again = _written(data, chosen)[1]
        if again != written:
            raise Broken("the output differs between two runs on the same input")
    if fortune == "analysed" and number % 150 == 0:
        for question in questions(data, with_pictures=number % 3_000 == 0):
            with watched(LONGEST_ANSWER_S):
                _look(*question())
    return fortune


def _look(form: str, text: str) -> None:
    {"json": _in_json, "text": _for_terminal, "csv": _in_csv, "xml": _in_xml}[form](text)


@contextmanager
def watched(longest_s: float = LONGEST_S) -> Iterator[None]:
    """Time and memory of what is done inside."""
    start = time.process_time()
    signal.setitimer(signal.ITIMER_PROF, longest_s)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0.0)
    if time.process_time() - start > longest_s:
        raise TooLong
    if peak_mib() > MOST_MIB:
        raise Broken(f"the process has held more than {MOST_MIB} MiB")


def peak_mib() -> float:
    """Most memory that this process has held."""
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024


def _written(data: bytes, chosen: tuple[tuple[Writer, Callable[[str], None]], ...]) -> tuple[Fortune, list[str]]:
    answer: Report | Unread
    try:
        answer = plumbnet.check(plumbnet.read_bytes(data, file=FILE))
    except LayoutError as error:
        look_at_faults(error, data)
        answer = unread(FILE, error)
    documents = []
    for writer, look in chosen:
        document = writer.document()
        text = document.opening() + document.add(_outcome(writer, answer)) + document.closing()
        look(text)
        documents.append(text)
    return "refused" if isinstance(answer, Unread) else "analysed", documents


def _outcome(writer: Writer, answer: Report | Unread) -> FileOutcome:
    if isinstance(answer, Unread):
        return FileOutcome(FILE, Fate.NOT_UNDERSTOOD, writer.refused(answer), words=answer.words)
    found = remedies_if_small(answer) if writer.shows_remedies else None
    piece = writer.answered(Checked(answer, found))
    verdicts = tuple(heater.verdict for heater in answer.heaters)
    return FileOutcome(FILE, Fate.CHECKED, piece, verdicts, answer.findings, answer.accepted)


def look_at_faults(error: LayoutError, data: bytes) -> None:
    """Every fault says something and stands inside the file; nothing of it would upset a terminal."""
    if not error.faults:
        raise Broken("a file is refused and no fault is told")
    lines = split_lines(data.decode("utf-8-sig", "replace"))
    for fault in error.faults:
        if fault.line == 0 == fault.column:
            continue
        if not 1 <= fault.line <= len(lines) or not 1 <= fault.column <= len(lines[fault.line - 1]) + 1:
            raise Broken(f"the fault {fault.sentence!r} stands in line {fault.line}, column {fault.column}: outside")
    if not all(fault.text.strip() for fault in error.faults):
        raise Broken("a fault has no words")
    _for_terminal(str(error))
