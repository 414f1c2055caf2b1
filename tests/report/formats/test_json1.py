"""The JSON report: keys and types are a promise."""

import json
import math
from dataclasses import replace
from importlib.metadata import version
from pathlib import Path
from typing import Any

import pytest
from conftest import PSI, system
from forms import accepting, as_json, fine, missing, refusal, trapped, written
from two_codes import CODES, by_two_codes

import plumbnet
from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.model.acceptance import Acceptance
from plumbnet.layout.model.change import Change
from plumbnet.report.formats import json1
from plumbnet.report.formats.json1 import JsonWriter
from plumbnet.rules.accepting.silencing import Word
from plumbnet.rules.acceptors import Acceptor
from plumbnet.rules.rule_profile import profile
from plumbnet.study.remedies.remedy_search import remedies

SYSTEMS = sorted((Path(__file__).parents[3] / "systems").glob("*.yaml"))
NUMBER, OPTIONAL = (int, float), (int, float, type(None))
REPORT = {"file": str, "sha256": str, "title": str, "rules": str, "scenario": (str, type(None)), "heaters": list}
HEATER = {
    "name": str,
    "kind": str,
    "verdict": str,
    "static_pa": OPTIONAL,
    "limit_pa": NUMBER,
    "cold_k": OPTIONAL,
    "hot_k": NUMBER,
    "heated_volume_m3": NUMBER,
    "expansion_m3": NUMBER,
    "ladder": list,
    "stopped_by": list,
    "closes_if_shut": list,
    "loops": list,
    "settled_pa": OPTIONAL,
    "short_m3": NUMBER,
    "need": (dict, type(None)),
    "locked": (dict, type(None)),
    "remedies": list,
}
RUNG = {"outlet": str, "kind": str, "opens_pa": NUMBER, "way": list}
NEED = {"tank_m3": OPTIONAL, "nominal_m3": OPTIONAL, "precharge_pa": NUMBER, "at": str}
FINDING = {"name": str, "severity": str, "parts": list, "line": int, "clause": str, "text": str}
VERDICTS = {"open", "controlled", "trapped", "sealed", "on-demand"}


def holds(value: dict[str, Any], keys: dict[str, Any]) -> None:
    """That every promised key is there with a value of its type; more may be."""
    for key, kind in keys.items():
        assert key in value, key
        assert isinstance(value[key], kind), key
        assert not isinstance(value[key], bool), key


def of(text: str) -> dict[str, Any]:
    def refuse(constant: str) -> None:
        raise AssertionError(f"{constant} is no JSON")

    read: dict[str, Any] = json.loads(text, parse_constant=refuse)
    return read


def report_on(runs: str, **parts: str) -> dict[str, Any]:
    report: dict[str, Any] = of(as_json(plumbnet.check(system(runs, **parts))))["reports"][0]
    return report


def test_supplies_are_told_at_their_highest_usual_and_least() -> None:
    report = report_on(
        "street -> cv -> tee -> heater -> tap.hot\nwell -> cv2 -> tee",
        street="pressure: 3 bar, highest: 4 bar, lowest: 2 bar",
        well="cut_in: 1 bar, cut_out: 2 bar",
    )
    pressures = [(one["name"], one["pressure_pa"], one["usual_pa"], one["least_pa"]) for one in report["supplies"]]
    assert pressures == [("street", 4e5, 3e5, 2e5), ("well", 2e5, 2e5, 1e5)]
    (heater,) = report["heaters"]
    assert (heater["static_pa"], heater["usual_pa"]) == (4e5, 3e5)


@pytest.mark.parametrize("path", SYSTEMS, ids=lambda path: path.stem)
def test_every_showcase_layout_has_the_promised_keys(path: Path) -> None:
    document = of(as_json(plumbnet.check(plumbnet.read(path))))
    assert document.keys() >= {"plumbnet", "schema", "reports", "errors"}
    (report,) = document["reports"]
    holds(report, {**REPORT, "findings": list})
    for heater in report["heaters"]:
        holds(heater, HEATER)
        assert heater["verdict"] in VERDICTS
        for rung in heater["ladder"]:
            holds(rung, RUNG)
            assert rung["way"][0] == heater["name"]
            assert rung["way"][-1] == rung["outlet"]
        for names in (*heater["stopped_by"], *heater["closes_if_shut"], *heater["loops"]):
            assert names
            assert all(isinstance(name, str) for name in names)
        if heater["need"] is not None:
            holds(heater["need"], NEED)
    for finding in report["findings"]:
        holds(finding, FINDING)
        assert finding["severity"] in {"error", "warning", "note"}


def test_document_says_which_program_and_which_schema_it_is() -> None:
    document = of(as_json())
    assert document == {"plumbnet": version("plumbnet"), "schema": 1, "reports": [], "errors": [], "notes": []}


