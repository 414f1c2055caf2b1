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


def test_open_heater_is_stopped_by_nothing() -> None:
    (one,) = asked("stopper", "street -> meter -> heater -> tap.hot")
    assert one.outcome == "nothing"
    assert one.because == ("The water passes everything as far as street: heater > meter > street.",)


def test_two_devices_in_a_row_make_no_question() -> None:
    assert asked("stopper", "street -> cv -> cv2 -> heater -> tap.hot") == []


def test_two_ways_stopped_by_one_device_each_make_no_question() -> None:
    runs = "street -> tee -> cv -> heater -> tee2 -> mixer.hot\ntee -> mixer.cold\nmixer -> tap.hot"
    assert asked("stopper", runs) == []
