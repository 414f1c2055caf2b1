"""What the tanks that are there take: up to the limit, and when all is hot."""

import math
import re

import pytest
from conftest import PSI, system

import plumbnet
from plumbnet.analysis.sizing_sheet.existing_tanks import sum_step, uptake_step
from plumbnet.analysis.sizing_sheet.sheet_model import Section, Sheet
from plumbnet.analysis.sizing_sheet.sizing_sheet import sheet
from plumbnet.physics.vessels.tank import Tank
from plumbnet.report.prose.printed_precision import evaluate

RELIEF = "relief: {pressure: 150 psi}"
TANKED = "street -> cv -> tee -> heater -> tap.hot\ntee -> tank"


def sheet_of(runs: str, **parts: str) -> Sheet:
    made = plumbnet.check(system(runs, **({"heater": RELIEF} | parts)))
    return sheet(made, made.heaters[0])


def section(made: Sheet, title: str) -> Section:
    return next(one for one in made.sections if one.title == title)


def test_tank_that_is_large_enough_is_proved() -> None:
    made = sheet_of(TANKED)
    assert made.at_hand is not None
    assert made.at_hand.tanks == ("tank",)
    assert made.at_hand.short_m3 == 0.0
    assert made.at_hand.takes_m3 > made.at_hand.growth_m3
    hot = section(made, "When all is hot (heater)")
    assert [step.symbol for step in hot.steps] == ["V_in", "V_taken"]
    assert hot.steps[-1].value == pytest.approx(made.at_hand.growth_m3, rel=1e-9)


def test_tank_that_is_too_small_is_short_by_what_the_report_says() -> None:
    runs = {"tank": "volume: 2 gal"}
    made = sheet_of(TANKED, **runs)
    facts = plumbnet.check(system(TANKED, heater=RELIEF, **runs)).heaters[0]
    assert made.at_hand is not None
    assert made.at_hand.short_m3 == pytest.approx(facts.short_m3)
    assert section(made, "The tanks at hand at the limit").steps[-1].value == pytest.approx(facts.short_m3)


def test_two_heaters_share_two_tanks() -> None:
    made = sheet_of(
        "street -> cv -> tee -> heater -> tap.hot\ntee -> heater2 -> tap2.hot\ntee -> tank\ntee -> tank2",
        heater2=RELIEF,
        tank2="volume: 3 gal, elevation: 8 ft",
    )
    assert made.at_hand is not None
    assert made.at_hand.tanks == ("tank", "tank2")
    assert made.at_hand.heaters == ("heater", "heater2")
    assert {"What tank takes up to the limit", "What tank2 takes up to the limit"} <= {s.title for s in made.sections}


def test_expansion_relief_lets_off_what_the_tank_leaves() -> None:
    made = sheet_of(f"{TANKED}\ntee -> spill", tank="volume: 1 gal", spill="pressure: 75 psi", heater=RELIEF)
    hot = section(made, "When all is hot (heater)")
    assert [step.symbol for step in hot.steps] == ["V_in", "V_taken", "V_off"]
    assert made.at_hand is not None
    assert hot.steps[1].value + hot.steps[2].value == pytest.approx(made.at_hand.growth_m3)


def test_without_tanks_there_is_nothing_at_hand() -> None:
    assert sheet_of("street -> cv -> heater -> tap.hot").at_hand is None


def test_tanks_are_not_asked_of_a_heater_that_stays_cold() -> None:
    made = plumbnet.check(system("street -> cv -> tee -> tankless -> tap.hot\ntee -> tank"))
    assert sheet(made, made.heaters[0]).at_hand is None


def taking(made: Sheet) -> dict[str, float]:
    """What the sheet puts into the sum of the usual tank, by symbol."""
    return {item.symbol: item.value for item in section(made, "What tank takes up to the limit").items}


def test_most_that_a_tank_lets_in_is_told_where_the_file_gives_it() -> None:
    assert "V_most" not in taking(sheet_of(TANKED))
    assert taking(sheet_of(TANKED, tank="acceptance: 2 gal"))["V_most"] == pytest.approx(2 * 231 * 0.0254**3)


@pytest.mark.parametrize(("charge", "start"), [(40.0, 60.0), (70.0, 70.0)])
def test_tank_starts_at_its_charge_or_at_what_stands_there_where_that_is_more(charge: float, start: float) -> None:
    taken = section(sheet_of(TANKED, tank=f"volume: 2 gal, precharge: {charge} psi"), "What tank takes up to the limit")
    assert [(item.symbol, item.name, item.dimension) for item in taken.items] == [
        ("V_n", "volume of tank", "volume"),
        ("d_0", "charge of tank", "pressure difference"),
        ("p_static", "static pressure at tank", "pressure"),
        ("p_2", "limit at tank", "pressure"),
    ]
    assert [step.symbol for step in taken.steps] == ["p_0", "p_1", "V_in"]
    gas, first, room = taken.steps
    assert gas.value == pytest.approx(charge * PSI + 101325.0)
    assert first.value == pytest.approx(start * PSI + 101325.0)
    assert room.numbers["p_1"].value == first.value
    assert room.numbers["p_0"].value == gas.value
    end = 80 * PSI + 101325.0
    assert room.value == pytest.approx(2 * 231 * 0.0254**3 * (gas.value / first.value - gas.value / end))


