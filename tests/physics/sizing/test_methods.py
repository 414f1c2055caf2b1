import math
from dataclasses import replace

import pytest
from conftest import times
from hypothesis import given
from hypothesis import strategies as st

from plumbnet.physics.fluids.expansion import growth
from plumbnet.physics.fluids.water import ATMOSPHERE_PA, saturation_abs_pa, specific_volume_m3_kg
from plumbnet.physics.sizing.duty import Duty, MissingInput, OutsideMethod, Sizing, Step
from plumbnet.physics.sizing.methods import METHODS, size_tank
from plumbnet.physics.vessels.tank import NoTank, Tank

DUTY = Duty(
    volume_m3=0.5, cold_k=283.15, hot_k=363.15, static_abs_pa=4e5, limit_abs_pa=7e5, relief_abs_pa=9e5, head_pa=1e5
)
CLOSED = sorted(set(METHODS) - {"ashrae-open"})


@st.composite
def duties(draw: st.DrawFn) -> Duty:
    static = draw(st.floats(2e5, 6e5))
    cold = draw(st.floats(274.0, 300.0))
    return Duty(
        volume_m3=draw(st.floats(0.01, 20.0)),
        cold_k=cold,
        hot_k=draw(st.floats(cold + 25.0, 390.0)),
        static_abs_pa=static,
        limit_abs_pa=static + draw(st.floats(2e4, 8e5)),
        relief_abs_pa=draw(st.floats(8.5e5, 2e6)),
        charge_abs_pa=draw(st.none() | st.floats(1.1e5, 6e5)),
        head_pa=draw(st.floats(0.0, 1e5)),
        mean_k=draw(st.none() | st.floats(325.0, 390.0)),
        growth=draw(st.none() | st.floats(0.01, 0.08)),
    )


def repeated(each: Step) -> float:
    """The step as a reader repeats it: its formula with its numbers, water from a table."""
    tables = {
        "max": max,
        "v": lambda t, p: specific_volume_m3_kg(t, pressure_abs_pa=p),
        "p_sat": saturation_abs_pa,
        "__builtins__": {},
    }
    numbers = {symbol: number.value for symbol, number in each.numbers.items()}
    return float(eval(each.formula, tables, numbers))  # noqa: S307  our own formulas, and nothing else in reach


def sized_or_none(name: str, duty: Duty) -> Sizing | None:
    try:
        return size_tank(name, duty)
    except (NoTank, OutsideMethod):
        return None


@pytest.mark.parametrize("name", METHODS)
@times(0.4)
@given(duty=duties())
def test_every_step_can_be_repeated_by_hand(name: str, duty: Duty) -> None:
    sized = sized_or_none(name, duty)
    for each in sized.steps if sized else ():
        assert repeated(each) == pytest.approx(each.value, rel=1e-12), each


@pytest.mark.parametrize("name", METHODS)
@times(0.4)
@given(duty=duties())
def test_every_number_of_a_step_is_given_or_comes_from_a_step_before(name: str, duty: Duty) -> None:
    sized = sized_or_none(name, duty)
    before: dict[str, float] = {}
    for each in sized.steps if sized else ():
        for symbol, number in each.numbers.items():
            assert number.value == before.get(symbol, number.value), (each.name, symbol)
        before[each.symbol] = each.value


@pytest.mark.parametrize("name", METHODS)
def test_the_result_is_what_the_steps_came_to(name: str) -> None:
    sized = size_tank(name, DUTY)
    found = {each.symbol: each.value for each in sized.steps}
    assert sized.method == name
    assert (sized.tank_m3, sized.expansion_m3) == (found["V_t"], found["V_e"])
    pressures = (sized.charge_abs_pa, sized.start_abs_pa, sized.end_abs_pa, sized.fill_abs_pa)
    assert pressures == tuple(found.get(symbol) for symbol in ("p_0", "p_1", "p_2", "p_fill"))
    assert sized.reserve_m3 == found.get("V_r", 0.0)


@pytest.mark.parametrize("name", CLOSED)
@times(0.4)
@given(duty=duties())
def test_a_closed_tank_takes_just_the_expansion(name: str, duty: Duty) -> None:
    sized = sized_or_none(name, duty)
    if sized is None or sized.charge_abs_pa is None or sized.start_abs_pa is None or sized.end_abs_pa is None:
        return
    tank = Tank(sized.tank_m3, sized.charge_abs_pa, sized.start_abs_pa)
    assert tank.uptake_m3(sized.end_abs_pa) == pytest.approx(sized.expansion_m3 + sized.reserve_m3, rel=1e-6)


