"""A document as dense plain text, so that the sheet of a house stands on one page."""

import re
import textwrap
from collections.abc import Iterator, Sequence
from dataclasses import replace

from plumbnet.layout.yaml import visible
from plumbnet.report.prose import (
    DOCUMENT_WIDTH,
    Block,
    Heading,
    Paragraph,
    Points,
    Steps,
    Table,
    WrittenStep,
    document_text,
    text_columns,
)

SYMBOL = "symbol"
"""Head of the first column of a table of numbers that go in."""
_FEW = 4
"""Columns up to which a table tells what they are without a head."""
_LONG = 20
"""Letters of a source from which it is not repeated in one section."""
_RECKONING = ("min", "max", "exp", "log", "sqrt")
"""Functions of numbers alone; any other is a table, which is entered with units."""
_SYMBOL = re.compile(r"[A-Za-z]\w*")
_FUNCTION = re.compile(r"([A-Za-z]\w*)\(")
_HELD = "\x1f"
"""Stands for a space at which no line ends; it prints nowhere, so that no text of a file has it."""


def dense_text(blocks: Sequence[Block]) -> str:
    """The document as text of a hundred columns: empty lines before chapters alone, a step in a line or two.

    Ends with a line break.
    """
    return "\n".join(line for block in blocks for line in _dense(block)) + "\n"


def _dense(block: Block) -> Iterator[str]:
    match block:
        case Heading(text, 1):
            yield from (visible(text), "=" * min(DOCUMENT_WIDTH, len(visible(text))))
        case Heading(text, 2):
            yield from ("", visible(text).upper())
        case Heading(text):
            yield f"{visible(text)}:"
        case Paragraph(text, label):
            yield from _wrapped(f"{label}: {text}" if label else text, "", "  " if label else "")
        case Points(texts):
            yield from _wrapped(" ".join(texts), "", "")
        case Table(head, rows) if head[0] == SYMBOL:
            yield from _items(rows)
        case Table(head, rows):
            yield from text_columns(_filled([head, *rows]) if len(head) > _FEW else rows)
        case Steps(steps, first):
            yield from _steps(steps, first)
        case _:
            yield document_text([block]).rstrip("\n")


def _filled(rows: Sequence[tuple[str, ...]]) -> list[tuple[str, ...]]:
    """Rows, a head before them, without the columns in which nothing but the head stands."""
    kept = [any(cells) for cells in zip(*rows[1:], strict=True)]
    return [tuple(cell for cell, is_kept in zip(row, kept, strict=True) if is_kept) for row in rows]


def _items(rows: Sequence[tuple[str, ...]]) -> Iterator[str]:
    """Numbers that go in: what each is, and where it comes from; what is long to tell of that is told once."""
    seen: dict[str, str] = {}
    for symbol, what, value, origin in rows:
        first = seen.setdefault(origin, symbol)
        told = f"as {first}" if first != symbol and len(origin) > _LONG else origin
        yield from _wrapped(f"{_held(f'{symbol} = {value}')}, {what} ({told})", "", "    ")


def _steps(steps: Sequence[WrittenStep], first: int) -> Iterator[str]:
    """Steps one behind the other, a source that is long written out once."""
    seen: dict[str, int] = {}
    for number, step in enumerate(steps, start=first):
        at = seen.setdefault(step.source, number)
        is_told = at < number and len(step.source) > _LONG
        yield from _worked(number, replace(step, source=f"as step {at}") if is_told else step)


def _worked(number: int, step: WrittenStep) -> list[str]:
    """A step: what it is and why, its formula, the same with its numbers, what it comes to."""
    numbers = _with_numbers(step)
    sides = (step.symbol, step.formula, *([numbers] if numbers != step.result.text else []), step.result.with_unit)
    formula = " = ".join(map(_held, sides))
    return _wrapped(f"{step.name} [{step.source}]: {formula}", f"{number:>2}. ", " " * 4)


def _with_numbers(step: WrittenStep) -> str:
    """The formula with numbers for its symbols; with their units where it looks something up by them."""
    looks_up = any(word not in _RECKONING for word in _FUNCTION.findall(step.formula))
    numbers = {each.symbol: each.with_unit if looks_up else each.text for each in step.numbers}
    return _SYMBOL.sub(lambda found: numbers.get(found[0], found[0]), step.formula)


def _held(text: str) -> str:
    """Text that stands in one line."""
    return text.replace(" ", _HELD)


def _wrapped(text: str, first: str, following: str) -> list[str]:
    """Lines of a text behind what stands before the first and the following ones."""
    lines = textwrap.wrap(
        _HELD.join(map(visible, text.split(_HELD))),
        DOCUMENT_WIDTH,
        initial_indent=first,
        subsequent_indent=following,
        break_on_hyphens=False,
        break_long_words=False,
    )
    return [line.replace(_HELD, " ") for line in lines]
