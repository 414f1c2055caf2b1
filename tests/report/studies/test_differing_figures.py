"""Every mark in a table of what-ifs has its reason in words: pressures, minutes, what opens."""

import pytest
from conftest import layout

import plumbnet
from plumbnet.layout.model.change import Change
from plumbnet.report.studies.differing_figures import differing_told, left_rows
from plumbnet.study.whatif.what_if import WhatIf, whatif

RUNS = """street -> valve -> tee -> heater -> tap.hot
          tee -> tank"""
HOUSE = layout(RUNS, heater="relief: {pressure: 150 psi}, input: 40000 Btu/h")


def made(*changes: dict[str, object]) -> WhatIf:
    found = [Change.model_validate(one) for one in changes]
    return whatif(plumbnet.read_bytes(HOUSE.encode(), file="house.yaml"), found)


def told(*changes: dict[str, object]) -> list[str]:
    one = made(*changes)
    return [said for each in one.difference.heaters for said in differing_told(each, one.before.facts, one.after.facts)]


def test_worse_heater_is_told_with_its_pressures() -> None:
    (said,) = told({"close": "valve"})
    assert said == (
        "heater: opens first tank at 60 psi (street at 60 psi before); settles at 77.1 psi (60 psi before); "
        "stopped by valve (nothing before)."
    )


def test_trapped_heater_is_told_with_its_minutes() -> None:
    (said,) = told({"close": "valve"}, {"remove": "tank"})
    assert "held by nothing (60 psi before)" in said
    assert said.endswith(
        "left as it is, heater/relief opens once it warms by 4.9 to 17 degF, 3.9 to 13 min of firing; "
        "0.7 to 0.83 gal goes to waste at each heat-up."
    )


def test_heater_that_is_only_different_is_told_with_what_differs() -> None:
    (said,) = told({"set": {"part": "heater", "setpoint": "150 degF"}})
    assert said == "heater: grows by 0.992 gal (0.839 gal before)."


@pytest.mark.parametrize("change", [{"draw": "tap"}, {"remove": "heater"}])
def test_heater_without_a_difference_or_that_is_gone_is_not_told(change: dict[str, object]) -> None:
    assert told(change) == []


def test_difference_too_small_to_be_shown_is_told_as_that() -> None:
    assert told({"set": {"part": "heater", "setpoint": 140.0001}}) == ["heater: different by less than is shown."]


def test_nothing_is_said_of_what_is_left_where_nothing_would_open() -> None:
    one = made({"close": "valve"})
    assert not list(left_rows(one.difference.heaters[0], one.before.facts, one.after.facts))
