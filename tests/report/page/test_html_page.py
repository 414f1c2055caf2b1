"""The page as HTML: whole, readable by anyone, and with nothing of a file as markup."""

import base64
import hashlib
import re
from itertools import pairwise
from pathlib import Path

import pytest
import yaml
from conftest import layout, system
from hypothesis import given, settings
from oracles.random_layouts import Layout, layouts
from pages import Reading

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.report.page.html_page import to_html
from plumbnet.report.page.page_chapters import page
from plumbnet.study.dossier.report_dossier import dossier

HOUSE = "street -> cv -> tee -> heater -> tap.hot"
RELIEVED = {"heater": "relief: {pressure: 150 psi, temperature: 210 degF}, input: 40000 Btu/h"}
SYSTEMS = Path(__file__).parents[3] / "systems"
HOSTILE = '</svg></style><script>alert("x")</script> " onload="evil() \x1b[2J \u202e $x_1$ {{ 7 * 7 }} &amp; \'</title>'


def written(report: Report) -> Reading:
    return Reading(to_html(page(dossier(report))))


def of_system(name: str) -> Reading:
    return written(plumbnet.check(plumbnet.read(SYSTEMS / f"{name}.yaml")))


@pytest.fixture(scope="module")
def house() -> Reading:
    return written(plumbnet.check(system(HOUSE, **RELIEVED)))


@pytest.fixture(scope="module")
def hostile() -> Reading:
    """A page on a layout that tries everything."""
    document = yaml.safe_load(layout(HOUSE, **RELIEVED))
    document["title"] = HOSTILE
    document["accept"] = [{"finding": "relief-above-rating", "part": "heater", "reason": HOSTILE}]
    document["scenarios"] = {"</td><script>": {"note": HOSTILE, "change": [{"remove": "cv"}]}}
    return written(plumbnet.check(plumbnet.read_bytes(yaml.safe_dump(document).encode(), file=HOSTILE)))


@pytest.mark.parametrize("name", ["boiler-loop-with-indirect-heater", "two-heaters-own-checks", "open-house"])
def test_tags_are_balanced_and_every_id_is_there_once(name: str) -> None:
    reading = of_system(name)
    assert reading.faults == []
    ids = [each.attributes["id"] for each in reading.elements if "id" in each.attributes]
    assert len(ids) == len(set(ids))
    known = set(ids)
    for each in reading.elements:
        for value in each.attributes.values():
            assert set(re.findall(r"url\(#([^)]*)\)", value)) <= known
        href = each.attributes.get("href", "#")
        assert href.startswith("#")
        assert href[1:] in known | {""}
        assert set(each.attributes.get("aria-labelledby", "").split()) <= known


def test_headings_go_down_step_by_step_from_one_title(house: Reading) -> None:
    levels = [int(each.tag[1]) for each in house.all("h1", "h2", "h3", "h4", "h5", "h6")]
    assert levels.count(1) == 1
    assert levels[0] == 1
    assert all(lower - upper <= 1 for upper, lower in pairwise(levels))


def test_landmarks_are_there_once(house: Reading) -> None:
    for tag in ("header", "nav", "main", "footer"):
        assert len(house.all(tag)) == 1
    assert house.all("html")[0].attributes["lang"] == "en"


def test_heads_of_tables_say_what_they_head(house: Reading) -> None:
    assert all(each.attributes.get("scope") in {"col", "row"} for each in house.all("th"))
    assert len(house.all("table")) == len(house.all("thead"))


def test_pictures_are_told_in_words(house: Reading) -> None:
    pictures = house.all("svg")
    assert len(pictures) == 5
    for each in pictures:
        assert each.attributes["role"] == "img"
        title, words = each.attributes["aria-labelledby"].split()
        told = {found.attributes.get("id"): found.words for found in house.all("title", "desc")}
        assert told[title]
        assert told[words]


def test_page_holds_the_whole_answer(house: Reading) -> None:
    words = " ".join(house.all("body")[0].words.split())
    for part in (
        "1 heater: 1 trapped.",
        "its way back is stopped by cv (between street and tee)",
        "trapped-expansion: heater",
        "Fit an expansion tank of 5 gal, charged to 60 psi",
        "Then heater is controlled",
        "Expansion tank for heater",
        "p_0",
        "SHA-256 of the file",
        "never plug, cap or remove one",
    ):
        assert part in words, part


