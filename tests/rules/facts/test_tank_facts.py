from dataclasses import replace

import pytest

from plumbnet.rules.facts.tank_facts import TankFacts

TANK = TankFacts("tank", 2e5, 3e5, None, is_waterlogged=False, reached=True, on_hot_side=False)


@pytest.mark.parametrize(
    ("static_pa", "cut_in_pa", "serves"), [(3e5, 2e5, True), (3e5, 3e5, False), (3e5, None, False), (None, 2e5, False)]
)
def test_tank_serves_a_pump_where_the_pressure_is_let_fall(
    static_pa: float | None, cut_in_pa: float | None, *, serves: bool
) -> None:
    assert replace(TANK, static_pa=static_pa, cut_in_pa=cut_in_pa).serves_a_pump == serves


@pytest.mark.parametrize(
    ("precharge_pa", "wrong"), [(2.9e5 - 1.0, False), (2.9e5 - 1.1, True), (3.1e5 + 1.0, False), (3.1e5 + 1.1, True)]
)
def test_charge_may_differ_from_the_line_by_the_tolerance_and_one_pascal(precharge_pa: float, *, wrong: bool) -> None:
    assert replace(TANK, precharge_pa=precharge_pa).is_charged_wrong(1e4) is wrong


def test_charge_of_the_method_is_as_good_as_that_of_the_line() -> None:
    assert not replace(TANK, method_charge_pa=2e5).is_charged_wrong(1e4)
    assert replace(TANK, method_charge_pa=2.2e5).is_charged_wrong(1e4)


def test_charge_on_a_well_may_be_anything_from_the_cut_in_up() -> None:
    assert not replace(TANK, precharge_pa=2.5e5, cut_in_pa=2e5).is_charged_wrong(1e4)


def test_tank_without_air_or_water_has_no_wrong_charge() -> None:
    assert not replace(TANK, is_waterlogged=True).is_charged_wrong(1e4)
    assert not replace(TANK, static_pa=None).is_charged_wrong(1e4)
