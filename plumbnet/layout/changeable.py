"""What can be changed on a copy: a class offers the method, and a module above says how the changes are made."""

from collections.abc import Callable, Iterable
from typing import Self

from plumbnet.layout.change import Change

_HOW: dict[type, Callable[..., object]] = {}


def change_with(kind: type, how: Callable[..., object]) -> None:
    """Change objects of a class, which is `Changeable`, as `how` does: object and changes in, another object out."""
    _HOW[kind] = how


class Changeable:
    """An object of which a changed copy can be made."""

    __slots__ = ()

    def with_changes(self, changes: Iterable[Change]) -> Self:
        """A copy with `changes` made one after another; the object itself stays as it is.

        Raises ChangeError (layout.refusal) for the first change that cannot be made, with its number and the reason.
        """
        changed = _HOW[type(self)](self, changes)
        if not isinstance(changed, type(self)):
            raise TypeError(f"changes make a {type(self).__name__} of another kind")
        return changed