def test_unverified_clauses_are_marked_and_acceptances_keep_their_reason() -> None:
    document = yaml.safe_load(layout(HOUSE, **RELIEVED))
    document["accept"] = [{"finding": "trapped-expansion", "part": "heater", "reason": "exempt by letter"}]
    report = plumbnet.check(plumbnet.read_bytes(yaml.safe_dump(document).encode()), rules="en-806")
    words = written(report).all("main")[0].words
    assert "exempt by letter (accepted by the applicant in line" in words
    from_memory = [one for one in (*report.findings, *(each.finding for each in report.accepted)) if not one.verified]
    assert ("from memory: check the edition in force" in words) == bool(from_memory)


def test_only_the_one_script_may_run_and_nothing_may_be_fetched(house: Reading) -> None:
    policy = next(each.attributes["content"] for each in house.all("meta") if "http-equiv" in each.attributes)
    (script,) = house.all("script")
    digest = base64.b64encode(hashlib.sha256(script.words.encode()).digest()).decode()
    assert f"script-src 'sha256-{digest}'" in policy
    assert policy.startswith("default-src 'none';")
    assert script.attributes == {}


def test_no_attribute_leads_out_of_the_page(house: Reading, hostile: Reading) -> None:
    for reading in (house, hostile):
        for each in reading.elements:
            for name, value in each.attributes.items():
                assert not name.startswith("on"), (each.tag, name)
                assert name not in {"src", "srcdoc", "action", "formaction", "data", "ping", "xlink:href"}
                assert "://" not in value or name == "aria-label", (each.tag, name, value)
            assert each.tag not in {"img", "link", "iframe", "object", "embed", "image", "use-external", "base", "form"}


def test_hostile_words_are_text(hostile: Reading) -> None:
    assert hostile.faults == []
    assert len(hostile.all("script")) == 1
    (title,) = hostile.all("h1")
    assert '<script>alert("x")</script>' in title.words
    assert "{{ 7 * 7 }}" in title.words
    assert "\\x1b[2J \\u202e" in title.words
    assert not {"\x1b", "\u202e"} & set(hostile.text)
    assert "</td><script>" in hostile.all("main")[0].words


def test_entries_light_up_what_stops_them_in_the_picture(house: Reading) -> None:
    ids = {each.attributes.get("id") for each in house.elements}
    lights = [each.attributes["data-lights"].split() for each in house.elements if "data-lights" in each.attributes]
    assert ["p1-part-heater", "p1-part-cv"] in lights
    assert {name for names in lights for name in names} <= ids


def test_entries_of_which_nothing_is_told_are_for_the_screen_alone(house: Reading) -> None:
    pointers = [each for each in house.all("article") if "pointer" in each.attributes["class"]]
    assert [each.words.split() for each in pointers] == [["TRAPPED", "heater"]]
    assert "nav, .pointer { display: none; }" in house.all("style")[0].words.partition("@media print")[2]


def test_open_heater_lights_up_its_way_out() -> None:
    reading = written(plumbnet.check(system("street -> tee -> heater -> tap.hot", **RELIEVED)))
    lights = [each.attributes["data-lights"].split() for each in reading.elements if "data-lights" in each.attributes]
    assert {"p1-part-heater", "p1-part-tee", "p1-part-street"} == set(lights[0])


def test_the_same_layout_is_the_same_page(house: Reading) -> None:
    assert written(plumbnet.check(system(HOUSE, **RELIEVED))).text == house.text


def test_layout_that_heats_nothing_has_a_page() -> None:
    reading = written(plumbnet.check(system("street -> tap.cold")))
    assert reading.faults == []
    assert "Nothing here heats water." in reading.all("main")[0].words


def test_verdict_in_a_table_bears_its_mark(house: Reading) -> None:
    marks = [each for each in house.all("span") if each.inside("td")]
    assert {each.attributes["class"] for each in marks} >= {"mark trapped"}


@settings(max_examples=6)
@given(layouts())
def test_page_of_any_layout_is_whole(drawn: Layout) -> None:
    try:
        report = plumbnet.check(drawn.system)
    except LayoutError:
        return
    reading = written(report)
    assert reading.faults == []
    ids = [each.attributes["id"] for each in reading.elements if "id" in each.attributes]
    assert len(ids) == len(set(ids))
