"""What shows itself in other forms: a class says that it can, the package which function above makes the form."""

from importlib import import_module
from typing import TypeVar

_Form = TypeVar("_Form")
MAKERS: dict[tuple[str, str], tuple[str, str]] = {}
"""By class and form, both by name: the module and the function in it that makes the form."""


def show_with(kind: str, form: str, module: str, function: str) -> None:
    """Show objects of the class of that name in a form as a function makes it, whose module is imported once asked."""
    MAKERS[kind, form] = (module, function)


def shown(thing: object, form: str, expected: type[_Form], /, *given: object, **options: object) -> _Form:
    """A thing in a form, made by the function that was named for its class or for one it comes from.

    Raises KeyError where none was, TypeError where the form is not what is expected.
    """
    kinds = [base.__name__ for base in type(thing).__mro__]
    found = next((MAKERS[kind, form] for kind in kinds if (kind, form) in MAKERS), None)
    if found is None:
        raise KeyError(form)
    module, function = found
    made = getattr(import_module(module), function)(thing, *given, **options)
    if not isinstance(made, expected):
        raise TypeError(f"{form} of a {kinds[0]} is of another kind")
    return made


class Shown:
    """An object that a notebook shows as HTML."""

    __slots__ = ()

    def _repr_html_(self) -> str | None:
        """The HTML, or None where nobody has said how; then a notebook falls back to the plain text."""
        try:
            return shown(self, "html", str)
        except KeyError:
            return None
