"""A state of a layout as a short code and back: what was touched, in order, by numbers."""

import re
from collections.abc import Sequence
from dataclasses import dataclass

MOST_TOUCHES = 64
"""Touches of one state: more than anybody follows."""
MOST_SIGNS = 2_000
_TOUCH = re.compile(r"(\d{1,6})(?:-(\d{1,3})|=(\d{1,3})=(-?\d{1,9}(?:\.\d{1,6})?))", re.ASCII)


class UnknownTouch(ValueError):
    """A code names what there is not to be touched, or is no code at all; the message says so in a sentence."""


@dataclass(frozen=True, slots=True)
class Touch:
    """The touchable of a number, and either its option of a number or one of its numbers with the value it now has."""

    at: int
    option: int | None = None
    number: int | None = None
    value: float = 0.0


def code_of(touches: Sequence[Touch]) -> str:
    """Touches as a code, empty for the layout as drawn.

    >>> code_of([Touch(3, option=1), Touch(0, number=0, value=72.5)])
    '3-1,0=0=72.5'
    """
    return ",".join(
        f"{one.at}-{one.option}" if one.option is not None else f"{one.at}={one.number}={_plain(one.value)}"
        for one in touches
    )


def _plain(value: float) -> str:
    return f"{value:.6f}".rstrip("0").rstrip(".")


def touches_of(code: str) -> tuple[Touch, ...]:
    """The touches of a code, of one thing only the last. Raises UnknownTouch.

    >>> touches_of("3-1,0=0=72.5,3-0")
    (Touch(at=0, option=None, number=0, value=72.5), Touch(at=3, option=0, number=None, value=0.0))
    """
    words = code.split(",") if code else []
    if len(code) > MOST_SIGNS or len(words) > MOST_TOUCHES:
        raise UnknownTouch(f"at most {MOST_TOUCHES} things may be touched at a time")
    found: dict[tuple[int, int | None], Touch] = {}
    for word in words:
        read = _TOUCH.fullmatch(word)
        if read is None:
            raise UnknownTouch("this is no state of a board; begin with the layout as drawn")
        at, option, number, value = read.groups()
        touch = Touch(int(at), int(option)) if option else Touch(int(at), None, int(number), float(value))
        found.pop((touch.at, touch.number), None)
        found[touch.at, touch.number] = touch
    return tuple(found.values())
