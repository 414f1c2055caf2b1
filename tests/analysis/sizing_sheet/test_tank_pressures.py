"""From the pressures an author wrote to the absolute ones at the tank."""

import re

import pytest
from conftest import PSI, system

import plumbnet
from plumbnet.analysis.sizing_sheet.sheet_model import Section, SheetItem
from plumbnet.analysis.sizing_sheet.sizing_sheet import sheet
from plumbnet.analysis.sizing_sheet.tank_pressures import pressure_section
from plumbnet.physics.sizing.duty import step
from plumbnet.rules.rule_profile import profile

RELIEF = "relief: {pressure: 150 psi}"
ATM = 101325.0


def pressures(runs: str, method: str = "membrane", **parts: str) -> Section:
    made = plumbnet.check(system(runs, **parts))
    return sheet(made, made.heaters[0], method=method).sections[0]


def items(runs: str, method: str = "membrane", **parts: str) -> dict[str, SheetItem]:
    return {item.symbol: item for item in pressures(runs, method, **parts).items}


def test_static_pressure_is_that_of_the_main() -> None:
    found = pressures("street -> cv -> heater -> tap.hot")
    assert [(step.symbol, step.formula) for step in found.steps] == [
        ("p_static", "p_atm + d_supply"),
        ("p_limit", "p_atm + d_limit"),
    ]
    assert found.steps[0].value == pytest.approx(60 * PSI + ATM)


def test_static_pressure_is_that_of_a_main_at_its_highest() -> None:
    found = items("street -> cv -> heater -> tap.hot", street="pressure: 60 psi, highest: 70 psi")
    assert found["d_supply"].name == "highest pressure of street"
    assert found["d_supply"].value == pytest.approx(70 * PSI)


def test_reducer_gives_it_its_set() -> None:
    assert items("street -> prv -> heater -> tap.hot")["d_set"].name == "set of prv"


def test_well_gives_it_the_cut_out() -> None:
    assert items("well -> cv -> heater -> tap.hot")["d_supply"].value == pytest.approx(50 * PSI)


def test_open_tank_gives_it_its_height() -> None:
    found = items("cistern -> cv -> heater -> tap.hot", tap="elevation: 90 ft")
    assert found["d_supply"].name == "open surface of cistern"
    assert found["d_static_column"].value == pytest.approx(9806.65 * 30.48)


def test_pressure_that_no_single_part_gives_is_computed() -> None:
    found = items("street -> booster -> cv -> heater -> tap.hot")
    assert found["d_static"].origin == "computed: widest path from the supplies, less what each device takes"


def test_water_that_no_supply_reaches_is_taken_as_just_full() -> None:
    found = items("street -> tap.cold\nboiler -> emitter -> tee -> boiler", boiler="rating: 30 psi")
    assert found["d_static"].origin == "computed: no supply reaches it; taken as just full"


def test_limit_below_a_relief_valve_shows_the_margin_where_that_governs() -> None:
    drawn = system("street -> cv -> heater", street="pressure: 1.5 bar", heater="relief: {pressure: 3 bar}")
    made = plumbnet.check(drawn, rules="en-12828")
    (limit,) = (step for step in sheet(made, made.heaters[0]).sections[0].steps if step.symbol == "d_limit")
    assert limit.formula == "max(0, d_relief - d_clear)"
    assert limit.value == pytest.approx(2.5e5)


def test_limit_below_a_relief_valve_shows_the_share_of_its_set() -> None:
    found = pressures("street -> cv -> heater", heater=RELIEF)
    (share,) = (step for step in found.steps if step.symbol == "d_limit")
    assert share.formula == "e_limit * d_relief"
    assert share.value == pytest.approx(135 * PSI)


def test_limit_below_a_relief_valve_shows_the_share_where_the_margin_is_less() -> None:
    drawn = system("street -> cv -> heater", street="pressure: 1.5 bar", heater="relief: {pressure: 10 bar}")
    made = plumbnet.check(drawn, rules="en-12828")
    (limit,) = (step for step in sheet(made, made.heaters[0]).sections[0].steps if step.symbol == "d_limit")
    assert limit.formula == "e_limit * d_relief"
    assert limit.value == pytest.approx(9e5)


