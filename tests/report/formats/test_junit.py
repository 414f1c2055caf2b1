"""JUnit XML: a suite to a file, a case to a heater, and nothing in it but what XML 1.0 allows."""

import re
from dataclasses import replace
from importlib.metadata import version
from pathlib import Path
from xml.etree.ElementTree import Element, fromstring

import pytest
from forms import ANYTHING, accepting, fine, missing, note, refusal, renamed, saying, trapped, warned, written
from hypothesis import given
from two_codes import IN_A_LINE, by_two_codes

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.layout.yaml.fault import visible
from plumbnet.report.formats.junit import LAYOUT, OTHER, JunitWriter
from plumbnet.report.output.writer import Unread
from plumbnet.rules.finding import Severity
from plumbnet.rules.rule_profile import profile

SYSTEMS = sorted((Path(__file__).parents[3] / "systems").glob("*.yaml"))
STRICT = frozenset({Severity.ERROR, Severity.WARNING})


def root(*answers: Report | Unread, writer: JunitWriter | None = None) -> Element:
    return fromstring(written(writer or JunitWriter(), *answers))  # noqa: S314  written here


def suite(answer: Report | Unread, writer: JunitWriter | None = None) -> Element:
    (one,) = root(answer, writer=writer)
    return one


def case(within: Element, name: str) -> Element:
    (one,) = [each for each in within.findall("testcase") if each.get("name") == name]
    return one


def test_every_file_is_a_suite_that_counts_its_cases() -> None:
    found = root(trapped(), fine(), refusal("f.yaml"), missing())
    assert found.get("name") == f"plumbnet {version('plumbnet')}"
    counts = [tuple(one.get(key) for key in ("name", "tests", "failures", "errors", "skipped")) for one in found]
    assert counts == [
        ("drawn.yaml", "2", "1", "0", "0"),
        ("drawn.yaml", "2", "0", "0", "0"),
        ("f.yaml", "1", "0", "1", "0"),
        ("none.yaml", "1", "0", "1", "0"),
    ]


@pytest.mark.parametrize("path", SYSTEMS, ids=lambda path: path.stem)
def test_every_showcase_layout_fails_where_an_error_stands(path: Path) -> None:
    report = plumbnet.check(plumbnet.read(path))
    names = {one.name for one in report.heaters}
    leading = {one.parts[0] if one.parts[0] in names else OTHER for one in report.findings if one.severity == "error"}
    found = suite(report)
    assert [one.get("name") for one in found.findall("testcase")] == [*(one.name for one in report.heaters), OTHER]
    assert {one.get("name") for one in found.findall("testcase") if one.find("failure") is not None} == leading


def test_trapped_heater_fails_with_the_name_of_the_finding_and_what_to_do() -> None:
    (finding,) = trapped().findings
    failure = case(suite(trapped()), "heater").find("failure")
    assert failure is not None
    assert (failure.get("type"), failure.get("message")) == ("trapped-expansion", finding.text)
    assert failure.text is not None
    assert finding.advice in failure.text
    assert finding.clause in failure.text


def test_clause_from_memory_says_so() -> None:
    (finding,) = trapped().findings
    report = replace(trapped(), findings=(replace(finding, verified=False),))
    failure = case(suite(report), "heater").findtext("failure") or ""
    assert "; from memory: " in failure


def test_open_heater_passes_and_says_its_verdict() -> None:
    passed = case(suite(fine()), "heater")
    assert passed.find("failure") is None
    assert passed.findtext("system-out") == "heater: open"


def test_finding_that_no_heater_leads_has_its_case_and_a_warning_is_only_told() -> None:
    others = case(suite(warned()), OTHER)
    assert others.find("failure") is None
    assert (others.findtext("system-out") or "").startswith("warning: tank-charge-differs, line ")


def test_warning_fails_where_the_threshold_says_so() -> None:
    found = suite(warned(), JunitWriter(STRICT))
    failure = case(found, OTHER).find("failure")
    assert failure is not None
    assert failure.get("type") == "tank-charge-differs"
    assert found.get("failures") == "1"


def test_nothing_fails_where_nothing_is_to() -> None:
    assert suite(trapped(), JunitWriter(frozenset())).get("failures") == "0"


