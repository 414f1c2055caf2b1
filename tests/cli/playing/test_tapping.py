"""A lesson answered by tapping."""

from datetime import date
from pathlib import Path

import pytest
import typer
from posing import RELIEF, posed

from plumbnet.boards.live.followed_file import FollowedFile
from plumbnet.boards.one_lesson import OneLesson
from plumbnet.cli.board_pages.live_page import LivePage
from plumbnet.cli.playing import tapping
from plumbnet.cli.playing.lesson import Lesson
from plumbnet.cli.playing.results_keeper import Keeper
from plumbnet.cli.playing.tapping import play_by_tapping, tapped_page
from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.study.training.posed_exercise import PosedExercise

ONE = PosedExercise(posed("verdict", "street -> heater -> tap.hot", heater=RELIEF))


def test_page_is_made_of_the_whole_lesson() -> None:
    page = tapped_page(Lesson((ONE, ONE), None))
    assert page.count('"question":"verdict"') == 2
    assert page.startswith("<!doctype html>")


@pytest.mark.parametrize("answers", [0, 1])
def test_what_came_of_a_served_lesson_is_told_at_its_end(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], answers: int
) -> None:
    file = tmp_path / "ada.yaml"
    keeper = Keeper(str(file), "", date(2026, 3, 1))

    def serve(followed: FollowedFile[OneLesson], _live: LivePage) -> None:
        assert followed.path is None
        given = {"digest": followed.shown.digest, "exercise": 1, "blank": 1, "given": "open"}
        for _ in range(answers):
            followed.shown.takes["answered"](given)

    monkeypatch.setattr(tapping, "serve", serve)
    play_by_tapping(lambda: Lesson((ONE,), None), "no-such-file.yaml", keeper, LivePage())
    assert capsys.readouterr().out == (f"1 of 1 right at once. The answers are in {file}.\n" if answers else "")


def test_mistake_in_the_questions_is_told_before_anything_is_served(capsys: pytest.CaptureFixture[str]) -> None:
    def read() -> Lesson:
        raise LayoutError("mine.yaml", [], "")

    with pytest.raises(typer.Exit):
        play_by_tapping(read, "mine.yaml", Keeper(None, "", date(2026, 3, 1)), LivePage())
    assert "http" not in capsys.readouterr().out
