"""Sizing methods by name."""

import pytest

from plumbnet.library.method_choice import UnknownMethod, demand_method


def test_method_that_is_not_there_is_told_with_the_nearest() -> None:
    with pytest.raises(UnknownMethod, match=r'^no sizing method is called "ashre": did you mean "ashrae-open"[?]$'):
        demand_method("ashre")
    demand_method(None)
