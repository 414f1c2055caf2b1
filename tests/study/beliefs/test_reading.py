from posing import RELIEF, posed

from plumbnet.study.beliefs.hint import told
from plumbnet.study.beliefs.reading import READINGS, heater_asked, option_hints
from plumbnet.study.exercise.question import QUESTIONS

ONE = posed("verdict", "street -> cv -> heater -> tap.hot", heater=RELIEF)


def test_every_sort_of_question_has_its_answers_read() -> None:
    assert READINGS.keys() == QUESTIONS.keys()


def test_every_option_but_the_right_one_is_read() -> None:
    hint = told("check-passed-over", {"device": "cv"})
    hints = option_hints(ONE, lambda _: hint)
    assert set(hints.options) == {"open", "controlled", "sealed", "on-demand"}


def test_heater_that_is_asked_about_is_that_of_what_is_supposed() -> None:
    assert heater_asked(ONE).heater is ONE.report.heaters[0]
