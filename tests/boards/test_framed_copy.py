"""The copy of the board inside another page: under the policies of both, with a past of its own."""

import html
import re
from pathlib import Path

import pytest
from conftest import system
from playwright.sync_api import Browser

import plumbnet
from plumbnet.boards.framed_copy import framed_board, held_in_words
from plumbnet.report.page.page_content import PageFrame
from plumbnet.report.page.page_writer import page_file
from plumbnet.study.dossier.report_dossier import dossier
from plumbnet.study.touching.state_choice import held_states
from plumbnet.study.touching.touch_states import TouchStates

REPORT = plumbnet.check(system("street -> valve -> tee -> heater -> tap.hot\nheater.relief -> relief"))
STATES = TouchStates(REPORT)
SANE = "default-src 'none'; style-src 'unsafe-inline'; script-src 'sha256-"


@pytest.fixture(scope="module")
def framed() -> PageFrame:
    return framed_board(STATES, held_states(STATES, ["valve"]))


@pytest.fixture(scope="module")
def page(framed: PageFrame) -> str:
    return page_file(dossier(REPORT), "html", framed).decode()


def test_words_say_how_many_states_are_held_and_what_is_left_out(framed: PageFrame) -> None:
    assert framed.words.startswith("It holds 3 states: all combinations of valve. Left out: ")
    assert "up to 1 at a time of " in held_in_words(STATES, held_states(STATES, ["valve", "heater"], 1))


def test_page_allows_the_script_of_the_board_and_holds_it_unchanged(page: str, framed: PageFrame) -> None:
    policy = re.search(r'http-equiv="Content-Security-Policy" content="([^"]*)"', page)
    assert policy is not None
    assert html.unescape(policy[1]).startswith(SANE)
    assert html.unescape(policy[1]).count("'sha256-") == 2
    assert framed.script_hash in html.unescape(policy[1])
    (inside,) = re.findall(r'srcdoc="([^"]*)"', page)
    assert html.unescape(inside) == framed.document


def test_page_without_a_board_says_nothing_of_one() -> None:
    page = page_file(dossier(REPORT), "html").decode()
    assert "<iframe" not in page
    assert page.count("'sha256-") + page.count("&#39;sha256-") == 1


def test_board_is_touched_and_undone_inside_the_page(page: str, tmp_path: Path, browser: Browser) -> None:
    file, complaints = tmp_path / "report.html", list[str]()
    file.write_text(page, encoding="utf-8")
    shown = browser.new_page()
    shown.set_default_timeout(10_000)
    shown.on("console", lambda message: complaints.append(message.text))
    shown.on("pageerror", lambda error: complaints.append(str(error)))
    shown.goto(file.as_uri())
    board = shown.frame_locator("iframe")
    board.locator('#verdict:has-text("OPEN")').wait_for()
    board.locator('g.part[role=button][aria-label^="valve"]').click()
    board.locator("#menu button:has-text('shut')").click()
    board.locator('#verdict:has-text("TRAPPED")').wait_for()
    board.locator("#undo").click()
    board.locator('#verdict:has-text("OPEN")').wait_for()
    shown.close()
    assert complaints == []
