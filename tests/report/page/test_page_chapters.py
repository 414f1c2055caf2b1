"""The chapters of a page, in the order in which they are read."""

import yaml
from conftest import layout, system

import plumbnet
from plumbnet.report.page.page_chapters import page
from plumbnet.report.text.heater_text import CAUTION
from plumbnet.study.dossier.report_dossier import dossier
from plumbnet.study.whatif.what_if import whatif

HOUSE = "street -> cv -> tee -> heater -> tap.hot"


def keys(runs: str, **parts: str) -> list[str]:
    return [chapter.key for chapter in page(dossier(plumbnet.check(system(runs, **parts)))).chapters]


def test_trapped_heater_has_every_chapter_but_that_of_scenarios() -> None:
    wanted = [
        "cover",
        "verdicts",
        "piping",
        "findings",
        "ladders",
        "cures",
        "margins",
        "calculation",
        "assumptions",
        "record",
    ]
    assert keys(HOUSE, heater="relief: {pressure: 150 psi}") == wanted


def test_empty_chapters_are_left_out() -> None:
    assert keys("street -> tee -> heater -> tap.hot", heater="relief: {pressure: 150 psi}") == [
        "cover",
        "verdicts",
        "piping",
        "findings",
        "ladders",
        "margins",
        "calculation",
        "assumptions",
        "record",
    ]


def test_title_is_that_of_the_building_or_the_file() -> None:
    assert page(dossier(plumbnet.check(system(HOUSE)))).title == "drawn.yaml"


def test_under_the_title_stand_file_rules_scenario_and_date() -> None:
    document = yaml.safe_load(layout(HOUSE))
    document["scenarios"] = {"unchecked": {"change": [{"remove": "cv"}]}}
    report = plumbnet.check(plumbnet.read_bytes(yaml.safe_dump(document).encode(), file="house.yaml"))
    found = page(dossier(whatif(report, scenario="unchecked").after, date="3 May 2031"))
    assert found.under == (
        "Scenario: unchecked",
        "File: house.yaml",
        "Rules: General practice (general)",
        "Date: 3 May 2031",
    )
    assert found.caution == CAUTION