@pytest.mark.parametrize("name", CLOSED)
def test_an_end_at_or_below_the_start_has_no_tank(name: str) -> None:
    low = replace(DUTY, static_abs_pa=4e5, limit_abs_pa=4e5, relief_abs_pa=2e5, head_pa=2e5)
    with pytest.raises(NoTank, match=r"lower the static pressure first$"):
        size_tank(name, low)


@pytest.mark.parametrize("name", METHODS)
def test_a_method_names_all_that_it_misses(name: str) -> None:
    bare = Duty(volume_m3=0.5, cold_k=283.15, hot_k=363.15)
    method = METHODS[name]
    assert len(method.missing(bare)) == len(method.needs)
    assert method.missing(DUTY) == ()
    if method.needs:
        with pytest.raises(MissingInput) as refused:
            size_tank(name, bare)
        assert str(refused.value) == f"{method.title}: needs {' and '.join(method.missing(bare))}"
    else:
        assert size_tank(name, bare).tank_m3 > 0


def test_what_is_missing_reads_as_a_sentence() -> None:
    with pytest.raises(MissingInput) as refused:
        size_tank("en-12828", Duty(volume_m3=0.5, cold_k=283.15, hot_k=363.15))
    expected = "EN 12828, annex D: needs the column of water above the tank and the set of the relief valve"
    assert str(refused.value) == expected


@pytest.mark.parametrize("name", METHODS)
def test_what_is_from_memory_says_so(name: str) -> None:
    method = METHODS[name]
    assert method.name == name
    assert method.verified == ("from memory" not in method.source)
    assert all(each.source for each in size_tank(name, DUTY).steps)


def test_a_membrane_tank_is_charged_to_the_static_pressure_unless_chosen() -> None:
    assert size_tank("membrane", DUTY).charge_abs_pa == 4e5
    assert size_tank("membrane", replace(DUTY, charge_abs_pa=3e5)).charge_abs_pa == 3e5


def test_a_charge_above_the_static_pressure_is_where_the_tank_starts() -> None:
    sized = size_tank("membrane", replace(DUTY, charge_abs_pa=5e5))
    assert (sized.charge_abs_pa, sized.start_abs_pa) == (5e5, 5e5)


def test_a_plain_tank_is_larger_than_one_with_a_membrane() -> None:
    plain, membrane = (size_tank(name, DUTY).tank_m3 for name in ("ashrae-air-water", "ashrae-diaphragm"))
    assert plain == pytest.approx(membrane * 4e5 / ATMOSPHERE_PA)


def test_an_open_tank_is_twice_the_net_expansion() -> None:
    sized = size_tank("ashrae-open", replace(DUTY, growth=0.04))
    assert sized.tank_m3 == pytest.approx(2 * 0.5 * (0.04 - 3 * 11.7e-6 * 80))
    assert sized.charge_abs_pa is sized.start_abs_pa is sized.end_abs_pa is None


def test_copper_grows_more_than_steel_and_leaves_less_to_take() -> None:
    steel, copper = (size_tank("ashrae-open", replace(DUTY, vessel_per_k=a)).tank_m3 for a in (11.7e-6, 17.1e-6))
    assert steel - copper == pytest.approx(2 * 0.5 * 3 * 5.4e-6 * 80)


def test_walls_that_grow_more_than_water_leave_nothing_to_take() -> None:
    assert size_tank("ashrae-open", replace(DUTY, cold_k=277.15, hot_k=278.15)).tank_m3 == 0.0


def test_a_fill_colder_than_4_degc_counts_from_the_density_maximum() -> None:
    cold = replace(DUTY, cold_k=274.15)
    assert size_tank("membrane", cold).expansion_m3 == pytest.approx(0.5 * growth(274.15, 363.15, pressure_abs_pa=4e5))
    assert size_tank("membrane", cold).steps[3].numbers["T_1"].value == pytest.approx(277.0, abs=0.2)


def test_water_that_is_not_warmed_needs_no_tank() -> None:
    assert size_tank("membrane", replace(DUTY, hot_k=283.15)).tank_m3 == 0.0


def test_the_linear_formula_is_for_a_plain_tank_unless_a_charge_is_chosen() -> None:
    assert size_tank("asme-iv", DUTY).charge_abs_pa == ATMOSPHERE_PA
    assert size_tank("asme-iv", replace(DUTY, charge_abs_pa=4e5)).charge_abs_pa == 4e5