def test_tank_is_reckoned_with_at_its_own_height() -> None:
    high = section(sheet_of(TANKED, tank="elevation: 10 ft, precharge: 50 psi"), "What tank takes up to the limit")
    column, values = 10 * 0.3048 * 9806.65, {item.symbol: item.value for item in high.items}
    assert values["p_static"] == pytest.approx(60 * PSI + 101325.0 - column)
    assert values["p_2"] == pytest.approx(80 * PSI + 101325.0 - column)
    assert high.steps[1].value == values["p_static"]
    made = sheet_of(TANKED, tank="elevation: 10 ft, volume: 9 gal")
    hot = section(made, "When all is hot (heater)").steps[0]
    assert made.at_hand is not None
    assert made.at_hand.settled_pa is not None
    assert hot.numbers["p_settled"].value == pytest.approx(made.at_hand.settled_pa + 101325.0 - column)
    assert hot.value == pytest.approx(made.at_hand.growth_m3, rel=1e-6)


def test_waters_that_share_the_tanks_are_shown_with_their_growth_where_no_step_before_did() -> None:
    """The allowance of the rules has shown no growth as it is, so that of both waters stands before the tanks."""
    runs = "street -> cv -> tee -> heater -> tap.hot\ntee -> heater2 -> tap2.hot\ntee -> tank"
    made = sheet_of(runs, heater=f"{RELIEF}, sizing: uk-4-percent", heater2="setpoint: 160 degF", tank="volume: 9 gal")
    titles = [one.title for one in made.sections]
    assert [title for title in titles if title.endswith("grows by")] == [
        "What the water of heater grows by",
        "What the water of heater2 grows by",
    ]
    shares = section(made, "The tanks at hand at the limit").steps
    assert [step.symbol for step in shares] == ["V_growth", "V_short"]
    assert shares[1].formula == "max(0, V_growth - V_in)"
    assert made.at_hand is not None
    assert shares[0].value == pytest.approx(made.at_hand.growth_m3, rel=1e-9)


@pytest.mark.parametrize("tank", ["volume: 10 gal", "volume: 2 gal"])
def test_pressure_they_settle_at_is_that_of_the_report_at_the_heater(tank: str) -> None:
    made = sheet_of(TANKED, tank=tank, heater=f"{RELIEF}, elevation: 10 ft")
    facts = plumbnet.check(system(TANKED, tank=tank, heater=f"{RELIEF}, elevation: 10 ft")).heaters[0]
    assert made.at_hand is not None
    assert facts.settled_pa is not None or tank == "volume: 2 gal"
    assert made.at_hand.settled_pa == (None if facts.settled_pa is None else pytest.approx(facts.settled_pa))


def test_membrane_stops_a_tank_before_the_limit() -> None:
    tank = Tank(0.1, charge_abs_pa=2e5, start_abs_pa=3e5, most_m3=0.05)
    taken = uptake_step("V_in", "tank", tank, "p_2", 6e5)
    assert taken.value == pytest.approx(0.05 - 0.1 / 3)
    assert taken.formula == "max(0, min(V_n * (p_0 / p_1 - p_0 / p_2), V_most - min(V_most, V_n * (1 - p_0 / p_1))))"


def test_sum_names_each_of_its_numbers() -> None:
    total = sum_step("V_taken", "taken", [1.0, 2.0, 3.0])
    assert (total.formula, total.value) == ("V_taken1 + V_taken2 + V_taken3", 6.0)


def test_every_number_that_a_formula_speaks_of_is_given_with_it() -> None:
    made = sheet_of(f"{TANKED}\ntee -> spill", tank="volume: 1 gal, acceptance: 0.5 gal", spill="pressure: 75 psi")
    hand = [one for one in made.sections if "tank" in one.title.lower() or one.title.startswith("When all")]
    assert len(hand) == 5
    for step in (each for one in hand for each in one.steps):
        spoken = set(re.findall(r"[A-Za-z]\w*\b(?!\()", step.formula))
        assert spoken == set(step.numbers), step.symbol


def test_start_of_a_gas_is_its_charge_above_the_air() -> None:
    first = section(sheet_of(TANKED, tank="precharge: 40 psi"), "What tank takes up to the limit").steps[0]
    assert (first.formula, first.source) == ("p_atm + d_0", "gauge to absolute")
    assert [first.numbers[each].value for each in ("p_atm", "d_0")] == pytest.approx([101325.0, 40 * PSI])


def test_sum_of_very_many_is_bracketed_and_still_comes_to_the_same() -> None:
    values = [0.001 * (1 + number % 7) for number in range(4_000)]
    added = sum_step("V_t", "all", values)
    few = {each: number.value for each, number in added.numbers.items()}
    assert evaluate(added.formula, few) == pytest.approx(math.fsum(values))
    assert sum_step("V_t", "some", values[:25]).formula.count("(") == 0
    assert sum_step("V_t", "some", values[:26]).formula.endswith("V_t25) + V_t26")
