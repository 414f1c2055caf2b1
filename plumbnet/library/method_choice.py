"""Sizing methods by their names, as somebody writes them."""

from plumbnet.layout.yaml import Fault, nearest, quoted
from plumbnet.physics.sizing import METHODS


class UnknownMethod(ValueError):
    """No sizing method has this name; the message says which do."""


def demand_method(name: str | None) -> None:
    """Raise UnknownMethod where a sizing method is named and there is none of that name."""
    if name is not None and name not in METHODS:
        hint = nearest(name, METHODS) or f"there is {', '.join(METHODS)}"
        raise UnknownMethod(Fault(0, 0, f"no sizing method is called {quoted(name)}", hint).sentence)
