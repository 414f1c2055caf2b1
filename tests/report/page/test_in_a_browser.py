"""The page as a browser shows and prints it.

One browser serves all tests of this file. It is Debian's, `apt-get install chromium`; without it they are skipped.
"""

import re
from collections.abc import Callable, Iterator
from io import BytesIO
from pathlib import Path

import pytest
import yaml
from browser import started
from conftest import layout, system
from pages import Reading
from playwright.sync_api import Browser, Page
from pypdf import PdfReader

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.report.page.html_page import to_html
from plumbnet.report.page.page_chapters import page
from plumbnet.study.dossier.report_dossier import dossier

HOUSE = "street -> cv -> tee -> heater -> tap.hot"
RELIEVED = {"heater": "relief: {pressure: 150 psi}"}
HOSTILE = (
    '</svg></style><script>document.title = "taken"</script> " onload="evil() \x1b[2J \u202e <img src=x onerror=evil()>'
)
Show = Callable[[str], Page]


def html_of(report: Report) -> str:
    return to_html(page(dossier(report)))


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    with started() as browser:
        yield browser


@pytest.fixture
def said() -> list[str]:
    """What the browser's console has said."""
    return []


@pytest.fixture
def show(browser: Browser, tmp_path: Path, said: list[str]) -> Iterator[Show]:
    """Opens a page from a file."""
    context = browser.new_context()
    shown = context.new_page()
    shown.on("console", lambda message: said.append(message.text))
    shown.on("pageerror", lambda error: said.append(str(error)))

    def opened(html: str) -> Page:
        file = tmp_path / "page.html"
        file.write_text(html, encoding="utf-8")
        shown.goto(file.as_uri())
        return shown

    yield opened
    context.close()


@pytest.fixture(scope="module")
def house() -> str:
    return html_of(plumbnet.check(system(HOUSE, **RELIEVED)))


def test_console_is_quiet_and_would_not_be_if_something_were_wrong(show: Show, said: list[str], house: str) -> None:
    show(house)
    assert said == []
    show(house.replace("</body>", "<script>1</script></body>"))
    assert any("Content Security Policy" in line for line in said)


LIT = "Array.from(document.querySelectorAll('.lit'), each => each.id)"


def test_focus_on_a_heater_lights_up_what_stops_it_and_leaving_puts_it_out(
    show: Show, said: list[str], house: str
) -> None:
    shown = show(house)
    entry = shown.locator("#verdicts .entry").first
    entry.focus()
    assert sorted(shown.evaluate(LIT)) == ["p1-part-cv", "p1-part-heater"]
    entry.blur()
    assert shown.evaluate(LIT) == []
    entry.hover()
    assert len(shown.evaluate(LIT)) == 2
    assert said == []


def test_page_is_complete_without_scripts(show: Show, house: str) -> None:
    bare = Reading(show(re.sub("script-src '[^']*'", "script-src 'none'", house)).content())
    whole = Reading(show(house).content())
    assert bare.all("body")[0].words.split() == whole.all("body")[0].words.split()
    assert len(bare.all("svg")) == len(whole.all("svg")) > 0
    assert not any("tabindex" in each.attributes for each in bare.all("article"))
    assert all(each.attributes["tabindex"] == "0" for each in whole.all("article"))


def test_hostile_words_do_nothing(show: Show, said: list[str]) -> None:
    document = yaml.safe_load(layout(HOUSE, **RELIEVED))
    document["title"] = HOSTILE
    document["scenarios"] = {"<script>evil()</script>": {"note": HOSTILE, "change": [{"remove": "cv"}]}}
    report = plumbnet.check(plumbnet.read_bytes(yaml.safe_dump(document).encode(), file=HOSTILE))
    shown = show(html_of(report))
    assert said == []
    reading = Reading(shown.content())
    assert reading.all("title")[0].words.startswith("</svg></style><script>")
    assert reading.all("img") == []


TOO_WIDE = (
    "Array.from(document.querySelectorAll('body *')).filter(each => !each.closest('svg')"
    " && each.getBoundingClientRect().right > document.documentElement.clientWidth + 1)"
    ".map(each => each.tagName + ': ' + each.getBoundingClientRect().right).slice(0, 5)"
)
"""What stands out over the right edge."""
LONG = "of-the-gymnasium-and-its-changing-rooms"
BESIDE_EACH_OTHER = f"""
street -> check-{LONG} -> tee1 -> heater1 -> tee2 -> tap1.hot
tee1 -> heater-{LONG} -> tee2
tee1 -> tank
street -> cv -> heater2 -> tap2.hot
"""
"""Long names, heaters that share a tank, and one of its own: every chapter has its widest tables."""
HEATER = "kind: storage_heater, volume: 50 gal, setpoint: 140 degF, relief: {pressure: 150 psi}"


def test_nothing_stands_out_over_the_edge_of_a_sheet(show: Show) -> None:
    named = {f"check-{LONG}": "kind: check_valve", **dict.fromkeys(("heater1", f"heater-{LONG}", "heater2"), HEATER)}
    document = yaml.safe_load(layout(BESIDE_EACH_OTHER, **named))
    document["scenarios"] = {"without a check": {"note": LONG, "change": [{"remove": f"check-{LONG}"}]}}
    found = page(dossier(plumbnet.check(plumbnet.read_bytes(yaml.safe_dump(document).encode()))))
    assert {"cures", "together", "margins", "scenarios", "calculation"} <= {chapter.key for chapter in found.chapters}
    shown = show(to_html(found))
    shown.emulate_media(media="print")
    shown.set_viewport_size({"width": 690, "height": 1000})  # A4 less the margins, at 96 dots to an inch
    assert shown.evaluate(TOO_WIDE) == []


def test_printed_page_holds_every_chapter_and_every_word_of_the_steps(show: Show, house: str) -> None:
    sheets = [sheet.extract_text() for sheet in PdfReader(BytesIO(show(house).pdf(prefer_css_page_size=True))).pages]
    words = " ".join(" ".join(sheets).split())
    for part in ("Verdicts", "Findings", "What would cure it", "Calculation", "p_limit", "Record", "IAPWS-IF97"):
        assert part in words, part
    for sheet in sheets:  # no heading at the foot of a sheet, its chapter on the next
        last = sheet.strip().splitlines()[-1].strip()
        assert last not in {"Findings", "Piping", "Calculation", "Record", "What would cure it", "Assumptions"}
