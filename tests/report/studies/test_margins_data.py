"""Margins as JSON."""

import json

import pytest

import plumbnet
from plumbnet.report.studies.margins_data import margins_fields, margins_json
from plumbnet.study.margins.layout_margins import margins_of
from plumbnet.study.remedies.remedy_search import remedies

REPORT = plumbnet.check("systems/bakery-tank-right.yaml")


def test_document_has_each_number_in_si_with_its_unit_and_its_turns() -> None:
    document = json.loads(margins_json(margins_of(REPORT)))
    assert (document["file"], document["rules"], document["heater"]) == (
        "systems/bakery-tank-right.yaml",
        "general",
        None,
    )
    assert {one["unit"] for one in document["numbers"]} == {"Pa", "K", "m3", "m"}
    charge = next(one for one in document["numbers"] if one["field"] == "precharge")
    assert charge["told"] == pytest.approx(344_738, abs=1)
    assert charge["below"]["heaters"] == [{"name": "heater", "before": "controlled", "after": "trapped"}]
    assert charge["below"]["turns_at"] < charge["below"]["holds_to"] < charge["told"] < charge["above"]["holds_to"]
    assert charge["within_accuracy"] == (charge["above"]["turns_at"] - charge["told"] <= charge["accuracy"])
    street = next(one for one in document["numbers"] if one["part"] == "street")
    assert street["above"] is None


def test_cures_have_their_numbers() -> None:
    report = plumbnet.check("systems/house-with-check.yaml")
    (cure,) = json.loads(json.dumps(margins_fields(margins_of(report, found=remedies(report)))))["cures"]
    assert cure["heater"] == "heater"
    assert {one["unit"] for one in cure["numbers"]} == {"Pa"}
