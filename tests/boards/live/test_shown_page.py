"""What a live board shows of one version of a file."""

from datetime import date

from posing import RELIEF, posed
from touched import HOUSE

import plumbnet
from plumbnet.boards.live.shown_page import ShownPage
from plumbnet.boards.one_board import OneBoard
from plumbnet.boards.one_lesson import OneLesson
from plumbnet.cli.playing.results_keeper import Keeper
from plumbnet.study.training.posed_exercise import PosedExercise


def asked(shown: ShownPage) -> tuple[list[str], list[str]]:
    assert shown.html.count("<script type=") == 1
    return sorted(shown.questions), sorted(shown.takes)


def test_board_and_lesson_are_both_shown() -> None:
    keeper = Keeper(None, "", date(2026, 3, 1))
    one = PosedExercise(posed("verdict", "street -> heater -> tap.hot", heater=RELIEF))
    board, lesson = OneBoard(plumbnet.check(HOUSE.encode())), OneLesson([one], None, keeper)
    assert asked(board) == (["answer", "board", "heat-up", "picture", "walk"], [])
    assert asked(lesson) == (["lesson", "task"], ["answered"])