def test_method_gets_the_lowest_relief_valve_of_the_zone() -> None:
    runs = "street -> cv -> tee -> heater -> tap.hot\ntee -> relief"
    found = items(runs, "en-12828", heater=RELIEF, relief="pressure: 125 psi")
    assert found["d_sv"].name == "set of relief"
    assert found["d_sv"].value == pytest.approx(125 * PSI)
    found = items(runs, "en-12828", heater=RELIEF, relief="pressure: 160 psi")
    assert found["d_sv"].name == "set of heater/relief"
    assert found["d_sv"].value == pytest.approx(150 * PSI)


def test_tank_that_takes_water_before_the_valve_lifts_is_no_valve_and_without_one_none_is_told() -> None:
    runs = "street -> cv -> tee -> heater -> tap.hot\ntee -> tank"
    found = items(runs, "en-12828", heater=RELIEF)
    assert found["d_sv"].name == "set of heater/relief"
    bare = pressures(runs, "en-12828")
    assert "d_sv" not in {item.symbol for item in bare.items}
    assert [step.symbol for step in bare.steps] == ["p_static", "p_limit"]


def test_column_leads_from_the_higher_of_the_two_down_to_the_lower() -> None:
    runs, feet = "street -> cv -> tee -> heater -> tap.hot", 9806.65 * 0.3048
    found = items(runs, street="elevation: 10 ft, pressure: 60 psi")
    assert found["d_static_column"].value == pytest.approx(10 * feet)
    assert found["d_static_column"].name == "column of water between street and the tank"
    assert found["d_static_column"].origin.endswith("from street down to the tank")
    found = items(runs, tee="elevation: 10 ft")
    assert found["d_static_column"].value == pytest.approx(-10 * feet)
    assert found["d_static_column"].origin.endswith("from the tank down to street")
    assert "d_static_column" not in items(runs)


def test_what_a_device_on_the_way_needs_or_holds_back_is_told_by_its_name() -> None:
    runs = "street -> cv -> tee -> heater -> cv2 -> tee2 -> tap.hot\nheater.relief -> relief"
    found = items(runs, cv2="opens: 3 psi")
    assert found["d_limit_way"].value == pytest.approx(3 * PSI)
    assert found["d_limit_way"].name == "what cv2 needs to open or holds back"
    assert found["d_limit_way"].origin == "the layout: one-way devices"


def test_limit_of_a_rated_part_is_its_rating() -> None:
    found = items("street -> cv -> heater -> tap.hot", heater="rating: 70 psi")
    assert found["d_limit"].name == "rating of heater"
    assert found["d_limit"].value == pytest.approx(70 * PSI)


def test_limit_that_no_part_sets_is_the_profiles() -> None:
    found = pressures("street -> cv -> heater")
    assert found.steps[1].name == "limit (nothing in its reach sets one: the profile's own)"
    assert found.steps[1].value == pytest.approx(80 * PSI + ATM)


def test_method_gets_the_relief_valve_and_the_column_it_asks_for() -> None:
    found = pressures("street -> cv -> heater -> tap.hot", "en-12828", heater=RELIEF, tap="elevation: 20 ft")
    assert {"d_sv", "d_head"} <= {item.symbol for item in found.items}
    assert found.steps[-1].symbol == "p_sv"
    assert "d_head" not in items("street -> cv -> heater -> tap.hot", "membrane", heater=RELIEF)


def test_section_keeps_items_and_steps_apart() -> None:
    item = SheetItem("V", "volume", 1.0, "volume", "given")
    twice = step("V_t", "twice", "2 * V", 2.0, "by definition", V=1.0)
    assert pressure_section("both", [twice, item]) == Section("both", (item,), (twice,))


def test_column_above_the_tank_leads_from_the_highest_part_down_to_it() -> None:
    found = items("street -> cv -> heater -> tap.hot", "en-12828", heater=RELIEF, tap="elevation: 20 ft")
    assert found["d_head"].value == pytest.approx(20 * 0.3048 * 9806.65)
    assert found["d_head"].origin == "computed: 20 ft of water at 0.433528 psi/ft, from tap down to the tank"


def test_reducer_set_half_a_pascal_above_what_stands_there_is_not_what_gives_it() -> None:
    assert "d_supply" in items(
        "street -> prv -> heater -> tap.hot", street="pressure: 500000 Pa", prv="set: 500000.5 Pa"
    )
    assert "d_set" in items("street -> prv -> heater -> tap.hot", street="pressure: 500000 Pa", prv="set: 500000 Pa")


