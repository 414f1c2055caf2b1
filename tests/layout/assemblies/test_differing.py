"""Values for all, one for each, and counted on."""

import pytest

from plumbnet.layout.assemblies.differing import ELEVATION, differs, one_of, refuse_uneven, taking_of
from plumbnet.layout.assemblies.wrong import Wrong
from plumbnet.layout.yaml.node import Plain


def test_a_single_value_is_for_all() -> None:
    assert one_of("10 ft", 7, ELEVATION, "us") == ("10 ft", ())
    assert not differs("10 ft", ELEVATION)


def test_a_list_gives_one_to_each_and_steps_count_by_position() -> None:
    assert one_of(["3 m", "4 m"], 1, ELEVATION, "metric") == ("4 m", (1,))
    assert one_of({"first": "10 ft", "step": "10 ft"}, 3, ELEVATION, "us")[0] == "40 ft"


def test_a_step_has_a_unit_of_its_own_and_of_temperature_is_a_difference() -> None:
    assert one_of({"first": "1 ft", "step": "6 in"}, 1, ELEVATION, "us")[0] == "1.5 ft"
    setpoint = taking_of("storage_heater", "setpoint")
    assert one_of({"first": "60 degC", "step": "9 degF"}, 2, setpoint, "metric")[0] == "70 degC"


@pytest.mark.parametrize("value", [{"pressure": ["125 psi", "150 psi"], "capacity": "100000 Btu/h"}])
def test_values_inside_a_mapping_differ_too(value: Plain) -> None:
    relief = taking_of("storage_heater", "relief")
    assert differs(value, relief)
    assert one_of(value, 1, relief, "us")[0] == {"pressure": "150 psi", "capacity": "100000 Btu/h"}


@pytest.mark.parametrize(("field", "value"), [("ports", ["in", "out"]), ("passages", [{"free": ["in", "out"]}])])
def test_what_is_a_list_by_nature_is_the_same_for_all(field: str, value: Plain) -> None:
    taking = taking_of("device", field)
    assert not differs(value, taking)
    refuse_uneven(value, 7, taking, "us")
    assert one_of(value, 3, taking, "us") == (value, ())


def test_a_list_of_another_length_is_refused_where_it_stands() -> None:
    with pytest.raises(Wrong, match="relief pressure has 2 values for 3 instances; give one to each") as caught:
        refuse_uneven({"pressure": ["1 psi", "2 psi"]}, 3, taking_of("storage_heater", "relief"), "us")
    assert caught.value.path == ("pressure",)
