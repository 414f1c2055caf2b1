from asking import asked

from plumbnet.study.exercise.answer import Choice

HOUSE = "street -> valve -> {}tee -> heater -> valve2 -> tap.hot\ntee -> valve3 -> tap.cold"


def test_only_valve_on_the_way_back_is_the_answer() -> None:
    (one,) = asked("locked-valve", HOUSE.format(""))
    (blank,) = one.blanks
    assert isinstance(blank, Choice)
    assert one.outcome == "main"
    assert (blank.right, blank.options) == ("valve", ("valve", "valve2", "valve3"))
    reason, warning = one.because
    assert ", street first, " in reason
    assert reason.endswith(" behind valve.")
    assert "keeps the heater off" in warning


def test_valve_of_the_only_tank_is_the_answer() -> None:
    (one,) = asked("locked-valve", HOUSE.format("cv -> ") + "\ntee -> valve4 -> tank")
    assert (one.answer, one.outcome) == ("valve4", "expansion tank")
    reason, _ = one.because
    assert ", tank first, " in reason
    assert reason.endswith(" behind valve4.")


def test_either_of_two_valves_makes_no_question() -> None:
    assert asked("locked-valve", HOUSE.format("valve5 -> ")) == []


def test_few_valves_make_no_question() -> None:
    assert asked("locked-valve", "street -> valve -> heater -> valve2 -> tap.hot") == []


def test_heater_that_is_trapped_already_makes_no_question() -> None:
    assert asked("locked-valve", HOUSE.format("cv -> ")) == []
