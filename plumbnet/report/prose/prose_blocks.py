"""Headings, paragraphs, tables, worked steps and plain lines in; plain text of a hundred columns, or Markdown, out."""

import re
import textwrap
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import zip_longest
from typing import TypeAlias

from plumbnet.layout.yaml import visible
from plumbnet.report.prose.printed_precision import WrittenStep

DOCUMENT_WIDTH = 100
_GAP = "  "
_HELD = "~"
"""Stands for a space at which no line ends; no number and no unit has it."""
_LEAST = 24
"""Columns that a cell keeps, however many stand beside it."""


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading; level 1 is the document's own."""

    text: str
    level: int = 2


@dataclass(frozen=True, slots=True)
class Paragraph:
    """Running text; `label` stands before it."""

    text: str
    label: str = ""


@dataclass(frozen=True, slots=True)
class Points:
    """A list of sentences."""

    texts: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Table:
    """Rows of cells under a head."""

    head: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class Steps:
    """Worked steps, numbered from `first`."""

    steps: tuple[WrittenStep, ...]
    first: int = 1


@dataclass(frozen=True, slots=True)
class Lines:
    """Lines that stand as they are, in letters of one width."""

    lines: tuple[str, ...]


Block: TypeAlias = Heading | Paragraph | Points | Table | Steps | Lines


def document_text(blocks: Sequence[Block]) -> str:
    """The document as plain text, nothing in it that a terminal would obey."""
    return "\n\n".join("\n".join(_text(block)) for block in blocks) + "\n"


def to_markdown(blocks: Sequence[Block]) -> str:
    """The document as GitHub-flavored Markdown; what came from a file is text in it and never a mark."""
    return "\n\n".join("\n".join(_markdown(block)) for block in blocks) + "\n"


def escaped(text: str) -> str:
    r"""Text that Markdown shows as it is.

    >>> print(escaped("[x](http://y) | <b>*"))
    \[x\](http\://y) \| \<b\>\*
    """
    marked = re.sub(r"([\\`*_\[\]<>|~&$#])", r"\\\1", visible(text))
    return re.sub(r":(?=//)", r"\:", re.sub(r"(?i)\bwww\.", lambda found: found[0][:-1] + r"\.", marked))


def _text(block: Block) -> Iterator[str]:
    match block:
        case Heading(text, level):
            yield visible(text)
            yield ("=" if level == 1 else "-") * min(DOCUMENT_WIDTH, len(visible(text)))
        case Paragraph(text, label):
            yield from _wrapped(f"{label}: {text}" if label else text, "", "  " if label else "")
        case Points(texts):
            for text in texts:
                yield from _wrapped(text, "- ", "  ")
        case Table(head, rows):
            yield from text_columns([head, *rows])
        case Steps(steps, first):
            for number, step in enumerate(steps, start=first):
                yield from _worked(number, step)
        case Lines(lines):
            yield from map(visible, lines)


def text_columns(rows: Sequence[tuple[str, ...]]) -> Iterator[str]:
    """Rows in columns, each cell wrapped within its own."""
    widths = _widths(rows)
    for row in rows:
        cells = [_within(cell, width) for cell, width in zip(row, widths, strict=True)]
        for line in zip_longest(*cells, fillvalue=""):
            yield _GAP.join(cell.ljust(width) for cell, width in zip(line, widths, strict=True)).rstrip()


def _widths(rows: Sequence[tuple[str, ...]]) -> list[int]:
    """Widths of the columns: what they ask for, the widest narrowed until all stand within the page."""
    widths = [max(len(visible(row[column])) for row in rows) for column in range(len(rows[0]))]
    while sum(widths) + len(_GAP) * (len(widths) - 1) > DOCUMENT_WIDTH and max(widths) > _LEAST:
        widths[widths.index(max(widths))] -= 1
    return widths


def _within(text: str, width: int) -> list[str]:
    return textwrap.wrap(visible(text), width, break_on_hyphens=False) or [""]


def _wrapped(text: str, first: str, following: str) -> list[str]:
    """Lines of a text behind what stands before the first and the following ones."""
    return textwrap.wrap(
        visible(text), DOCUMENT_WIDTH, initial_indent=first, subsequent_indent=following, break_on_hyphens=False
    )


def _worked(number: int, step: WrittenStep) -> Iterator[str]:
    yield from _wrapped(f"{step.name} [{step.source}]", f"{number:>2}. ", " " * 4)
    yield f"    {step.symbol} = {step.formula}"
    numbers = (f"{each.symbol} = {each.with_unit}".replace(" ", _HELD) for each in step.numbers)
    for line in _wrapped(", ".join(numbers), " " * 8, " " * 8):
        yield line.replace(_HELD, " ")
    yield f"    {step.symbol} = {step.result.with_unit}"


def _markdown(block: Block) -> Iterator[str]:
    match block:
        case Heading(text, level):
            yield f"{'#' * level} {escaped(text)}"
        case Paragraph(text, label):
            yield f"**{escaped(label)}:** {escaped(text)}" if label else escaped(text)
        case Points(texts):
            yield from (f"- {escaped(text)}" for text in texts)
        case Table(head, rows):
            yield _row(escaped(cell) for cell in head)
            yield _row("---" for _ in head)
            yield from (_row(escaped(cell) for cell in row) for row in rows)
        case Steps(steps, first):
            yield _row(("Step", "What", "Formula", "With", "Result", "Source"))
            yield _row("---" for _ in range(6))
            for number, step in enumerate(steps, start=first):
                yield _worked_row(number, step)
        case Lines(lines):
            fence = "`" * max(3, *(1 + len(run) for line in lines for run in re.findall("`*", line)), 0)
            yield from (fence, *map(visible, lines), fence)


def _worked_row(number: int, step: WrittenStep) -> str:
    numbers = "<br>".join(f"`{each.symbol}` = {each.with_unit}" for each in step.numbers)
    formula, result = f"`{step.symbol} = {step.formula}`", f"**{step.result.with_unit}**"
    return _row((str(number), escaped(step.name), formula, numbers, result, escaped(step.source)))


def _row(cells: Iterator[str] | tuple[str, ...]) -> str:
    return f"| {' | '.join(cells)} |"
