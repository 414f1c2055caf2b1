"""What a calculation takes for granted and what to mind."""

from conftest import PSI, system

import plumbnet
from plumbnet.analysis.required_tank.tank_task import sized
from plumbnet.analysis.sizing_sheet.cautions import ALWAYS_TO_MIND
from plumbnet.analysis.sizing_sheet.sheet_model import Sheet
from plumbnet.analysis.sizing_sheet.sizing_sheet import sheet
from plumbnet.analysis.verdict.judge import judge_of
from plumbnet.network.network import network_of
from plumbnet.physics.fluids.water import ATMOSPHERE_PA
from plumbnet.rules.rule_profile import profile

RELIEF = "relief: {pressure: 150 psi}"
RUNS = "street -> cv -> tee -> heater -> tap.hot"


def sheet_of(runs: str = RUNS, method: str | None = None, **parts: str) -> Sheet:
    made = plumbnet.check(system(runs, **parts))
    return sheet(made, made.heaters[0], method=method)


def test_every_sheet_says_what_it_always_takes_for_granted() -> None:
    assert sheet_of().assumptions[: len(ALWAYS_TO_MIND)] == ALWAYS_TO_MIND


def test_defaults_of_the_file_are_named_with_their_parts() -> None:
    (unsaid,) = [each for each in sheet_of().assumptions if each.startswith("as the file says nothing of it: ")]
    assert "; a fixture does not join hot and cold (tap)" in unsaid


def test_water_that_two_heaters_warm_is_said_to_count_once() -> None:
    words = "water that several heaters warm counts once, for the one that warms it most"
    shared = sheet_of("street -> cv -> tee -> heater -> tee2 -> pump -> heater2 -> tee")
    assert words in shared.assumptions
    assert words not in sheet_of().assumptions


def test_heater_without_relief_valve_gets_no_heat() -> None:
    assert sheet_of().cautions[0] == (
        "no relief valve can open: no heat until one stands on the heater's own tapping, whatever tank is fitted"
    )
    assert sheet_of(heater=RELIEF).cautions == ()


def test_relief_valve_behind_a_check_is_minded() -> None:
    made = sheet_of("street -> cv -> tee -> heater -> cv2 -> tee2 -> relief\ntee2 -> tap.hot")
    assert made.cautions[0] == (
        "only pipes and fittings may stand between a heater and its relief valve, and none stands there"
    )


def test_method_from_memory_is_to_be_checked() -> None:
    assert sheet_of(method="uk-4-percent", heater=RELIEF).cautions == (
        "United Kingdom, four per cent is quoted from memory: check it against the edition in force",
    )


def test_warnings_of_the_method_are_passed_on() -> None:
    assert any("the linear formula holds from 160 to 280 degF" in text for text in sheet_of(method="asme-iv").cautions)


def test_fill_that_leaves_the_vessel_without_its_reserve_is_minded() -> None:
    made = sheet_of(
        "street -> cv -> tee -> boiler -> emitter",
        "en-12828",
        street="pressure: 5 psi",
        boiler="relief: {pressure: 30}",
    )
    assert any(
        text.startswith("the static pressure of 5 psi is below the") and text.endswith("that fills the tank's reserve")
        for text in made.cautions
    )


def test_lost_charge_of_a_tank_is_minded() -> None:
    made = sheet_of(f"{RUNS}\ntee -> tank", heater=RELIEF, tank="state: waterlogged")
    assert made.cautions == ("tank takes nothing: the charge is lost",)


def test_sheet_says_once_that_the_gas_stays_at_one_temperature() -> None:
    made = sheet_of("street -> cv -> tee -> heater -> tap.hot\ntee -> tank")
    assert sum("gas in a tank" in words for words in made.assumptions) == 1


def test_what_every_sheet_takes_for_granted_is_said_in_these_words() -> None:
    assert ALWAYS_TO_MIND == (
        "all heated water goes from its cold temperature to its highest with every fixture shut",
        "the gas in a tank stays at one temperature; it is warmed slowly",
        "pipes and vessels do not give way or grow, unless a step counts it",
        "the pressure of the air is that at sea level; higher up, a tank takes a little more",
        "water is 1000 kg/m3 where a height is turned into a pressure",
    )


def test_heater_open_to_the_air_with_no_valve_between_is_not_reminded_of_its_relief_valve() -> None:
    made = sheet_of("street -> cv -> tee -> heater -> tap.hot\nheater.relief -> vent", vent="elevation: 150 ft")
    assert made.heater.relieved_by == ()
    assert made.cautions == ()


def test_only_tanks_that_lost_their_charge_are_minded() -> None:
    made = sheet_of(f"{RUNS}\ntee -> tank\ntee -> tank2", heater=RELIEF, tank2="state: waterlogged")
    assert made.cautions == ("tank2 takes nothing: the charge is lost",)


def test_vessel_for_two_waters_must_be_filled_to_the_higher_of_what_they_ask() -> None:
    """The water to 180 degF asks for a fill of 14.9 psi, that to 120 degF for 18.7: the vessel must have both."""
    drawn = system(
        "street -> cv -> tee -> boiler -> emitter\ntee -> boiler2 -> emitter2",
        street="pressure: 5 psi",
        boiler="relief: {pressure: 30 psi}",
        boiler2="setpoint: 120 degF",
    )
    case = judge_of(network_of(drawn), profile("general")).cases[0]
    low, high = sorted(one.fill_abs_pa or 0.0 for one in sized(case.tank.task, "en-12828"))
    assert (high - low) / PSI > 1.0
    report = plumbnet.check(drawn)
    made = sheet(report, report.heaters[0], method="en-12828")
    least = f"{(high - ATMOSPHERE_PA) / PSI:.1f} psi"
    assert made.cautions[-1] == f"the static pressure of 5 psi is below the {least} that fills the tank's reserve"
