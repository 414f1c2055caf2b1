"""What shows itself in a notebook: a class says that it can be shown, and a layer above says how, once it is asked."""

from collections.abc import Callable

_HOW: dict[str, Callable[[object], str]] = {}


def show_with(kind: str, how: Callable[[object], str]) -> None:
    """Show objects of a class, which is `Shown`, as the HTML that `how` makes of them.

    The class by its full name, so that it need not be imported before somebody wants it.
    """
    _HOW[kind] = how


class Shown:
    """An object that a notebook shows as HTML."""

    __slots__ = ()

    def _repr_html_(self) -> str | None:
        """The HTML, or None where nobody has said how; then a notebook falls back to the plain text."""
        kind = type(self)
        how = _HOW.get(f"{kind.__module__}.{kind.__qualname__}")
        return None if how is None else how(self)
