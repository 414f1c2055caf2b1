"""A sweep as JSON and as CSV."""

import csv
import json

from conftest import layout

import plumbnet
from plumbnet.report.studies.sweep_data import sweep_csv, sweep_json
from plumbnet.study.contingency.event_sweep import Sweep, sweep

RUNS = """street -> meter -> valve -> tee -> heater -> tap.hot
          tee -> tank"""


def swept(*, pairs: bool = False) -> Sweep:
    text = "title: A house\n" + layout(RUNS, heater="relief: {pressure: 150 psi}", meter="check: true")
    return sweep(plumbnet.check(plumbnet.read_bytes(text.encode(), file="house.yaml")), pairs=pairs)


def test_json_holds_each_event_with_its_change_and_what_comes_of_it() -> None:
    document = json.loads(sweep_json(swept()))
    assert (document["schema"], document["file"], document["title"]) == (1, "house.yaml", "A house")
    assert (document["rules"], document["pairs"]) == ("general", None)
    assert (document["events_tried"], document["events_without_effect"], len(document["events"])) == (9, 2, 7)
    assert document["events"][0] == {
        "event": "tank: waterlogged",
        "fail": "tank:waterlogged",
        "change": [{"fail": {"part": "tank", "how": "waterlogged"}}],
        "heaters": [{"name": "heater", "before": "controlled", "after": "trapped"}],
        "new_errors": [{"name": "tank-waterlogged", "part": "tank"}, {"name": "trapped-expansion", "part": "heater"}],
        "refused": None,
    }


def test_json_holds_pairs_where_they_were_looked_for() -> None:
    pairs = json.loads(sweep_json(swept(pairs=True), top=1))["pairs"]
    assert pairs["tried"] == pairs["possible"]
    assert [found["events"] for found in pairs["found"]] == [["heater/relief: plugged", "tank: charge lost"]]
    assert [change for found in pairs["found"] for change in found["change"]] == [
        {"fail": {"part": "heater/relief", "how": "plugged"}},
        {"set": {"part": "tank", "precharge": "0 psi"}},
    ]


def test_csv_has_a_row_for_each_heater_that_turns() -> None:
    text = sweep_csv(swept())
    assert text.count("\r\n") == text.count("\n") == 8
    rows = list(csv.reader(text.splitlines()))
    assert rows[0] == ["rank", "event", "heater", "before", "after", "new_errors", "refused"]
    assert rows[1][:5] == ["1", "tank: waterlogged", "heater", "controlled", "trapped"]
    assert rows[1][5].split("; ") == ["tank-waterlogged (tank)", "trapped-expansion (heater)"]
    assert rows[1][6] == ""
    assert rows[5] == ["5", "heater/relief: plugged", "", "", "", "relief-missing (heater)", ""]


def test_csv_holds_the_worst_only_where_so_asked_and_pairs_behind_them() -> None:
    rows = list(csv.reader(sweep_csv(swept(pairs=True), top=1).splitlines()))
    assert [row[1].split(", and ") for row in rows[1:]] == [
        ["tank: waterlogged"],
        ["heater/relief: plugged", "tank: charge lost"],
    ]
