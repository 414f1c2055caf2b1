from posing import RELIEF, posed

from plumbnet.cli.playing.lesson import Lesson
from plumbnet.cli.playing.tapping import tapped_page
from plumbnet.study.training.posed_exercise import PosedExercise


def test_page_is_made_of_the_whole_lesson() -> None:
    one = PosedExercise(posed("verdict", "street -> heater -> tap.hot", heater=RELIEF))
    page = tapped_page(Lesson((one, one), None))
    assert page.count('"question":"verdict"') == 2
    assert page.startswith("<!doctype html>")