def test_pressures_are_gauge_at_the_height_of_the_heater() -> None:
    heater = "kind: storage_heater, volume: 50 gal, setpoint: 140 degF, elevation: 10 m, relief: {pressure: 150 psi}"
    (answer,) = report_on("street -> cv -> heater -> tap.hot", heater=heater, tap="elevation: 10 m")["heaters"]
    assert answer["static_pa"] == pytest.approx(60 * PSI - 98_066.5)
    assert answer["limit_pa"] == pytest.approx(80 * PSI)
    (rung,) = answer["ladder"]
    assert (rung["outlet"], rung["kind"], rung["way"]) == ("heater/relief", "relief_valve", ["heater", "heater/relief"])
    assert rung["opens_pa"] == pytest.approx(150 * PSI)


def test_check_valve_is_named_as_what_stops_the_water() -> None:
    (answer,) = report_on("street -> cv -> heater -> tap.hot")["heaters"]
    assert answer["verdict"] == "sealed"
    assert answer["stopped_by"] == [["cv"]]
    assert answer["hot_k"] == pytest.approx(333.15)
    assert answer["cold_k"] == pytest.approx(283.15)


def test_valve_that_would_close_an_open_heater_is_named() -> None:
    (answer,) = report_on("street -> valve -> heater -> tap.hot")["heaters"]
    assert (answer["verdict"], answer["closes_if_shut"], answer["stopped_by"]) == ("open", [["valve"]], [])


def test_what_is_not_known_is_null() -> None:
    (answer,) = report_on("tee -> heater -> tap.hot")["heaters"]
    assert answer["static_pa"] is None
    assert answer["cold_k"] is None


@pytest.mark.parametrize(
    ("runs", "verdict"),
    [
        ("street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief", "trapped"),
        ("street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief\ntee -> tank", "trapped"),
        ("street -> cv -> tee -> heater -> tap.hot", "sealed"),
        ("tee -> heater -> tap.hot\nstreet -> tap2.cold", "sealed"),
    ],
)
def test_pressure_that_nothing_holds_is_null(runs: str, verdict: str) -> None:
    """A tank too small delays the relief valve; it lifts all the same."""
    (answer,) = report_on(runs, tank="volume: 0.9 gal")["heaters"]
    assert (answer["verdict"], answer["settled_pa"]) == (verdict, None)


@pytest.mark.parametrize(("more", "settled"), [("tee -> tank", 75.0688), ("tee -> spill", 70.0), ("tee -> vent", 60.0)])
def test_pressure_that_is_held_is_a_number(more: str, settled: float) -> None:
    parts = {"tank": "volume: 5 gal", "spill": "pressure: 70 psi"}
    runs = f"street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief\n{more}"
    used = {name: fields for name, fields in parts.items() if name in runs}
    (answer,) = report_on(runs, **used)["heaters"]
    assert answer["settled_pa"] == pytest.approx(settled * PSI, abs=10.0)


def test_tank_that_no_size_can_be_named_for_is_null() -> None:
    runs = "street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief"
    (answer,) = report_on(runs, street="pressure: 80 psi")["heaters"]
    assert (answer["need"]["tank_m3"], answer["need"]["nominal_m3"]) == (None, None)
    assert (answer["need"]["at"], answer["need"]["serves"]) == ("tee", ["heater"])


def test_layout_without_a_heater_has_an_empty_list() -> None:
    assert report_on("street -> tap.hot")["heaters"] == []


def test_defaults_the_answer_rests_on_are_listed() -> None:
    report = report_on("street -> meter -> heater -> tap.hot")
    assert {"text": "a meter has no check valve", "parts": ["meter"]} in report["assumed"]


def test_what_the_calculation_takes_for_granted_is_listed_beside_them() -> None:
    report = report_on("street -> tee -> heater -> tap.hot\ntee -> tank")
    words = "the gas in a tank stays at one temperature; it is warmed slowly"
    assert {"text": words, "parts": ["tank"]} in report["assumed"]


def test_changed_system_keeps_its_file_and_sum() -> None:
    before = system("street -> valve -> heater -> tap.hot")
    after = with_changes(before, [Change(close="valve")])
    (report,) = of(as_json(plumbnet.check(after)))["reports"]
    assert (report["file"], report["sha256"]) == ("drawn.yaml", before.record.sha256)
    assert len(report["sha256"]) == 64


def test_faults_of_a_file_are_rows_with_their_place() -> None:
    read = of(written(JsonWriter(), refusal("f.yaml", "it is wrong"), trapped(), missing("none.yaml")))
    assert read["errors"] == [
        {"file": "f.yaml", "line": 2, "column": 3, "text": "it is wrong"},
        {"file": "none.yaml", "line": 0, "column": 0, "text": "no such file or directory"},
    ]


def test_document_written_file_by_file_is_that_of_the_whole() -> None:
    reports = [trapped(), fine(), accepting(trapped(), "So be it.")]
    fields = [json1.report_fields(one, remedies(one)) for one in reports]
    assert written(JsonWriter(), *reports) == json1.in_order({"reports": fields, "errors": [], "notes": []}) + "\n"
    assert written(JsonWriter()) == as_json() + "\n"