def test_steps_and_rulings_say_where_they_come_from() -> None:
    found = pressures("street -> cv -> heater -> tap.hot")
    assert {step.source for step in found.steps} == {"gauge to absolute, at the tank's height"}
    (limit,) = (item for item in found.items if item.symbol == "d_limit")
    assert limit.origin == f"profile general: {profile('general').distribution_limit.clause}"


def test_steps_are_called_what_they_are_with_the_way_to_where_the_limit_is_set() -> None:
    runs = "street -> cv -> tee -> heater -> cv2 -> tee2 -> tap.hot\nheater.relief -> relief"
    assert [(step.symbol, step.name) for step in pressures(runs).steps] == [
        ("p_static", "static pressure"),
        ("p_limit", "limit (fixture tap, reached through cv2)"),
    ]
    bare = "street -> cv -> tee -> heater\nheater.relief -> relief"
    assert [(step.symbol, step.name, step.source) for step in pressures(bare).steps] == [
        ("p_static", "static pressure", "gauge to absolute, at the tank's height"),
        ("d_limit", "limit at relief", "the rule profile"),
        ("p_limit", "limit (margin below relief)", "gauge to absolute, at the tank's height"),
    ]


@pytest.mark.parametrize(("rules", "street"), [("general", "60 psi"), ("en-12828", "1.5 bar")])
def test_every_number_that_a_step_speaks_of_is_given_with_it(rules: str, street: str) -> None:
    relief = "relief: {pressure: 3 bar}" if rules == "en-12828" else RELIEF
    made = plumbnet.check(
        system("street -> cv -> tee -> heater", street=f"pressure: {street}", heater=relief, tee="elevation: 3 ft"),
        rules=rules,
    )
    steps = sheet(made, made.heaters[0]).sections[0].steps
    assert {"p_static", "d_limit", "p_limit"} <= {each.symbol for each in steps}
    for each in steps:
        assert set(re.findall(r"[A-Za-z]\w*\b(?!\()", each.formula)) == set(each.numbers), each.symbol


def test_pressure_at_the_tank_is_the_sum_of_what_is_shown_and_nothing_is_shown_that_is_not_there() -> None:
    """The tee 10 ft up: 60 psi in the street and 80 at the tap, each less the column, and no device holds back."""
    found = pressures("street -> cv -> tee -> heater -> tap.hot", tee="elevation: 10 ft")
    assert [item.symbol for item in found.items] == [
        "p_atm",
        "d_supply",
        "d_static_column",
        "d_limit",
        "d_limit_column",
    ]
    column = 10 * 0.3048 * 9806.65
    assert [each.value for each in found.steps] == pytest.approx([60 * PSI + ATM - column, 80 * PSI + ATM - column])
    for each in found.steps:
        assert sum(number.value for number in each.numbers.values()) == pytest.approx(each.value, abs=1.0)


ODD = """
plumbnet: 1
units: metric-bar
parts:
  well: {kind: well, cut_in: 0, cut_out: 100}
  box: {kind: device, ports: [b, c, a, d], passages: [{shut: [d, c]}, {free: [d, a]}]}
  cross: tee
  breaker: {kind: vacuum_breaker, rating: 0.009999999999999998}
  meter: meter
  pump: {kind: booster_pump, rise: 0.0000001}
  heater: {kind: heat_exchanger, setpoint: 199.99999999999997, relief: {pressure: 99.9999999, temperature: 249.9999999}}
  circulator: {kind: circulator, check: true}
  mixer: {kind: fixture, crossover: true}
  side: tee
runs:
  - well -> box -> cross -> breaker -> meter -> pump -> heater -> circulator
  - circulator.out -> mixer.hot
  - mixer.cold -> side
  - {path: side -> cross, pipe: pex-S5 63 mm, length: 99999.99999999999}
"""
"""Odd inputs brought it out: the tank connects where there is a relief valve, in a zone beside that of the heater."""


def test_set_of_the_relief_valve_is_that_where_the_tank_connects() -> None:
    made = plumbnet.check(plumbnet.read_bytes(ODD.encode()))
    found = {item.symbol: item for item in sheet(made, made.heaters[0], method="en-12828").sections[0].items}
    assert found["d_sv"].name == "set of heater/relief"