@pytest.mark.parametrize("mean_f", [150, 280.4, 300])
def test_the_linear_formula_warns_outside_its_range(mean_f: float) -> None:
    sized = size_tank("asme-iv", replace(DUTY, mean_k=(mean_f - 32) / 1.8 + 273.15))
    assert sized.notes == (f"the linear formula holds from 160 to 280 degF, and the mean is {mean_f} degF",)


@pytest.mark.parametrize("mean_f", [160, 195, 280])
def test_the_linear_formula_is_silent_within_its_range_and_at_its_ends(mean_f: float) -> None:
    assert size_tank("asme-iv", replace(DUTY, mean_k=(mean_f - 32) / 1.8 + 273.15)).notes == ()


def test_the_linear_formula_says_what_it_left_out() -> None:
    assert size_tank("asme-iv", replace(DUTY, growth=0.05)).notes == (
        "the mean operating temperature is taken to be the highest",
        "the linear formula is for water; it leaves out the growth that was given",
    )


@pytest.mark.parametrize(("mean_f", "told"), [(104.0, "104"), (0.0466 / 0.00041, "114")])  # there, it finds just none
def test_the_linear_formula_has_no_answer_for_cool_water(mean_f: float, told: str) -> None:
    with pytest.raises(OutsideMethod) as refused:
        size_tank("asme-iv", replace(DUTY, mean_k=(mean_f - 32) / 1.8 + 273.15))
    assert str(refused.value) == f"the linear formula finds no expansion at a mean temperature of {told} degF"


def test_an_unknown_method_is_no_key() -> None:
    with pytest.raises(KeyError):
        size_tank("guesswork", DUTY)


def test_antifreeze_brings_its_own_growth_and_source() -> None:
    sized = size_tank("membrane", replace(DUTY, growth=0.05, growth_source="a table of glycol"))
    assert sized.expansion_m3 == pytest.approx(0.025)
    assert [each.source for each in sized.steps if each.symbol == "e"] == ["a table of glycol"]
    assert math.isclose(sized.tank_m3, 0.025 / (1 - 4 / 7))


WATER_GROWS = {
    "v_1": "volume of cold water, or of the densest",
    "v_2": "volume of hot water",
    "e": "growth of the water",
}
NET = WATER_GROWS | {"e_walls": "growth of pipes and vessels", "e_net": "net growth"}
BETWEEN = {"p_0": "charge", "p_1": "start pressure", "p_2": "end pressure"}
TAKEN, TANK = {"V_e": "expansion"}, {"V_t": "tank"}
SHEETS = {
    "membrane": BETWEEN | WATER_GROWS | TAKEN | TANK,
    "ashrae-diaphragm": BETWEEN | NET | TAKEN | TANK,
    "ashrae-air-water": BETWEEN | {"p_0": "charge of a plain tank filled from empty"} | NET | TAKEN | TANK,
    "ashrae-open": NET | TAKEN | TANK,
    "asme-iv": BETWEEN
    | {"F": "mean operating temperature", "e": "growth of water less that of steel, from 40 degF"}
    | TAKEN
    | TANK,
    "en-12828": {"d_vapour": "vapour pressure, gauge", "p_least": "least charge"}
    | BETWEEN
    | WATER_GROWS
    | TAKEN
    | {"V_r": "reserve"}
    | TANK
    | {"p_fill": "lowest fill pressure"},
    "din-4807-5": {"p_1": "start pressure"} | BETWEEN | WATER_GROWS | TAKEN | TANK,
    "uk-4-percent": BETWEEN | {"e": "allowance for growth"} | TAKEN | TANK,
}


@pytest.mark.parametrize("name", METHODS)
def test_sheet_names_each_number_of_the_tank_in_order(name: str) -> None:
    steps = size_tank(name, DUTY).steps
    assert [(each.symbol, each.name) for each in steps] == list(SHEETS[name].items())


@pytest.mark.parametrize("name", CLOSED)
def test_sheet_ends_with_the_formula_of_the_tank(name: str) -> None:
    water = "(V_e + V_r)" if name == "en-12828" else "V_e"
    steps = {each.symbol: each for each in size_tank(name, DUTY).steps}
    assert steps["V_t"].formula == f"{water} / (p_0 / p_1 - p_0 / p_2)"
    values = {symbol: steps[symbol].value for symbol in ("V_e", "p_0", "p_1", "p_2")}
    assert {symbol: number.value for symbol, number in steps["V_t"].numbers.items() if symbol != "V_r"} == values
