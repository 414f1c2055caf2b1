"""What-ifs as JSON."""

import json

from conftest import layout
from forms import as_json

import plumbnet
from plumbnet.layout.model.change import Change
from plumbnet.report.studies.whatif_data import whatifs_json
from plumbnet.study.whatif.what_if import whatif

RUNS = """street -> valve -> tee -> heater -> tap.hot
          tee -> tank"""
SCENARIOS = "scenarios: {shut: {note: A repair., change: [{close: valve}, {fail: tank}]}}\n"


def test_reports_are_those_of_the_json_report_and_what_differs_is_named() -> None:
    text = layout(RUNS, heater="relief: {pressure: 150 psi}") + SCENARIOS
    before = plumbnet.check(plumbnet.read_bytes(text.encode(), file="house.yaml"))
    found = [whatif(before, scenario="shut"), whatif(before, [Change(draw="tap")])]
    document = json.loads(whatifs_json(found))
    assert document["schema"] == 1
    assert document["before"] == json.loads(as_json(before))["reports"][0]
    shut, drawn = document["whatifs"]
    assert shut.pop("after") == json.loads(as_json(found[0].after))["reports"][0]
    assert shut == {
        "scenario": "shut",
        "note": "A repair.",
        "change": [{"close": "valve"}, {"fail": {"part": "tank"}}],
        "is_worse": True,
        "is_better": False,
        "worse": ["heater"],
        "better": [],
        "different": ["heater"],
        "new_findings": [
            {"name": "trapped-expansion", "severity": "error", "parts": ["heater", "valve"]},
            {"name": "tank-waterlogged", "severity": "error", "parts": ["tank"]},
        ],
        "gone_findings": [],
    }
    assert drawn["scenario"] is None
    assert drawn["after"]["scenario"] is None
