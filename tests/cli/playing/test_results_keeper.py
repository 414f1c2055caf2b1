from datetime import date
from pathlib import Path

from posing import RELIEF, posed

from plumbnet.cli.playing.results_keeper import Keeper
from plumbnet.report.worksheets import BlankAnswered, TakenAnswer
from plumbnet.study.beliefs.hint import told
from plumbnet.study.training.posed_exercise import PosedExercise
from plumbnet.study.training.results_file import Dealt, results_at

ONE = PosedExercise(posed("verdict", "street -> cv -> heater -> tap.hot", heater=RELIEF))
MISSED = TakenAnswer("open", told("check-passed-over", {"device": "cv"}))
RIGHT = TakenAnswer("trapped", None)
MARCH = date(2026, 3, 1)


def test_answer_stands_in_the_file_as_soon_as_it_is_heard(tmp_path: Path) -> None:
    file = tmp_path / "ada.yaml"
    keeper = Keeper(str(file), "Ada", MARCH, Dealt(seed=3))
    keeper.heard(ONE, BlankAnswered(1, (MISSED, RIGHT), 2))
    results = results_at(str(file))
    ((sitting, answer),) = results.answers
    assert (results.name, sitting.day, sitting.dealt) == ("Ada", "2026-03-01", Dealt(seed=3))
    assert [one.held for one in answer.tries] == ["check-passed-over", None]
    assert (answer.right, answer.hops) == ("trapped", 2)
    assert "check-passed-over" in answer.could
    assert keeper.told() == f"0 of 1 right at once, 1 more at the second try. The answers are in {file}.\n"


def test_blank_is_done_with_once_it_is_right_or_was_tried_twice(tmp_path: Path) -> None:
    file = str(tmp_path / "ada.yaml")
    Keeper(file, "", MARCH, Dealt()).heard(ONE, BlankAnswered(1, (MISSED,), 0))
    left = Keeper(file, "", MARCH, Dealt())
    assert left.done(ONE) == set()
    left.heard(ONE, BlankAnswered(1, (MISSED,), 0))
    assert left.done(ONE) == {1}
    assert Keeper(file, "", MARCH, Dealt(seed=2)).done(ONE) == set()
    assert Keeper(file, "", MARCH, None).done(ONE) == set()


def test_without_a_file_it_only_counts() -> None:
    keeper = Keeper(None, "", MARCH, Dealt())
    keeper.heard(ONE, BlankAnswered(1, (RIGHT,), 0))
    keeper.heard(ONE, BlankAnswered(1, (), 0))
    assert keeper.told() == "1 of 2 right at once.\n"
