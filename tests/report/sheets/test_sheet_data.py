"""Calculation sheets as JSON: SI, keys a promise."""

import json
from pathlib import Path

import pytest

import plumbnet
from plumbnet.analysis.sizing_sheet.sizing_sheet import sheets
from plumbnet.report.sheets.sheet_data import sheets_json

SYSTEMS = sorted((Path(__file__).parents[3] / "systems").glob("*.yaml"))
SHEET = [
    "file",
    "sha256",
    "title",
    "scenario",
    "rules",
    "rules_sha256",
    "heater",
    "kind",
    "line",
    "verdict",
    "method",
    "inputs",
    "heated",
    "sections",
    "tank",
    "at_hand",
    "assumptions",
    "cautions",
]


@pytest.mark.parametrize("path", SYSTEMS, ids=lambda path: path.stem)
def test_sheet_holds_what_was_computed(path: Path) -> None:
    made = plumbnet.check(plumbnet.read(path))
    found = list(sheets(made, list(made.heaters)))
    document = json.loads(sheets_json(found, "metric"))
    assert (document["schema"], document["units"]) == (1, "metric")
    assert [one["heater"] for one in document["sheets"]] == [heater.name for heater in made.heaters]
    for one, sheet in zip(document["sheets"], found, strict=True):
        assert list(one) == SHEET
        assert one["tank"]["tank_m3"] == sheet.outcome.tank_m3
        assert one["cautions"][-1].startswith("Local code and a licensed person decide")
        for section, steps in zip(one["sections"], sheet.sections, strict=True):
            assert [step["value"] for step in section["steps"]] == [step.value for step in steps.steps]
            for step in section["steps"]:
                assert list(step) == ["symbol", "name", "formula", "numbers", "value", "dimension", "source"]
                assert step["source"]


def test_refusal_stands_for_the_tank() -> None:
    path = next(path for path in SYSTEMS if path.stem == "main-above-limit-no-tank-can-help")
    made = plumbnet.check(plumbnet.read(path))
    (one,) = json.loads(sheets_json(sheets(made, list(made.heaters)), "us"))["sheets"]
    assert one["tank"]["tank_m3"] is None
    assert one["tank"]["refusal"].startswith("no tank can do this")
