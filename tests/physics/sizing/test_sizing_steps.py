from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from plumbnet.physics.fluids.expansion import growth
from plumbnet.physics.fluids.water import densest_k, specific_volume_m3_kg
from plumbnet.physics.sizing.duty import Duty, MissingInput, OutsideMethod, Step
from plumbnet.physics.sizing.sizing_steps import (
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


def test_walls_of_water_that_is_not_warmed_do_not_grow() -> None:
    *_, walls, net = net_growth_steps(replace(BARE, hot_k=BARE.cold_k), 4e5)
    assert (walls.value, net.value) == (0.0, 0.0)


WATER = "IAPWS R7-97(2012), equation 7"
TABLE, WALLS = f"interpolated from {WATER}, to 1e-8", "ASHRAE and ASPE handbooks (from memory)"


def told(each: Step) -> tuple[object, ...]:
    numbers = {symbol: number.value for symbol, number in each.numbers.items()}
    return each.symbol, each.name, each.formula, each.source, each.value, numbers


def test_charge_is_told_with_where_it_comes_from() -> None:
    chosen, usual = charge_step(replace(BARE, charge_abs_pa=3e5), "p_static"), charge_step(BARE, "p_atm")
    assert told(chosen) == ("p_0", "charge", "p_0", "chosen", 3e5, {"p_0": 3e5})
    assert told(usual) == ("p_0", "charge", "p_atm", "usual practice", 101_325.0, {"p_atm": 101_325.0})


@pytest.mark.parametrize(("charge", "start"), [(3e5, 4e5), (5e5, 5e5)])
def test_pressures_are_told_from_the_charge_to_the_end(charge: float, start: float) -> None:
    duty = replace(BARE, static_abs_pa=4e5, limit_abs_pa=6e5, charge_abs_pa=charge)
    first, *between = pressure_steps(duty, charge_step(duty, "p_static"))
    assert first == charge_step(duty, "p_static")
    numbers = {"p_static": 4e5, "p_0": charge}
    assert [told(each) for each in between] == [
        ("p_1", "start pressure", "max(p_static, p_0)", "Boyle's law", start, numbers),
        ("p_2", "end pressure", "p_limit", "given", 6e5, {"p_limit": 6e5}),
    ]


def test_growth_is_told_with_what_it_rests_on() -> None:
    given_one = growth_steps(replace(BARE, growth=0.05, growth_source="a table"), 4e5)
    assert [told(each) for each in given_one] == [("e", "growth of the liquid", "e", "a table", 0.05, {"e": 0.05})]
    still = growth_steps(replace(BARE, hot_k=283.15), 4e5)
    assert [told(each) for each in still] == [("e", "growth of water that is not warmed", "e", WATER, 0.0, {"e": 0.0})]


@pytest.mark.parametrize(("heated_abs_pa", "pressure"), [(None, 4e5), (9e5, 9e5)])
def test_growth_of_icy_water_is_told_from_its_density_maximum(heated_abs_pa: float | None, pressure: float) -> None:
    steps = growth_steps(replace(BARE, cold_k=274.15, heated_abs_pa=heated_abs_pa), 4e5)
    base_k = densest_k(pressure)
    cold, hot = (specific_volume_m3_kg(t, pressure_abs_pa=pressure) for t in (base_k, 333.15))
    densest = "volume of cold water, or of the densest"
    assert [told(each) for each in steps] == [
        ("v_1", densest, "v(T_1, p)", TABLE, cold, {"T_1": base_k, "p": pressure}),
        ("v_2", "volume of hot water", "v(T_2, p)", TABLE, hot, {"T_2": 333.15, "p": pressure}),
        ("e", "growth of the water", "v_2 / v_1 - 1", TABLE, hot / cold - 1.0, {"v_1": cold, "v_2": hot}),
    ]


@pytest.mark.parametrize(("hot_k", "pressure"), [(453.2, 2e6), (333.15, 3.1e6)])
def test_growth_past_the_table_is_told_as_the_formulation_itself(hot_k: float, pressure: float) -> None:
    steps = growth_steps(replace(BARE, hot_k=hot_k), pressure)
    assert [each.source for each in steps] == [TABLE if pressure < 3e6 else WATER, WATER, WATER]


@pytest.mark.parametrize(("grown", "net"), [(0.04, 0.04 - 3 * 1e-5 * 50.0), (0.001, 0.0)])
def test_net_growth_is_told_after_that_of_the_walls(grown: float, net: float) -> None:
    first, walls, last = net_growth_steps(replace(BARE, growth=grown, vessel_per_k=1e-5), 4e5)
    assert first.value == grown
    assert told(walls) == (
        "e_walls",
        "growth of pipes and vessels",
        "max(0, 3 * a * (T_2 - T_1))",
        WALLS,
        pytest.approx(3 * 1e-5 * 50.0),
        {"T_1": 283.15, "T_2": 333.15, "a": 1e-5},
    )
    numbers = {"e": grown, "e_walls": walls.value}
    assert told(last) == ("e_net", "net growth", "max(0, e - e_walls)", WALLS, pytest.approx(net), numbers)


def test_expansion_is_told_by_the_growth_it_counts() -> None:
    steps = net_growth_steps(replace(BARE, growth=0.04, vessel_per_k=1e-5), 4e5)
    *before, last = expansion_steps(BARE, steps)
    numbers = {"V": 0.2, "e_net": steps[-1].value}
    assert tuple(before) == steps
    assert told(last) == ("V_e", "expansion", "V * e_net", "by definition", 0.2 * steps[-1].value, numbers)


@pytest.mark.parametrize(("reserve", "water", "tank"), [((), "V_e", 0.05), ((0.025,), "(V_e + V_r)", 0.1)])
def test_tank_is_told_last_and_keeps_all_it_rests_on(reserve: tuple[float, ...], water: str, tank: float) -> None:
    duty = replace(BARE, growth=0.125, static_abs_pa=1e5, limit_abs_pa=2e5)  # half of the gas is pressed away
    besides = tuple(Step("V_r", "reserve", "", each, "volume", "", {}) for each in reserve)
    steps = (*pressure_steps(duty, charge_step(duty, "p_static")), *expansion_steps(duty, growth_steps(duty, 1e5)))
    sized = closed_tank("mine", (*steps, *besides), "a book", ("a note",))
    kept = {"V_e": 0.025} | ({"V_r": reserve[0]} if reserve else {}) | {"p_0": 1e5, "p_1": 1e5, "p_2": 2e5}
    assert told(sized.steps[-1]) == ("V_t", "tank", f"{water} / (p_0 / p_1 - p_0 / p_2)", "a book", tank, kept)
    assert sized.steps[:-1] == (*steps, *besides)
    assert (sized.method, sized.tank_m3, sized.expansion_m3, sized.notes) == ("mine", tank, 0.025, ("a note",))
    assert sized.reserve_m3 == (reserve[0] if reserve else 0.0)
    assert (sized.charge_abs_pa, sized.start_abs_pa, sized.end_abs_pa) == (1e5, 1e5, 2e5)


@pytest.mark.parametrize("charge_abs_pa", [0.0, -1.0])
def test_charge_of_less_than_a_vacuum_is_refused(charge_abs_pa: float) -> None:
    duty = replace(BARE, growth=0.125, static_abs_pa=1e5, limit_abs_pa=2e5, charge_abs_pa=charge_abs_pa)
    steps = (*pressure_steps(duty, charge_step(duty, "p_static")), *expansion_steps(duty, growth_steps(duty, 1e5)))
    with pytest.raises(
        OutsideMethod, match=r"^it would charge the tank to less than a vacuum, so low does the water stand there$"
    ):
        closed_tank("mine", steps, "a book")
