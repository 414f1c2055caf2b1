import pytest
from asking import asked

from plumbnet.study.exercise.answer import Choice

RELIEF = "relief: {pressure: 150 psi}"


GROWS = "its water grows by 0.839 gal"
CLOSED = f"heater is closed (stopped by cv); {GROWS}, and nothing holds the pressure at or below 80 psi."
HELD = "What is fitted holds it at or below 80 psi: all hot, it stands at 68.8 psi."
PASSES = "Nothing stands against it on its way to street, which takes it at 60 psi."


@pytest.mark.parametrize(
    ("runs", "outcome", "because"),
    [
        ("street -> heater -> tap.hot", "open", (PASSES,)),
        ("street -> cv -> heater -> tap.hot", "trapped", (CLOSED,)),
        (
            "street -> cv -> tee -> heater -> tap.hot\ntee -> tank",
            "controlled",
            ("Its way back is stopped by cv.", HELD),
        ),
    ],
)
def test_what_becomes_of_the_growth_is_asked_and_explained(runs: str, outcome: str, because: tuple[str, ...]) -> None:
    (one,) = asked("verdict", runs, heater=RELIEF, tank="volume: 8 gal")
    assert (one.outcome, one.because, one.heater) == (outcome, because, "heater")


def test_pressure_that_is_nearly_the_limit_makes_no_question() -> None:
    closed = "street -> cv -> tee -> heater -> tap.hot\ntee -> tank"
    assert asked("verdict", closed, heater=RELIEF, tank="volume: 4.5 gal") == []
    assert len(asked("verdict", closed, heater=RELIEF, tank="volume: 8 gal")) == 1


def test_no_tankless_heater_is_said_to_heat_up_with_every_fixture_shut() -> None:
    (one,) = asked("verdict", "street -> cv -> tankless -> tap.hot", level=3)
    assert "tankless heats up, if it can with no water drawn." in one.prompt


def test_tankless_heater_waits_for_a_tap() -> None:
    (one,) = asked("verdict", "street -> cv -> tankless -> tap.hot", level=3)
    assert one.outcome == "on-demand"
    assert one.because[1] == "But no pump drives water through tankless, so it fires only while a tap is open."


def test_options_are_those_of_the_level() -> None:
    runs = "street -> heater -> tap.hot"
    options = []
    for level in (1, 2, 5):
        (blank,) = asked("verdict", runs, level)[0].blanks
        assert isinstance(blank, Choice)
        options.append(blank.options)
    assert options[0] == ("open", "trapped")
    assert options[1] == ("open", "controlled", "trapped")
    assert options[2] == ("open", "controlled", "trapped", "sealed", "on-demand")


def test_verdict_that_the_level_does_not_teach_is_not_asked() -> None:
    assert asked("verdict", "street -> cv -> tankless -> tap.hot", level=2) == []
