"""A reducer that wants a tank behind it."""

import pytest
from conftest import PSI

from plumbnet.rules.facts import ReducerFacts
from plumbnet.rules.rule_profile import profile
from plumbnet.rules.tank_behind_reducer import wants_tank


def reducer(*, is_heated: bool = True, has_tank: bool = False, relief_psi: float | None = None) -> ReducerFacts:
    relief_pa = None if relief_psi is None else relief_psi * PSI
    return ReducerFacts("prv", 50 * PSI, 90 * PSI, is_heated, has_tank, relief_pa)


@pytest.mark.parametrize(
    ("one", "is_wanted"),
    [
        (reducer(), True),
        (reducer(is_heated=False), False),
        (reducer(has_tank=True), False),
        (reducer(relief_psi=100), False),
        (reducer(relief_psi=101), True),
    ],
)
def test_reducer_wants_a_tank_unless_it_or_a_low_valve_is_there(one: ReducerFacts, *, is_wanted: bool) -> None:
    assert wants_tank(one, profile("upc-2024")) is is_wanted
    assert not wants_tank(one, profile("general"))
