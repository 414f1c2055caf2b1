"""The form of a file by the ending of its name, or one calm sentence."""

from collections.abc import Sequence
from pathlib import Path
from typing import TypeVar

from plumbnet.layout.yaml import Fault, quoted
from plumbnet.rules import listed

_Form = TypeVar("_Form", bound=str)


class UnknownForm(ValueError):
    """The ending of a file's name does not say how to write it; the message says which do."""


def form_of(path: str | Path, forms: Sequence[_Form]) -> _Form:
    """The one of some forms that the ending of a name asks for. Raises UnknownForm.

    >>> form_of("house.SVG", ("svg", "pdf"))
    'svg'
    """
    ending = Path(path).suffix.removeprefix(".").lower()
    found = next((form for form in forms if form == ending), None)
    if found is None:
        hint = f"let its name end in {listed([f'.{form}' for form in forms], 'or')}"
        raise UnknownForm(Fault(0, 0, f"{quoted(Path(path).name)} does not say how to write it", hint).sentence)
    return found