def test_several_errors_of_a_heater_are_one_failure() -> None:
    (one,) = trapped().findings
    two = replace(trapped(), findings=(one, replace(one, name="relief-missing")))
    found = suite(two)
    (failure,) = case(found, "heater").findall("failure")
    assert failure.text is not None
    assert [line.split(",")[0] for line in failure.text.split("\n")] == [
        "error: trapped-expansion",
        "error: relief-missing",
    ]
    assert found.get("failures") == "1"


def test_note_without_a_line_names_none() -> None:
    told = case(suite(replace(fine(), findings=(note(),))), OTHER).findtext("system-out")
    assert told is not None
    assert told.startswith("note: tank-note: ")
    assert told.endswith(" So. No. [common practice]")


def test_accepted_finding_is_told_with_its_reason_and_its_case_is_skipped_and_says_by_whom() -> None:
    whole = suite(accepting(trapped(), "Letter of the authority.", line=9))
    heater, said = case(whole, "heater"), "1 accepted by the applicant: trapped-expansion (heater)"
    assert heater.find("failure") is None
    assert [one.get("message") for one in heater.findall("skipped")] == [said]
    assert (whole.get("tests"), whole.get("failures"), whole.get("skipped")) == ("2", "0", "1")
    assert {one.get("name"): one.get("value") for one in whole.iter("property")}["accepted_by_applicant"] == said
    told = heater.findtext("system-out") or ""
    assert told.startswith("heater: trapped\naccepted by the applicant in line 9: ")
    assert ": trapped-expansion: " in told
    assert told.endswith("Reason: Letter of the authority.")
    others = case(suite(accepting(warned(), "So be it.")), OTHER)
    assert (others.findtext("system-out") or "").endswith("Reason: So be it.")


def test_file_that_was_not_understood_is_an_error_with_every_mistake() -> None:
    error = case(suite(refusal("f.yaml", "one is wrong", "two is wrong")), LAYOUT).find("error")
    assert error is not None
    assert error.get("message") == "one is wrong"
    assert error.text is not None
    assert "f.yaml:3:3: two is wrong" in error.text


def test_record_stands_in_the_properties() -> None:
    report = renamed(trapped(), title="7 Mill Row")
    pairs = [(one.get("name"), one.get("value")) for one in suite(report).iter("property")]
    assert dict(pairs[:6]) == {
        "plumbnet": version("plumbnet"),
        "title": "7 Mill Row",
        "sha256": report.system.record.sha256,
        "rules": "general",
        "rules_sha256": report.profile.sha256,
        "rules_from": "default",
    }
    assert any(name == "assumed" and str(value).endswith(": tap") for name, value in pairs[6:])


def test_document_is_plain_ascii_and_says_which_encoding_that_is() -> None:
    text = written(JunitWriter(), renamed(fine(), title="Bäckerei 北"))
    assert text.isascii()
    assert text.startswith('<?xml version="1.0" encoding="UTF-8"?>\n')
    assert "Bäckerei 北" in {one.get("value") for one in fromstring(text).iter("property")}  # noqa: S314  written here


@given(ANYTHING)
def test_any_text_can_be_read_back_and_breaks_out_of_nothing(text: str) -> None:
    report = renamed(saying(trapped(), text), file=text or "f", title=text)
    answers = (report, accepting(report, text), refusal(text or "f", text), missing(text or "f"))
    plain = written(JunitWriter(), *answers)
    assert not re.search(r"[^\t\n -~]", plain)
    found = fromstring(plain)  # noqa: S314  written here
    tags = [child.tag for child in found.iter()]
    same = [child.tag for child in root(trapped(), accepting(trapped(), "x"), refusal(), missing()).iter()]
    assert tags == same
    assert found[0].get("name") == visible(text or "f")
    titles = [one.get("value") for one in found[0].iter("property") if one.get("name") == "title"]
    assert titles == [visible(text)]


def test_rules_of_two_circuits_stand_in_one_property_each() -> None:
    pairs = {one.get("name"): one.get("value") for one in suite(by_two_codes()).iter("property")}
    assert (pairs["rules"], pairs["rules_from"]) == (IN_A_LINE, "call")
    assert str(pairs["rules_sha256"]).startswith(f"water: {profile('upc-2024').sha256}; heating: ")
