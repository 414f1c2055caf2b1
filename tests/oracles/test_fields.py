"""What random layouts draw of each kind: every field that it declares, and of each field everything that it may be."""

from typing import Literal, get_args, get_origin

import pytest
from conftest import times
from hypothesis import HealthCheck, given, settings

from oracles.random_fields import DRAWN_ELSEWHERE, Values, choices, fields, is_drawn_elsewhere
from oracles.random_layouts import ALL
from plumbnet.layout.model.build import make_part
from plumbnet.layout.model.part import KINDS
from plumbnet.layout.units.quantity import Quantity, quantity_of
from plumbnet.layout.units.units import VOLUME

QUANTITIES = [
    (kind, name, quantity)
    for kind in ALL
    for name, info in KINDS[kind].model_fields.items()
    if (quantity := quantity_of(info)) is not None
]


def test_every_kind_is_drawn() -> None:
    assert set(ALL) == set(KINDS)


def test_what_is_said_to_be_drawn_elsewhere_is_a_field_of_some_kind() -> None:
    assert {name for kind in KINDS.values() for name in kind.model_fields} >= DRAWN_ELSEWHERE


@pytest.mark.parametrize("kind", ALL)
def test_every_field_of_a_kind_is_drawn_and_left_out_where_it_may_be(kind: str) -> None:
    drawn: list[Values] = []

    @settings(times(1), suppress_health_check=[HealthCheck.filter_too_much])
    @given(fields(kind))
    def draw(values: Values) -> None:
        make_part(kind, values, "metric")
        drawn.append(values)

    draw()
    for name, info in KINDS[kind].model_fields.items():
        if not is_drawn_elsewhere(KINDS[kind], name):
            found = [values.get(str(info.alias)) for values in drawn]
            assert any(one is not None for one in found), name
            assert info.is_required() is (None not in found), name
            if get_origin(info.annotation) is Literal:
                assert set(get_args(info.annotation)) <= set(found), name


@pytest.mark.parametrize(("kind", "name", "quantity"), QUANTITIES)
def test_what_is_usual_of_a_quantity_lies_within_its_bounds(kind: str, name: str, quantity: Quantity) -> None:
    assert choices(quantity), (kind, name)
    for usual in quantity.usual or ():
        assert quantity.read(usual, None) == usual
    low, high = quantity.usual or (0.0, 1.0)
    assert low < high


def test_quantity_of_which_nothing_usual_is_said_is_drawn_within_its_bounds() -> None:
    assert choices(Quantity(VOLUME, above=0.001, at_most=0.75)) == [250.75, 500.5]
    assert choices(Quantity(VOLUME, usual=(0.1, 0.3))) == [100.0, 150.0, 200.0, 250.0, 300.0]
