"""Reports and systems as a notebook shows them."""

import subprocess
import sys
from dataclasses import replace

import pytest
from conftest import system
from pages import Reading

import plumbnet
from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.report.page.notebook_page import report_html, system_html

HOUSE = system("street -> cv -> tee -> heater -> tap.hot", heater="relief: {pressure: 150 psi}")
HOSTILE = "</div><script>alert(1)</script>\x1b"


def test_report_shows_verdicts_piping_and_findings() -> None:
    reading = Reading(report_html(plumbnet.check(HOUSE)))
    assert reading.faults == []
    words = reading.all("div")[0].words
    for part in ("1 heater: 1 trapped.", "trapped-expansion: heater", "never plug, cap or remove one"):
        assert part in words
    assert len(reading.all("svg")) == 1
    assert reading.all("script") == []


def test_system_shows_its_counts_and_its_piping() -> None:
    reading = Reading(system_html(HOUSE, plumbnet.check(HOUSE)))
    assert "6 parts, 5 pipes, 1 heater." in reading.all("p")[1].words
    assert len(reading.all("svg")) == 1


def test_system_of_which_nothing_can_be_computed_says_why() -> None:
    high = system("street -> heater -> tap.hot", tap="elevation: 3000 ft")
    with pytest.raises(LayoutError) as refused:
        plumbnet.check(high)
    reading = Reading(system_html(high, refused.value))
    assert high._repr_html_() == system_html(high, refused.value)
    assert "higher than the supply" in reading.all("div")[0].words
    assert reading.all("svg") == []


def test_two_on_one_page_share_no_id() -> None:
    other = plumbnet.check(system("street -> tee -> heater -> tap.hot", heater="relief: {pressure: 150 psi}"))
    both = Reading(report_html(plumbnet.check(HOUSE)) + report_html(other))
    ids = [each.attributes["id"] for each in both.elements if "id" in each.attributes]
    assert len(ids) == len(set(ids)) > 0


def test_hostile_title_is_text() -> None:
    reading = Reading(report_html(plumbnet.check(replace(HOUSE, title=HOSTILE))))
    assert reading.faults == []
    assert reading.all("script") == []
    assert "\x1b" not in reading.text


def test_plain_import_is_enough_and_draws_nothing_until_it_is_asked_and_never_loads_what_is_for_frames() -> None:
    lines = (
        "import sys, plumbnet",
        "report = plumbnet.check(plumbnet.read('systems/open-house.yaml'))",
        "print('matplotlib' in sys.modules, 'jinja2' in sys.modules)",
        "report.to_dict()",
        "print(report._repr_html_()[:4], report.system._repr_html_()[:4])",
        "import plumbnet.library.data_frame",
        "print('pandas' in sys.modules)",
    )
    run = subprocess.run([sys.executable, "-c", "\n".join(lines)], capture_output=True, text=True, check=True)  # noqa: S603  # ours
    assert run.stdout == "False False\n<div <div\nFalse\n"
