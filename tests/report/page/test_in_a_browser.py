"""The page as a browser shows and prints it."""

import re
from io import BytesIO
from pathlib import Path

import pytest
import yaml
from browser import Browser, browser_in, with_script
from conftest import layout, system
from pages import Reading
from pypdf import PdfReader

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.report.page.html_page import to_html
from plumbnet.report.page.page_chapters import page
from plumbnet.study.dossier.report_dossier import dossier

SYSTEMS = Path(__file__).parents[3] / "systems"
HOUSE = "street -> cv -> tee -> heater -> tap.hot"
RELIEVED = {"heater": "relief: {pressure: 150 psi}"}
HOSTILE = (
    '</svg></style><script>document.title = "taken"</script> " onload="evil() \x1b[2J \u202e <img src=x onerror=evil()>'
)


def html_of(report: Report) -> str:
    return to_html(page(dossier(report)))


@pytest.fixture
def browser(tmp_path: Path) -> Browser:
    return browser_in(tmp_path)


@pytest.fixture(scope="module")
def house() -> str:
    return html_of(plumbnet.check(system(HOUSE, **RELIEVED)))


def noted(html: str, name: str) -> str:
    """What a script of a test has noted on the body of the page."""
    found = re.search(rf'data-{name}="([^"]*)"', html)
    assert found is not None
    return found[1]


def test_console_is_quiet_and_would_not_be_if_something_were_wrong(browser: Browser, house: str) -> None:
    assert browser.opened(house).console == []
    forbidden = house.replace("</body>", "<script>1</script></body>")
    assert any("Content Security Policy" in line for line in browser.opened(forbidden).console)


def test_focus_on_a_heater_lights_up_what_stops_it_and_leaving_puts_it_out(browser: Browser, house: str) -> None:
    script = (
        "var entry = document.querySelector('#verdicts .entry'); entry.focus();"
        "var lit = Array.from(document.querySelectorAll('.lit')).map(function (each) { return each.id; });"
        "document.body.dataset.focused = lit.join(' ');"
        "entry.blur(); document.body.dataset.blurred = document.querySelectorAll('.lit').length;"
        "entry.dispatchEvent(new PointerEvent('pointerenter'));"
        "document.body.dataset.pointed = document.querySelectorAll('.lit').length;"
    )
    opened = browser.opened(with_script(house, script))
    assert sorted(noted(opened.html, "focused").split()) == ["p1-part-cv", "p1-part-heater"]
    assert noted(opened.html, "blurred") == "0"
    assert noted(opened.html, "pointed") == "2"
    assert opened.console == []


def test_page_is_complete_without_scripts(browser: Browser, house: str) -> None:
    bare = Reading(browser.opened(re.sub("script-src '[^']*'", "script-src 'none'", house)).html)
    whole = Reading(browser.opened(house).html)
    assert bare.all("body")[0].words.split() == whole.all("body")[0].words.split()
    assert len(bare.all("svg")) == len(whole.all("svg")) > 0
    assert not any("tabindex" in each.attributes for each in bare.all("article"))
    assert all(each.attributes["tabindex"] == "0" for each in whole.all("article"))


def test_hostile_words_do_nothing(browser: Browser) -> None:
    document = yaml.safe_load(layout(HOUSE, **RELIEVED))
    document["title"] = HOSTILE
    document["scenarios"] = {"<script>evil()</script>": {"note": HOSTILE, "change": [{"remove": "cv"}]}}
    report = plumbnet.check(plumbnet.read_bytes(yaml.safe_dump(document).encode(), file=HOSTILE))
    opened = browser.opened(html_of(report))
    assert opened.console == []
    reading = Reading(opened.html)
    assert reading.all("title")[0].words.startswith("</svg></style><script>")
    assert reading.all("img") == []


MEASURE = (
    "var wide = [];"
    "document.querySelectorAll('body *').forEach(function (each) {"
    "  if (each.closest('svg')) { return; }"
    "  var box = each.getBoundingClientRect();"
    "  if (box.right > document.documentElement.clientWidth + 1) { wide.push(each.tagName + ':' + box.right); }"
    "});"
    "document.body.dataset.wide = wide.slice(0, 5).join(' ');"
)
"""Notes what stands out over the right edge."""


@pytest.mark.parametrize("name", ["school-shared-tanks", "two-heaters-own-checks"])
def test_nothing_stands_out_over_the_edge_of_a_sheet(browser: Browser, name: str) -> None:
    html = html_of(plumbnet.check(plumbnet.read(SYSTEMS / f"{name}.yaml")))
    as_printed = with_script(html.replace("@media print {", "@media all {"), MEASURE)
    opened = browser.opened(as_printed, "--window-size=690,1000")  # A4 less the margins, at 96 dots to an inch
    assert noted(opened.html, "wide") == ""


def test_printed_page_holds_every_chapter_and_every_word_of_the_steps(browser: Browser, house: str) -> None:
    sheets = [sheet.extract_text() for sheet in PdfReader(BytesIO(browser.printed(house))).pages]
    words = " ".join(" ".join(sheets).split())
    for part in ("Verdicts", "Findings", "What would cure it", "Calculation", "p_limit", "Record", "IAPWS-IF97"):
        assert part in words, part
    for sheet in sheets:  # no heading at the foot of a sheet, its chapter on the next
        last = sheet.strip().splitlines()[-1].strip()
        assert last not in {"Findings", "Piping", "Calculation", "Record", "What would cure it", "Assumptions"}
