from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
import typer
from posing import RELIEF, posed

from plumbnet.cli.playing.results_keeper import Keeper
from plumbnet.report.worksheets import BlankAnswered, TakenAnswer
from plumbnet.study.beliefs.hint import told
from plumbnet.study.training.posed_exercise import PosedExercise
from plumbnet.study.training.results_file import Dealt, Held, results_at

ONE = PosedExercise(posed("verdict", "street -> cv -> heater -> tap.hot", heater=RELIEF))
MISSED = TakenAnswer("open", told("check-passed-over", {"device": "cv"}))
RIGHT = TakenAnswer("trapped", None)
MARCH = date(2026, 3, 1)


def test_answer_stands_in_the_file_as_soon_as_it_is_heard(tmp_path: Path) -> None:
    file = tmp_path / "ada.yaml"
    keeper = Keeper(str(file), "Ada", MARCH)
    keeper.heard(ONE, Dealt(seed=3), BlankAnswered(1, (MISSED, RIGHT), 2))
    results = results_at(str(file))
    ((sitting, answer),) = results.answers
    assert (results.name, sitting.day, sitting.dealt) == ("Ada", "2026-03-01", Dealt(seed=3))
    assert [one.held for one in answer.tries] == ["check-passed-over", None]
    assert (answer.right, answer.hops) == ("trapped", 2)
    assert "check-passed-over" in answer.could
    assert keeper.told() == f"0 of 1 right at once, 1 more at the second try. The answers are in {file}.\n"


def test_blank_is_done_with_once_it_is_right_or_was_tried_twice(tmp_path: Path) -> None:
    file = str(tmp_path / "ada.yaml")
    Keeper(file, "", MARCH).heard(ONE, Dealt(), BlankAnswered(1, (MISSED,), 0))
    left = Keeper(file, "", MARCH)
    assert left.done(ONE, Dealt()) == set()
    left.heard(ONE, Dealt(), BlankAnswered(1, (MISSED,), 0))
    assert left.done(ONE, Dealt()) == {1}
    assert left.done(ONE, Dealt(seed=2)) == left.done(ONE, None) == set()


def test_without_a_file_it_only_counts() -> None:
    keeper = Keeper(None, "", MARCH)
    keeper.heard(ONE, Dealt(), BlankAnswered(1, (RIGHT,), 0))
    keeper.heard(ONE.placed(2, ""), Dealt(), BlankAnswered(1, (), 0))
    assert keeper.told() == "1 of 2 right at once.\n"


def test_second_try_heard_by_itself_counts_with_the_first_also_of_what_is_asked_again() -> None:
    for dealt, again in ((Dealt(), None), (None, Held(question="verdict", held="check-passed-over"))):
        keeper, one = Keeper(None, "", MARCH), replace(ONE, again=again)
        keeper.heard(one, dealt, BlankAnswered(1, (MISSED,), 0))
        keeper.heard(one, dealt, BlankAnswered(1, (RIGHT,), 0))
        assert keeper.told() == "0 of 1 right at once, 1 more at the second try.\n"
        assert len(list(keeper.results.answers)) == 1


def test_answer_that_cannot_be_written_raises_or_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    keeper = Keeper(str(tmp_path / "nowhere" / "ada.yaml"), "", MARCH)
    with pytest.raises(OSError, match="nowhere"):
        keeper.keep(ONE, Dealt(), BlankAnswered(1, (RIGHT,), 0))
    with pytest.raises(typer.Exit):
        keeper.heard(ONE, Dealt(), BlankAnswered(1, (RIGHT,), 0))
    assert "ada.yaml cannot be written: " in capsys.readouterr().err
