"""Fields that differ, as a file would write them."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from usual import usual

from plumbnet.layout.model.fields import NOT_GIVEN, FieldChange, field_changes
from plumbnet.layout.model.part import KINDS, Part
from plumbnet.layout.units.measure import parse_measure
from plumbnet.layout.units.units import PRESSURE, Units

HEATER = {"volume": "50 gal", "setpoint": "140 degF"}


def told(before: Part | None, after: Part | None, units: Units = "us") -> list[str]:
    return [f"{one.field}: {one.before} -> {one.after}" for one in field_changes(before, after, units)]


@pytest.mark.parametrize("kind", sorted(KINDS))
def test_part_does_not_differ_from_itself(kind: str) -> None:
    assert told(usual(kind), usual(kind)) == []


def test_quantity_is_told_in_the_units_asked_for() -> None:
    before, after = usual("expansion_tank", precharge="60 psi"), usual("expansion_tank", precharge="62.5 psi")
    assert told(before, after) == ["precharge: 60 psi -> 62.5 psi"]
    assert told(before, after, "metric") == ["precharge: 413.685 kPa -> 430.922 kPa"]


def test_same_quantity_in_another_unit_is_no_difference() -> None:
    assert told(usual("main", pressure="4.3 bar"), usual("main", pressure="430 kPa")) == []
    assert told(usual("boiler", setpoint="60 degC"), usual("boiler", setpoint="140 degF")) == []


def test_small_difference_has_as_many_digits_as_it_takes() -> None:
    found = told(usual("main", pressure="60 psi"), usual("main", pressure="60.00001 psi"))
    assert found == ["pressure: 60 psi -> 60.00001 psi"]


def test_value_left_out_counts_as_what_holds_then() -> None:
    assert told(usual("valve"), usual("valve", state="open")) == []
    assert told(usual("valve"), usual("valve", state="shut", locked=True)) == [
        "state: open -> shut",
        "locked: false -> true",
    ]


def test_value_that_may_be_missing_is_not_given() -> None:
    assert told(usual("tee"), usual("tee", rating="150 psi")) == [f"rating: {NOT_GIVEN} -> 150 psi"]


def test_field_inside_another_has_both_names() -> None:
    before = usual("boiler", relief={"pressure": "30 psi"})
    after = usual("boiler", relief={"pressure": "50 psi", "capacity": "40 kW"})
    assert told(before, after, "metric") == [
        "relief.pressure: 206.843 kPa -> 344.738 kPa",
        "relief.capacity: not given -> 40 kW",
    ]


def test_relief_valve_written_into_a_heater_is_one_field() -> None:
    assert told(usual("boiler"), usual("boiler", relief={"pressure": "30 psi"})) == [
        "relief: not given -> {pressure: 30 psi}"
    ]


def test_parts_of_two_kinds_differ_in_what_they_are_given() -> None:
    assert told(usual("valve"), usual("pressure_reducer", set="50 psi", elevation="3 ft")) == [
        "elevation: 0 ft -> 3 ft",
        "state: open -> sound",
        "set: not given -> 50 psi",
    ]


def test_what_is_new_differs_in_what_it_is_given() -> None:
    assert told(None, usual("main", pressure="60 psi")) == ["pressure: not given -> 60 psi"]
    assert told(None, None) == []


def test_lists_are_told_as_the_file_writes_them() -> None:
    before = usual("device", ports=["in", "out"], passages=[{"free": ["in", "out"]}])
    after = usual("device", ports=["in", "out"], passages=[{"one_way": ["in", "out"], "opens": "2 psi"}])
    assert told(before, after) == ["passages: [{free: [in, out]}] -> [{one_way: [in, out], opens: 2 psi}]"]


@given(st.floats(0.01, 1e7), st.floats(0.01, 1e7))
def test_what_is_told_can_be_read_back_and_tells_the_two_apart(before_pa: float, after_pa: float) -> None:
    before, after = (KINDS["main"].model_validate({"pressure": pressure}) for pressure in (before_pa, after_pa))
    for change in field_changes(before, after, "us"):
        assert isinstance(change, FieldChange)
        assert change.before != change.after
        assert parse_measure(change.before, PRESSURE, "us") == pytest.approx(before_pa, rel=1e-5, abs=1.0)
