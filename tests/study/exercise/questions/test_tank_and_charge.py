import pytest
from asking import asked

from plumbnet.study.exercise.answer import Choice, Measure

PSI = 6894.757293168361
RELIEF = "relief: {pressure: 150 psi}"
CLOSED = "street -> cv -> tee -> heater -> tap.hot"


def test_tank_of_a_usual_house_is_asked_for_with_its_charge() -> None:
    (one,) = asked("tank", CLOSED, heater=RELIEF, street="pressure: 62 psi")
    size, charge = one.blanks
    assert isinstance(size, Choice)
    assert isinstance(charge, Measure)
    assert (size.right, one.outcome) == ("5 gal", "size 3")
    assert charge.right == pytest.approx(62 * PSI)
    assert "you hang an expansion tank at tee, level with heater. With every fixture shut" in one.prompt
    assert "heater may come to 80 psi and no higher." in one.prompt
    assert "the water grows by 0.839 gal in heater. What is the smallest tank" in one.prompt
    assert "62 psi" not in one.prompt


def test_growth_of_every_heater_is_told_and_not_whose_water_comes_to_the_tank() -> None:
    runs = "street -> cv -> tee -> heater -> tap.hot\ntee -> cv2 -> heater2 -> tap2.hot"
    one = asked("tank", runs, heater=RELIEF, heater2=f"{RELIEF}, volume: 40 gal")[0]
    assert "0.839 gal in heater and 0.671 gal in heater2, each by itself." in one.prompt
    assert "The water of heater and heater2 comes to it" in one.because[1]


def test_tank_that_nearly_another_size_would_do_for_makes_no_question() -> None:
    """0.839 gal at 66.2 psi asks for 5.76 gal, at 65 psi for 5.29, at 64.1 psi for 5.0."""
    assert asked("tank", CLOSED, heater=RELIEF, street="pressure: 64.1 psi") == []
    assert len(asked("tank", CLOSED, heater=RELIEF, street="pressure: 66.2 psi")) == 1


def test_key_shows_the_sum() -> None:
    """0.839 / (1 - 76.7 / 94.7) is 4.41 by the calculator."""
    (one,) = asked("tank", CLOSED, heater=RELIEF, street="pressure: 62 psi")
    reckoned = one.because[1]
    assert "0.839 gal / (1 - 76.7 psi / 94.7 psi)" in reckoned
    assert " = 4.42 gal; " in reckoned
    assert reckoned.endswith(" 5 gal.")


def test_static_pressure_at_the_limit_leaves_no_room_for_a_tank() -> None:
    (one,) = asked("tank", CLOSED, heater=RELIEF, street="pressure: 95 psi")
    size, charge = one.blanks
    assert isinstance(charge, Measure)
    assert (one.outcome, charge.right, size.answer("us")) == ("no tank can do it", None, "no tank can do it")
    assert one.because == ("Cold, the water stands at the limit already. First the static pressure must come down.",)


def test_open_heater_needs_no_tank() -> None:
    assert asked("tank", "street -> tee -> heater -> tap.hot", heater=RELIEF) == []


def test_layout_with_a_tank_in_it_makes_no_question() -> None:
    assert asked("tank", f"{CLOSED}\ntee -> tank", heater=RELIEF, tank="state: waterlogged") == []
