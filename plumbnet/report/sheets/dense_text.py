"""A document as dense plain text, so that the sheet of a house stands on one page."""

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
            yield from (line for row in rows for line in _item(*row))
        case Table(head, rows):
            yield from text_columns([head, *rows] if len(head) > _FEW else rows)
        case Steps(steps, first):
            yield from _steps(steps, first)
        case _:
            yield document_text([block]).rstrip("\n")


def _item(symbol: str, what: str, value: str, origin: str) -> list[str]:
    """A number that goes in: what it is, and where it comes from."""
    return _wrapped(f"{_held(f'{symbol} = {value}')}, {what} ({origin})", "", "    ")


def _steps(steps: Sequence[WrittenStep], first: int) -> Iterator[str]:
    """Steps one behind the other, a source that is long written out once."""
    seen: dict[str, int] = {}
    for number, step in enumerate(steps, start=first):
        at = seen.setdefault(step.source, number)
        is_told = at < number and len(step.source) > _LONG
        yield from _worked(number, replace(step, source=f"as step {at}") if is_told else step)


def _worked(number: int, step: WrittenStep) -> list[str]:
    """A step: what it is and why, its formula, the numbers that go into it, what it comes to."""
    numbers = ", ".join(_held(f"{each.symbol} = {each.with_unit}") for each in step.numbers)
    formula = _held(f"{step.symbol} = {step.formula}") + (f", with {numbers}" if numbers else "")
    text = f"{step.name} [{step.source}]: {formula}: {_held(step.result.with_unit)}"
    return _wrapped(text, f"{number:>2}. ", " " * 4)


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
