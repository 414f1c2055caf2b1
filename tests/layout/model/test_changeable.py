"""A system offers the changed copy of itself."""

from collections.abc import Iterator

import pytest
from conftest import system

from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.edits.edit_draft import ChangeError
from plumbnet.layout.model.change import Change
from plumbnet.layout.model.changeable import Changeable
from plumbnet.layout.presentation import show_with

HOUSE = system("street -> valve -> heater -> tap.hot")
CLOSED = Change(close="valve")


def test_system_gives_a_changed_copy_and_stays_as_it_is() -> None:
    assert HOUSE.with_changes([CLOSED]) == with_changes(HOUSE, [CLOSED]) != HOUSE
    assert HOUSE.with_changes([CLOSED, Change(open="valve")]).parts == HOUSE.parts
    assert HOUSE.with_changes([]) == HOUSE


def test_change_that_cannot_be_made_says_why() -> None:
    with pytest.raises(ChangeError, match="only a valve can be opened or closed"):
        HOUSE.with_changes([Change(close="tap")])


def test_changes_that_make_something_else_are_refused() -> None:
    class Thing(Changeable):
        """Parts and pipes it has not."""

        def __iter__(self) -> Iterator[str]:
            yield "no thing"

    show_with("Thing", "changed", "itertools", "chain")
    with pytest.raises(TypeError, match="changed of a Thing is of another kind"):
        Thing().with_changes([])
