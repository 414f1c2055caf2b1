from asking import asked

from plumbnet.study.exercise.answer import Choice


def test_only_valve_on_the_way_back_is_the_answer() -> None:
    (one,) = asked("locked-valve", "street -> valve -> heater -> valve2 -> tap.hot")
    (blank,) = one.blanks
    assert isinstance(blank, Choice)
    assert (blank.right, blank.options) == ("valve", ("valve", "valve2"))
    assert one.because == ("All that can take the growth, street first, lies behind valve.",)


def test_valve_of_the_only_tank_is_the_answer() -> None:
    runs = "street -> valve -> cv -> tee -> heater -> tap.hot\ntee -> valve2 -> tank"
    (one,) = asked("locked-valve", runs)
    assert one.outcome == "valve2"
    assert one.because == ("All that can take the growth, tank first, lies behind valve2.",)


def test_either_of_two_valves_makes_no_question() -> None:
    assert asked("locked-valve", "street -> valve -> valve2 -> heater -> tap.hot") == []


def test_single_valve_in_the_house_makes_no_question() -> None:
    assert asked("locked-valve", "street -> valve -> heater -> tap.hot") == []


def test_heater_that_is_trapped_already_makes_no_question() -> None:
    assert asked("locked-valve", "street -> valve -> cv -> heater -> valve2 -> tap.hot") == []
