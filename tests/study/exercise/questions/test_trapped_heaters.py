from asking import asked

from plumbnet.study.exercise.answer import Choice

RELIEF = "relief: {pressure: 150 psi}"
GROWS = "its water grows by 0.839 gal"
CLOSED = f"heater1 is closed (stopped by cv); {GROWS}, and nothing holds the pressure at or below 80 psi."
TWO = "street -> tee -> cv -> heater1 -> tap.hot\ntee -> {}heater2 -> tap2.hot"


def test_trapped_ones_are_named_and_the_others_explained() -> None:
    (one,) = asked("trapped-heaters", TWO.format(""), heater1=RELIEF, heater2=RELIEF)
    (blank,) = one.blanks
    assert isinstance(blank, Choice)
    assert blank.options == ("heater1", "heater2", "heater1 and heater2", "none")
    assert (blank.right, one.outcome) == ("heater1", "some")
    assert one.because == (CLOSED, "heater2 is open.")


def test_all_or_none_may_be_trapped() -> None:
    (every,) = asked("trapped-heaters", TWO.format("cv2 -> "), heater1=RELIEF, heater2=RELIEF)
    (none,) = asked("trapped-heaters", TWO.replace("cv -> ", "").format(""), heater1=RELIEF, heater2=RELIEF)
    assert (every.blanks[0].answer("us"), every.outcome) == ("heater1 and heater2", "all")
    assert (none.blanks[0].answer("us"), none.outcome) == ("none", "none")


def test_one_heater_makes_no_question() -> None:
    assert asked("trapped-heaters", "street -> heater -> tap.hot") == []


def test_sealed_heater_is_worse_than_trapped_and_makes_no_question() -> None:
    assert asked("trapped-heaters", TWO.format(""), heater2=RELIEF) == []
