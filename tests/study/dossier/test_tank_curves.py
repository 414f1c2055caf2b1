"""The tank of a chart is that of the calculation sheet."""

import math
from pathlib import Path

import pytest
from conftest import PSI, system

import plumbnet
from plumbnet.analysis.sizing_sheet.sizing_sheet import sheet
from plumbnet.study.dossier.tank_curves import NoChart, sizes

HOUSE = "street -> cv -> tee -> heater -> tap.hot"
SYSTEMS = sorted((Path(__file__).parents[3] / "systems").glob("*.yaml"))


@pytest.mark.parametrize("path", SYSTEMS, ids=lambda path: path.stem)
def test_size_is_that_of_the_calculation_sheet(path: Path) -> None:
    report = plumbnet.check(plumbnet.read(path))
    for heater in report.heaters:
        outcome = sheet(report, heater).outcome
        if outcome.tank_m3 is None:
            with pytest.raises(NoChart):
                sizes(report, heater.name)
            continue
        found = sizes(report, heater.name)
        assert found.least_m3 == pytest.approx(outcome.tank_m3)
        assert (found.nominal_m3, found.at) == (outcome.nominal_m3, outcome.at)
        again_m3 = found.size_m3(charge_pa=found.charge_pa, end_pa=found.end_pa)
        assert again_m3 == pytest.approx(outcome.tank_m3, rel=1e-9)


def test_more_room_above_the_start_takes_a_smaller_tank_and_a_wrong_charge_a_larger() -> None:
    found = sizes(plumbnet.check(system(HOUSE)), "heater")
    own = found.size_m3(charge_pa=60.0 * PSI, end_pa=80.0 * PSI)
    assert found.size_m3(charge_pa=60.0 * PSI, end_pa=100.0 * PSI) < own
    assert found.size_m3(charge_pa=40.0 * PSI, end_pa=80.0 * PSI) > own
    assert found.size_m3(charge_pa=70.0 * PSI, end_pa=80.0 * PSI) > own


def test_no_tank_is_infinitely_large() -> None:
    found = sizes(plumbnet.check(system(HOUSE)), "heater")
    assert found.size_m3(charge_pa=60.0 * PSI, end_pa=60.0 * PSI) == math.inf


def test_open_tank_has_no_chart() -> None:
    with pytest.raises(NoChart, match="An open tank has no charge, and its size does not depend on the pressure"):
        sizes(plumbnet.check(system(HOUSE, heater="sizing: ashrae-open")), "heater")


def test_method_without_an_answer_says_why() -> None:
    with pytest.raises(NoChart, match="needs the set of the relief valve"):
        sizes(plumbnet.check(system(HOUSE, heater="sizing: din-4807-5")), "heater")


def test_static_at_the_limit_has_no_chart() -> None:
    with pytest.raises(NoChart, match="No tank can do this"):
        sizes(plumbnet.check(system(HOUSE, street="pressure: 90 psi")), "heater")


def test_unknown_heater_is_a_mistake_of_the_caller() -> None:
    with pytest.raises(KeyError):
        sizes(plumbnet.check(system(HOUSE)), "kettle")
