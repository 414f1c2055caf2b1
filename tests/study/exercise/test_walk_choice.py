from plumbnet.study.exercise.generator import exercises
from plumbnet.study.exercise.walk_choice import answer_walks


def test_heater_that_is_asked_about_is_followed_alone() -> None:
    (one,) = exercises(2, 4, about="stopper")
    assert len(one.report.heaters) > 1
    assert [walk.heater.name for walk in answer_walks(one)] == [one.asked.heater]


def test_every_heater_is_followed_where_all_are_asked_about() -> None:
    (one,) = exercises(2, 4, about="trapped-heaters")
    assert [walk.heater for walk in answer_walks(one)] == list(one.report.heaters)