@pytest.mark.parametrize("name", ["house-with-check", "school-shared-tanks", "tankless-alone"])
def test_report_as_fields_is_what_the_command_writes_for_its_file(name: str) -> None:
    report = plumbnet.check(SYSTEMS[0].parent / f"{name}.yaml")
    (written_by_check,) = of(written(JsonWriter(), report))["reports"]
    assert report.to_dict() == written_by_check
    bare = report.to_dict(remedies=False)
    assert (bare["remedies_searched"], written_by_check["remedies_searched"]) == (False, True)
    assert bare == of(json1.in_order({"reports": [json1.report_fields(report)]}))["reports"][0]


def test_fields_of_a_report_can_be_changed_without_changing_it() -> None:
    report = trapped()
    report.to_dict()["heaters"].clear()  # type: ignore[attr-defined]  # a list
    assert report.to_dict()["heaters"] != []


def test_accepted_finding_stands_with_its_reason_and_not_among_the_findings() -> None:
    (report,) = of(as_json(accepting(trapped(), "Letter of the authority.", line=9)))["reports"]
    assert report["findings"] == []
    (accepted,) = report["accepted"]
    holds(accepted["finding"], FINDING)
    assert (accepted["reason"], accepted["line"]) == ("Letter of the authority.", 9)
    assert report["accepted_but_not_found"] == []


def test_acceptance_of_what_is_not_found_is_told() -> None:
    idle = Acceptance(finding="trapped-expansion", part="heater", reason="So be it.")
    noted = replace(fine(), idle=(Word(idle, 9, Acceptor.APPLICANT),))
    (report,) = of(as_json(noted))["reports"]
    assert report["accepted_but_not_found"] == [
        {
            "finding": "trapped-expansion",
            "part": "heater",
            "parts": ["heater"],
            "line": 9,
            "by": "applicant",
            "file": None,
        }
    ]


def test_profile_is_named_with_its_sum() -> None:
    report = trapped()
    (found,) = of(as_json(report))["reports"]
    assert (found["rules"], found["rules_sha256"]) == ("general", report.profile.sha256)
    assert len(found["rules_sha256"]) == 64


def test_document_is_plain_ascii_whatever_the_title() -> None:
    top = 'plumbnet: 1\ntitle: "Bäckerei \\e[2J\\u202e"\n'
    named = plumbnet.read_bytes(f"{top}parts: {{m: {{kind: main, pressure: 60}}, t: tee}}\nruns: [m -> t]".encode())
    text = as_json(plumbnet.check(named))
    assert text.isascii()
    assert "\x1b" not in text
    assert of(text)["reports"][0]["title"] == "Bäckerei \x1b[2J\u202e"


def test_number_that_is_none_cannot_slip_in() -> None:
    with pytest.raises(ValueError, match="not JSON compliant"):
        json1.in_order({"line": math.nan})


def test_heater_left_as_it_is_has_pairs_from_rigid_walls_to_typical_ones() -> None:
    relieved = {"heater": "relief: {pressure: 150 psi}"}
    (heater,) = of(as_json(plumbnet.check(system("street -> cv -> heater -> tap.hot", **relieved))))["reports"][0][
        "heaters"
    ]
    locked = heater["locked"]
    assert locked["outlet"] == "heater/relief"
    assert locked["opens_pa"] == pytest.approx(150.0 * PSI)
    assert locked["rise_k"][0] < locked["rise_k"][1] < 15.0
    assert locked["firing_s"][0] < locked["firing_s"][1] < 1000.0
    assert locked["discharged_m3"][0] > locked["discharged_m3"][1] > 0.002


def test_what_typical_walls_take_without_end_is_null() -> None:
    warm = {"heater": "relief: {pressure: 150 psi}, setpoint: 60 degF"}
    report = plumbnet.check(system("street -> cv -> heater -> tap.hot", **warm))
    locked = of(json1.in_order({"reports": [json1.report_fields(report)]}))["reports"][0]["heaters"][0]["locked"]
    assert locked["rise_k"][1] is None
    assert locked["firing_s"][1] is None


def test_rules_are_told_by_circuit_with_the_parts_of_each_where_there_are_two() -> None:
    (one,), (two,) = of(as_json(trapped()))["reports"], of(as_json(by_two_codes()))["reports"]
    assert (one["rules_from"], "circuits" in one) == ("default", False)
    assert (two["rules"], two["rules_from"]) == (CODES, "call")
    assert two["rules_sha256"] == {circuit: profile(name).sha256 for circuit, name in CODES.items()}
    assert list(two["circuits"]) == ["water", "heating"]
    assert two["circuits"]["heating"] == [
        "prv", "tee2", "boiler", "boiler/relief", "pump", "tee3", "tee4", "emitter", "tank",
    ]  # fmt: skip
    assert {"street", "cv", "indirect", "indirect/relief", "tap"} <= set(two["circuits"]["water"])
