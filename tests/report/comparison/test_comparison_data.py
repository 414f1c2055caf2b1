"""A layout and its revision as JSON."""

import json
from importlib.metadata import version
from typing import Any

import pytest
from conftest import PSI, layout

import plumbnet
from plumbnet.report.comparison.comparison_data import comparison_json
from plumbnet.study.compare.whole_comparison import comparison

RUNS = "street -> meter -> tee -> heater -> tap.hot\ntee -> tap.cold"
HEATER = "relief: {pressure: 150 psi, temperature: 210 degF}"
PLAIN = layout(RUNS, heater=HEATER)
CHECKED = layout(RUNS, heater=HEATER, meter="check: true")
TANKED = layout(f"{RUNS}\ntee -> tank", heater=HEATER, meter="check: true")


def document(before: str, after: str) -> dict[str, Any]:
    was, now = (
        plumbnet.check(plumbnet.read_bytes(text.encode(), file=file))
        for text, file in ((before, "old.yaml"), (after, "new.yaml"))
    )
    compared = comparison(was, now)
    read: dict[str, Any] = json.loads(comparison_json(compared))
    return read


def test_document_says_what_was_compared() -> None:
    found = document(PLAIN, CHECKED)
    assert (found["plumbnet"], found["schema"]) == (version("plumbnet"), 1)
    assert (found["before"]["file"], found["after"]["file"]) == ("old.yaml", "new.yaml")
    assert found["before"]["sha256"] != found["after"]["sha256"]
    assert found["before"]["rules_sha256"] == found["after"]["rules_sha256"]
    assert found["after"]["rules"] == "general"


def test_worse_heater_stands_with_verdicts_and_figures_before_and_after() -> None:
    found = document(PLAIN, CHECKED)
    assert (found["is_worse"], found["is_better"]) == (True, False)
    (heater,) = found["heaters"]
    assert heater["verdict"] == {"before": "open", "after": "trapped"}
    assert heater["stopped_by"] == {"before": [], "after": [["meter"]]}
    assert (heater["is_worse"], heater["is_better"], heater["differs"]) == (True, False, True)
    assert heater["static_pa"] == {"before": pytest.approx(60 * PSI), "after": pytest.approx(60 * PSI)}
    assert heater["settled_pa"]["after"] is None
    assert set(heater) >= {"limit_pa", "expansion_m3", "short_m3", "need_m3"}


def test_findings_are_new_gone_or_altered() -> None:
    found = document(PLAIN, CHECKED)["findings"]
    assert [one["name"] for one in found["new"]] == ["trapped-expansion"]
    assert (found["gone"], found["altered"], found["accepted"]) == ([], [], [])
    back = document(CHECKED, PLAIN)["findings"]
    assert [one["name"] for one in back["gone"]] == ["trapped-expansion"]
    (altered,) = document(CHECKED, CHECKED.replace("50 gal", "60 gal"))["findings"]["altered"]
    assert altered["before"]["text"] != altered["after"]["text"]


def test_changes_of_the_layout_are_listed() -> None:
    changes = document(CHECKED, TANKED)["changes"]
    assert changes["parts"]["added"] == [{"name": "tank", "kind": "expansion_tank"}]
    assert changes["pipes"]["added"] == [{"name": "tee -> tank"}]
    (meter,) = document(PLAIN, CHECKED)["changes"]["parts"]["altered"]
    assert meter == {"name": "meter", "fields": [{"field": "check", "before": "false", "after": "true"}]}


def test_heater_that_is_gone_has_no_verdict_after() -> None:
    without = layout("street -> meter -> tap.cold", meter="check: true")
    (heater,) = document(CHECKED, without)["heaters"]
    assert (heater["verdict"], heater["stopped_by"]["after"]) == ({"before": "trapped", "after": None}, None)
