from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from plumbnet.physics.expansion import growth
from plumbnet.physics.sizing import Duty, MissingInput
from plumbnet.physics.workings import (
    BOYLE,
    charge_step,
    closed_tank,
    expansion_steps,
    growth_steps,
    net_growth_steps,
    pressure_steps,
    vessel_growth_m3,
)

BARE = Duty(volume_m3=0.2, cold_k=283.15, hot_k=333.15)


@given(cold_k=st.floats(273.15, 380.0), hot_k=st.floats(273.15, 400.0), pressure_abs_pa=st.floats(1e5, 1e6))
def test_the_steps_come_to_the_growth_of_water(cold_k: float, hot_k: float, pressure_abs_pa: float) -> None:
    found = growth_steps(Duty(volume_m3=1.0, cold_k=cold_k, hot_k=hot_k), pressure_abs_pa)[-1].value
    assert found == pytest.approx(growth(cold_k, hot_k, pressure_abs_pa=pressure_abs_pa), rel=1e-12, abs=1e-15)


def test_net_growth_is_growth_less_that_of_the_walls() -> None:
    *_, whole, walls, net = (each.value for each in net_growth_steps(BARE, 4e5))
    assert walls == pytest.approx(3 * 6.5e-6 * 1.8 * 50)
    assert net == pytest.approx(whole - walls)


def test_the_room_gained_is_three_times_the_linear_expansion() -> None:
    assert vessel_growth_m3(2.0, 50.0, linear_per_k=1e-5) == pytest.approx(2.0 * 3e-5 * 50)


def test_the_static_pressure_is_demanded_where_it_is_the_charge() -> None:
    with pytest.raises(MissingInput) as refused:
        charge_step(BARE, "p_static")
    assert str(refused.value) == "the method needs the static pressure at the tank"


def test_the_highest_pressure_is_demanded_for_a_closed_tank() -> None:
    duty = Duty(volume_m3=0.2, cold_k=283.15, hot_k=333.15, static_abs_pa=4e5)
    with pytest.raises(MissingInput) as refused:
        pressure_steps(duty, charge_step(duty, "p_static"))
    assert str(refused.value) == "the method needs the highest pressure allowed at the tank"


def test_a_tank_without_pressures_is_no_closed_tank() -> None:
    with pytest.raises(KeyError):
        closed_tank("", expansion_steps(BARE, growth_steps(BARE, 4e5)), BOYLE)


def test_charge_that_is_chosen_is_told_as_such() -> None:
    chosen = charge_step(replace(BARE, charge_abs_pa=3e5), "p_static")
    assert (chosen.symbol, chosen.name, chosen.formula, chosen.value) == ("p_0", "charge", "p_0", 3e5)
    usual = charge_step(BARE, "p_atm")
    assert (usual.symbol, usual.name, usual.formula, usual.value) == ("p_0", "charge", "p_atm", 101_325.0)


def test_walls_of_water_that_is_not_warmed_do_not_grow() -> None:
    *_, walls, net = net_growth_steps(replace(BARE, hot_k=BARE.cold_k), 4e5)
    assert (walls.value, net.value) == (0.0, 0.0)
