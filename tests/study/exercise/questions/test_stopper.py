import pytest
from asking import asked

from plumbnet.study.exercise.answer import Choice


def test_device_that_stops_the_water_is_the_answer() -> None:
    (one,) = asked("stopper", "street -> meter -> valve -> cv -> heater -> tap.hot")
    (blank,) = one.blanks
    assert isinstance(blank, Choice)
    assert blank.options == ("meter", "valve", "cv", "nothing")
    assert (blank.right, one.outcome) == ("cv", "check_valve")
    (reason,) = one.because
    assert " only cv, a check valve, " in reason


@pytest.mark.parametrize(
    ("way", "part", "look"),
    [
        ("meter -> valve -> ", "", "Look at meter: as it stands, it lets water pass both ways."),
        ("meter -> cv -> ", "state: stuck_open", "Look at cv: its check is stuck open."),
        ("", "", "No device stands in it at all."),
    ],
)
def test_open_heater_is_stopped_by_nothing_and_one_device_is_to_be_looked_at(way: str, part: str, look: str) -> None:
    parts = {"cv": part} if part else {}
    (one,) = asked("stopper", f"street -> {way}heater -> tap.hot", 2, **parts)
    assert one.outcome == "nothing"
    assert one.because == (f"Nothing on the way from heater to street stands against the water. {look}",)


def test_bypass_that_lets_the_water_back_is_what_is_to_be_looked_at() -> None:
    (one,) = asked("stopper", "street -> meter -> prv -> heater -> tap.hot", prv="bypass: true")
    assert one.because[0].endswith("Look at prv: its bypass opens once more stands behind it than before it.")


def test_check_on_the_way_out_that_is_met_from_its_inlet_is_told_so() -> None:
    (one,) = asked("stopper", "street -> prv -> tee -> heater -> tap.hot\ntee -> cv2 -> vent", vent="elevation: 60 ft")
    assert one.because[0].endswith("Look at cv2: the water meets it from the side from which it lets pass.")


def test_check_in_the_hot_pipe_stops_nothing() -> None:
    for cold, stop in (("cv -> ", "cv"), ("", "nothing")):
        (one,) = asked("stopper", f"street -> {cold}heater -> cv2 -> tap.hot")
        assert (one.answer, one.choice.options[-2:]) == (stop, ("cv2", "nothing"))


def test_open_air_is_named_where_something_stands_open_to_it() -> None:
    (one,) = asked("stopper", "street -> cistern -> heater -> tap.hot", cistern="elevation: 20 ft")
    assert " back to the street or out into the open air, if any does?" in one.prompt


def test_two_devices_in_a_row_make_no_question() -> None:
    assert asked("stopper", "street -> cv -> cv2 -> heater -> tap.hot") == []


def test_two_ways_stopped_by_one_device_each_make_no_question() -> None:
    runs = "street -> tee -> cv -> heater -> tee2 -> mixer.hot\ntee -> mixer.cold\nmixer -> tap.hot"
    assert asked("stopper", runs) == []
