"""Numbers that nobody knows exactly."""

import pytest
from conftest import PSI, system

import plumbnet
from plumbnet.layout.file.loader import read_system
from plumbnet.study.margins.uncertain_numbers import HIGHEST_PA, MOST_HIGHER_M, MOST_WARMER_K, uncertain_numbers

RELIEVED = "relief: {pressure: 150 psi, temperature: 210 degF}"


def test_each_is_tried_as_far_as_its_dimension_says() -> None:
    report = plumbnet.check(system("street -> heater -> tap.hot", heater=RELIEVED, tap="elevation: 10 ft"))
    street, setpoint, volume, height = uncertain_numbers(report)
    assert (street.lowest, street.highest) == (0.0, HIGHEST_PA)
    assert setpoint.highest - setpoint.told == setpoint.told - setpoint.lowest == pytest.approx(MOST_WARMER_K)
    assert (volume.lowest, volume.highest) == (volume.told / 2, volume.told * 2)
    assert height.highest - height.told == pytest.approx(MOST_HIGHER_M)
    assert [one.together for one in (street, setpoint, volume, height)] == [False, True, True, True]


def test_pressure_above_the_highest_is_tried_half_as_high_again() -> None:
    report = plumbnet.check(system("street -> heater -> tap.hot", street="pressure: 200 psi"))
    assert uncertain_numbers(report)[0].highest == pytest.approx(300 * PSI)


def test_accuracy_is_that_of_the_profile() -> None:
    report = plumbnet.check(system("street -> heater -> tap.hot", heater=RELIEVED))
    street, setpoint, volume, height = uncertain_numbers(report)
    assert street.accuracy == pytest.approx(2 * PSI)
    assert setpoint.accuracy == pytest.approx(5 / 1.8)
    assert (volume.accuracy, height.accuracy) == (None, None)


def test_reducer_inside_a_group_is_moved_like_any_other() -> None:
    text = """plumbnet: 1
units: metric
parts:
  street: {kind: main, pressure: 500}
  group: {kind: inlet_group, set: 350, expansion_relief: 600}
  cylinder: {kind: storage_heater, volume: 200, setpoint: 60}
  tap: fixture
runs: [street -> group -> cylinder -> tap.hot]
"""
    numbers = uncertain_numbers(plumbnet.check(read_system(text.encode(), file="group.yaml")))
    assert any(one.field == "set" and one.part.startswith("group") for one in numbers)


def test_height_of_a_heater_is_moved_where_the_author_gave_it_one() -> None:
    def heights(**parts: str) -> list[str]:
        report = plumbnet.check(system("street -> heater -> tap.hot", **parts))
        return [one.part for one in uncertain_numbers(report) if one.field == "elevation"]

    assert heights(heater=RELIEVED) == ["tap"]
    assert heights(heater=f"elevation: 8 ft, {RELIEVED}") == ["heater", "tap"]
