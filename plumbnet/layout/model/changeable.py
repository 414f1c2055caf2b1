"""What can be changed on a copy: a class offers the method, and the package says which function makes the changes."""

from collections.abc import Iterable
from typing import Self

from plumbnet.layout.model.change import Change
from plumbnet.layout.presentation import shown


class Changeable:
    """An object of which a changed copy can be made."""

    __slots__ = ()

    def with_changes(self, changes: Iterable[Change]) -> Self:
        """A copy with `changes` made one after another; the object itself stays as it is.

        Raises ChangeError (layout.edits) for the first change that cannot be made, with its number and the reason.
        """
        return shown(self, "changed", type(self), changes)
