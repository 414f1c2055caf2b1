"""What shows itself in a notebook: a class says that it can be shown, and a layer above says how, once it is asked."""

from collections.abc import Callable
from typing import TypeVar

_Kind = TypeVar("_Kind")
_HOW: dict[type, Callable[..., str]] = {}


def show_with(kind: type[_Kind], how: Callable[[_Kind], str]) -> None:
    """Show objects of a class, which is `Shown`, as the HTML that `how` makes of them."""
    _HOW[kind] = how


class Shown:
    """An object that a notebook shows as HTML."""

    __slots__ = ()

    def _repr_html_(self) -> str | None:
        """The HTML, or None where nobody has said how; then a notebook falls back to the plain text."""
        how = _HOW.get(type(self))
        return None if how is None else how(self)
