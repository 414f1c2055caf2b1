"""An exercise in, what stands on its worksheet and on its key out."""

import re
import textwrap
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from plumbnet.analysis.water_walk import WaterWalk
from plumbnet.layout.model import System
from plumbnet.layout.units import Units
from plumbnet.report.prose import DOCUMENT_WIDTH
from plumbnet.report.text import CAUTION, parts_in_words, runs_in_words, tubes_in_words
from plumbnet.report.trace import ShortTrace, short_trace, trace_text
from plumbnet.rules import listed
from plumbnet.study.exercise import LETTERS, Blank, Choice, Exercise

RULE = "_" * 12
"""What an answer is written on."""
HEIGHTS = "Pressures are read on a gauge at the part; up and down are heights above and below 0."
"""How the numbers in a picture are to be read."""


@dataclass(frozen=True, slots=True)
class Option:
    """An option of a blank, with the letter before it."""

    letter: str
    word: str
    meaning: str


@dataclass(frozen=True, slots=True)
class Line:
    """A blank on paper: options to tick, or a rule to write on and the unit behind it."""

    prompt: str
    options: tuple[Option, ...]
    unit: str


@dataclass(frozen=True, slots=True)
class Worksheet:
    """One side of paper for an apprentice."""

    number: int
    place: str
    about: str
    parts: tuple[tuple[str, str, str], ...]
    runs: tuple[str, ...]
    tubes: tuple[str, ...]
    """Those of `runs` of which a length is given, which no picture shows."""
    assumed: tuple[str, ...]
    supposed: str
    prompt: str
    lines: tuple[Line, ...]
    asked_about: frozenset[str]
    """Parts named in what is asked, which a picture has to name."""


@dataclass(frozen=True, slots=True)
class Key:
    """The answers to a worksheet, the reason, the way of the water, and the layout as a file to try."""

    number: int
    place: str
    answers: tuple[tuple[str, str], ...]
    because: tuple[str, ...]
    walks: tuple[tuple[str, ...], ...]
    in_short: tuple[ShortTrace, ...]
    findings: tuple[str, ...]
    file: str
    layout: tuple[str, ...]


def worksheet(exercise: Exercise) -> Worksheet:
    """What stands on the worksheet; nothing in it gives the answer away."""
    origin, system = exercise.origin, exercise.system
    return Worksheet(
        number=origin.number,
        place=system.title,
        about=origin.in_words,
        parts=tuple(parts_in_words(system)),
        runs=tuple(runs_in_words(system)),
        tubes=tuple(tubes_in_words(system)),
        assumed=tuple(f"{words}: {listed(parts)}" for words, parts in exercise.drawn.facts.assumed.items()),
        supposed=exercise.supposed,
        prompt=exercise.asked.prompt,
        lines=(lines := tuple(line_of(blank, exercise.report.facts.units) for blank in exercise.asked.blanks)),
        asked_about=frozenset(_named(system, exercise, lines)),
    )


def _named(system: System, exercise: Exercise, lines: Iterable[Line]) -> Iterator[str]:
    """The parts that are named in the supposition, the question, or an option of it."""
    options = (option.word for line in lines for option in line.options)
    words = " ".join([exercise.supposed, exercise.asked.prompt, *options])
    for name in system.parts:
        if re.search(rf"(?<![\w/-]){re.escape(name)}(?![\w/-])", words):
            yield name


def key(exercise: Exercise, walks: Iterable[WaterWalk]) -> Key:
    """What stands on the key; `walks` are those that explain the answer."""
    report, asked, found = exercise.report, exercise.asked, tuple(walks)
    return Key(
        number=exercise.origin.number,
        place=exercise.system.title,
        answers=tuple((blank.prompt, blank.answer(report.facts.units)) for blank in asked.blanks),
        because=asked.because,
        walks=tuple(_walk(trace_text(report.facts, walk)) for walk in found),
        in_short=tuple(short_trace(report.facts, walk) for walk in found),
        findings=tuple(f"{one.severity.value}: {one.text}" for one in report.findings),
        file=report.system.record.file,
        layout=tuple(exercise.text.splitlines()),
    )


def line_of(blank: Blank, units: Units) -> Line:
    """A blank as it stands on paper."""
    if isinstance(blank, Choice):
        pairs = zip(LETTERS, blank.options, strict=False)
        options = tuple(Option(letter, word, blank.meanings.get(word, "")) for letter, word in pairs)
        return Line(blank.prompt, options, "")
    return Line(blank.prompt, (), blank.dimension.unit_name(units))


def _walk(told: str) -> tuple[str, ...]:
    """A trace without the caution at its end, which stands once on the page."""
    caution = "\n".join(textwrap.wrap(CAUTION, DOCUMENT_WIDTH))
    return tuple(told.rstrip().removesuffix(caution).rstrip().splitlines())
