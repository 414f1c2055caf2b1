"""Exercises on a page, answered by tapping: what it is told, and what it does in a browser (Debian's chromium)."""

import json
import re
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from accessible import complaints as serious
from playwright.sync_api import Browser, Page
from posing import RELIEF, posed

from plumbnet.boards.task_copy import tasks_copy
from plumbnet.study.training.posed_exercise import PosedExercise
from plumbnet.study.training.results_file import Dealt, Held, read_results

STOPPER = posed("stopper", "street -> meter -> cv -> heater -> tap.hot", heater=RELIEF)
HOSTILE = replace(STOPPER, asked=replace(STOPPER.asked, prompt="<img src=x onerror=alert(1)></script>Which?"))
TANK = posed("tank", "street -> cv -> heater -> tap.hot", heater=RELIEF)
OWN = PosedExercise(HOSTILE, {"cv": "the flap", "meter": "the clock"}, again=Held(question="stopper", held="x"))
PAGE = tasks_copy([OWN, PosedExercise(TANK).placed(2, "")], Dealt(seed=7))


def told(page: str = PAGE) -> dict[str, Any]:
    found = re.search(r'<script id="data" type="application/json">(.*?)</script>', page, re.DOTALL)
    assert found is not None
    data: dict[str, Any] = json.loads(found[1])
    return data


def test_option_stands_for_a_part_whatever_words_it_has() -> None:
    task, _ = told()["tasks"]
    options = [(one["word"], one["part"], one["hint"] and one["hint"]["name"]) for one in task["blanks"][0]["options"]]
    assert options == [("the flap", "cv", None), ("the clock", "meter", "stops-elsewhere")]
    assert task["could"] == ["stops-elsewhere"]
    assert ["meter", "meter", ""] in task["parts"]


def test_number_is_asked_in_the_unit_in_which_it_is_typed() -> None:
    number = told()["tasks"][1]["blanks"][1]["number"]
    assert (number["unit"], round(number["right"]), round(number["tolerance"], 2)) == ("psi", 60, 1.45)
    assert [round(cause) for cause, hint in number["causes"] if hint["name"] == "limit-for-charge"] == [80]


@pytest.fixture
def page(browser: Browser, tmp_path: Path) -> Iterator[Page]:
    """The page opened as a file, which must not complain of anything."""
    file = tmp_path / "lesson.html"
    file.write_text(PAGE, encoding="utf-8")
    context = browser.new_context(viewport={"width": 390, "height": 844}, reduced_motion="reduce")
    page = context.new_page()
    complaints: list[str] = []
    page.on("console", lambda message: complaints.append(message.text))
    page.on("pageerror", lambda error: complaints.append(str(error)))
    page.goto(file.as_uri())
    page.wait_for_selector("body[data-ready]")
    yield page
    context.close()
    assert complaints == []


def test_what_fires_with_every_fixture_shut_heats_up_and_nothing_else() -> None:
    first, _ = told()["tasks"]
    assert max(first["course"]["pressure"]) == pytest.approx(150, abs=0.5)
    tankless = posed("verdict", "street -> cv -> tankless -> tap.hot")
    assert told(tasks_copy([PosedExercise(tankless)], None))["tasks"][0]["course"] is None


def test_reason_is_told_once_the_heat_up_has_been_seen_or_halted(browser: Browser, tmp_path: Path) -> None:
    file = tmp_path / "lesson.html"
    file.write_text(PAGE, encoding="utf-8")
    page = browser.new_page(viewport={"width": 390, "height": 844})
    page.clock.install()
    page.goto(file.as_uri())
    page.click("#options button:has-text('the flap')")
    page.clock.fast_forward(1000)
    page.wait_for_selector("svg.rushing")
    assert page.inner_text("#hint") == "Right: the flap."
    page.clock.fast_forward(25_000)
    page.wait_for_selector("#play:text-is('Again')")
    assert "Of all devices on the way only cv" in page.inner_text("#hint")
    page.close()


def test_nothing_serious_stands_in_the_way_of_those_who_see_little_or_use_no_mouse(page: Page) -> None:
    assert serious(page) == []
    page.click("g.part[aria-label='cv, check valve'] .hit")
    assert serious(page) == []


def test_lesson_is_answered_by_tapping_and_handed_in(page: Page, tmp_path: Path) -> None:
    assert page.inner_text("#prompt").startswith("<img src=x")
    assert page.locator(".zone .fill").get_attribute("d") in {"", None}
    page.click("g.part[aria-label='meter, meter'] .hit")
    assert page.inner_text("#hint").startswith("You had the water stop at meter; ")
    page.click("g.part[aria-label='cv, check valve'] .hit")
    page.wait_for_selector("body[data-shown='1 told']")
    assert "Of all devices on the way only cv" in page.inner_text("#hint")
    assert page.locator(".zone .fill").get_attribute("d")
    assert (page.inner_text("#play"), page.input_value("#moment")) == ("Again", "1000")
    assert "gal let out" in page.inner_text("#moment-words")
    page.click("#next")
    assert not page.is_visible("#heating")
    page.click("#options button:has-text('no tank')")
    page.click("#options button >> text=/^5 gal/")
    page.fill("#number", "x")
    page.keyboard.press("Enter")
    assert page.inner_text("#hint") == "Write a number, in psi."
    for typed in ("80", "60,5"):
        page.fill("#number", typed)
        page.keyboard.press("Enter")
    page.click("#next")
    page.wait_for_selector("body[data-shown=end]")
    assert page.inner_text("#place") == "0 of 3 right at once"
    with page.expect_download() as download:
        page.click("#results")
    download.value.save_as(tmp_path / "results.yaml")
    results = read_results((tmp_path / "results.yaml").read_bytes(), file="results.yaml")
    answers = [answer for _, answer in results.answers]
    assert {sitting.dealt for sitting in results.sittings} == {Dealt(seed=7)}
    assert [(one.exercise, one.blank, one.first_held) for one in answers] == [
        (1, 1, "stops-elsewhere"),
        (2, 1, "size-needed-after-all"),
        (2, 2, "limit-for-charge"),
    ]
    assert all(one.is_right for one in answers)
    assert answers[0].again == Held(question="stopper", held="x")
    assert answers[2].tries[1].given == "60.5 psi"
