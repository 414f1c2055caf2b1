"""A lesson that is served: what it takes and refuses, and how it is played in a browser (Debian's chromium)."""

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page
from serving import served

from plumbnet.boards.live.followed_file import FollowedFile
from plumbnet.boards.one_lesson import OneLesson
from plumbnet.cli.playing.lesson import Wanted, read_lesson
from plumbnet.cli.playing.results_keeper import Keeper
from plumbnet.study.training.results_file import results_at

LAYOUT = """plumbnet: 1
title: A house on Quay Lane (invented)
parts:
  street: {kind: main, pressure: 60 psi}
  meter: meter
  cv: check_valve
  heater: {kind: storage_heater, volume: 50 gal, setpoint: 140 degF, relief: {pressure: 150 psi}}
  tap: fixture
runs: [street -> meter -> cv -> heater -> tap.hot]
"""
QUESTIONS = """plumbnet-questions: 1
questions:
  - layout: house.yaml
    about: stopper
    options: {meter: the clock, cv: the flap}
  - {layout: house.yaml, about: verdict}
"""


@pytest.fixture
def path(tmp_path: Path) -> Path:
    (tmp_path / "house.yaml").write_text(LAYOUT, encoding="utf-8")
    file = tmp_path / "lesson.yaml"
    file.write_text(QUESTIONS, encoding="utf-8")
    return file


def keeper_of(path: Path) -> Keeper:
    return Keeper(str(path.with_name("ada.yaml")), "Ada", date(2026, 3, 1))


def lesson_at(path: Path, keeper: Keeper) -> OneLesson:
    read = read_lesson(Wanted(own=str(path)))
    return OneLesson(read.posed, read.dealt, keeper)


def test_each_try_is_judged_here_and_kept_and_what_was_not_asked_is_refused(path: Path) -> None:
    keeper = keeper_of(path)
    lesson = lesson_at(path, keeper)
    first = {"digest": lesson.digest, "exercise": 1, "blank": 1}
    handed_in = lesson.takes["answered"]
    assert lesson.questions["lesson"]({})["left"] == [[1], [1]]
    for wrong in ({"blank": 2}, {"blank": "1"}, {"exercise": 3}, {"given": "neither of them"}, {"digest": "x"}):
        assert str(handed_in({**first, "given": "the clock", **wrong})["refused"]).endswith("not kept.")
    for given in ("the clock", "the flap"):
        assert handed_in({**first, "given": given}) == {"kept": keeper.file}
    ((sitting, answer),) = results_at(str(keeper.file)).answers
    assert (sitting.dealt, sitting.day) == (lesson.dealt, "2026-03-01")
    assert [(one.given, one.held) for one in answer.tries] == [("the clock", "stops-elsewhere"), ("the flap", None)]
    assert lesson.questions["lesson"]({})["left"] == [[], [1]]
    assert lesson.questions["task"]({"at": "2"})["refused"]


def test_answer_that_cannot_be_kept_is_told_calmly(path: Path) -> None:
    keeper = Keeper(str(path.parent / "nowhere" / "ada.yaml"), "", date(2026, 3, 1))
    lesson = lesson_at(path, keeper)
    given = {"digest": lesson.digest, "exercise": 1, "blank": 1, "given": "the flap"}
    told = str(lesson.takes["answered"](given)["refused"])
    assert told.startswith("This answer is not kept: ")
    assert "ada.yaml cannot be written: " in told


@pytest.fixture
def page(browser: Browser, path: Path) -> Iterator[Page]:
    """The page of the served lesson, which must not complain of anything."""
    keeper = keeper_of(path)
    with served(FollowedFile(path, lambda: lesson_at(path, keeper))) as server:
        page = browser.new_page(viewport={"width": 390, "height": 844}, reduced_motion="reduce")
        complaints: list[str] = []
        page.on("console", lambda message: complaints.append(message.text))
        page.on("pageerror", lambda error: complaints.append(str(error)))
        page.goto(server.address)
        page.wait_for_selector("body[data-ready]")
        yield page
        page.close()
    assert complaints == []


def answers(path: Path) -> list[tuple[int, list[str]]]:
    found = results_at(str(path.with_name("ada.yaml"))).answers
    return [(answer.exercise, [one.given for one in answer.tries]) for _, answer in found]


def test_lesson_is_played_each_answer_is_kept_and_it_goes_on_where_it_ended(page: Page, path: Path) -> None:
    page.click("g.part[aria-label='meter, meter'] .hit")
    page.wait_for_selector("body[data-kept='1']")
    assert answers(path) == [(1, ["the clock"])]
    page.click("#options button:has-text('the flap')")
    page.wait_for_selector("body[data-kept='2']")
    assert answers(path) == [(1, ["the clock", "the flap"])]
    page.reload()
    page.wait_for_selector("body[data-shown='2']")
    assert page.inner_text("#place") == "2 of 2: A house on Quay Lane (invented)"
    page.click("#options button[data-option=trapped]")
    page.click("#next")
    page.wait_for_selector("body[data-shown=end]")
    assert page.inner_text("#place") == "1 of 1 right at once"
    assert page.inner_text("#hint") == f"The answers are in {path.with_name('ada.yaml')}."


def test_save_with_a_mistake_is_told_with_its_caret_and_one_that_mends_it_is_followed(page: Page, path: Path) -> None:
    page.click("#options button:has-text('the clock')")
    path.write_text(QUESTIONS.replace("verdict", "verdikt"), encoding="utf-8")
    page.wait_for_selector("#mistake:not([hidden])")
    assert 'there is no question "verdikt": did you mean "verdict"?' in page.inner_text("#mistake")
    assert "^" in page.inner_text("#mistake")
    path.write_text(QUESTIONS + "  - {layout: house.yaml, about: opens-first}\n", encoding="utf-8")
    page.wait_for_selector("#place:has-text('1 of 3')")
    assert page.is_hidden("#mistake")
    assert page.locator("button.tried").inner_text() == "the clock"
    path.with_name("house.yaml").write_text(LAYOUT.replace("Quay", "Ferry"), encoding="utf-8")
    page.wait_for_selector("#place:has-text('Ferry')")
    assert page.locator("button.tried").count() == 0
