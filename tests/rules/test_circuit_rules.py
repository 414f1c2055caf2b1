"""Each circuit under rules of its own: three buildings, and the same for one code as before there were two."""

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from conftest import PSI, system

import plumbnet
from plumbnet.analysis.report import Report, analyse
from plumbnet.layout.model.circuit import Circuit
from plumbnet.layout.model.system import System
from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.rules import answering
from plumbnet.rules.answering import answers_of, findings_of
from plumbnet.rules.circuit_rules import (
    GivenRules,
    Rules,
    RulesFrom,
    UnknownCircuit,
    circuit_named,
    completed,
    given_rules,
    ruled_by,
    rules_in_words,
)
from plumbnet.rules.facts.all_facts import Facts
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import Breach
from plumbnet.rules.requirement import Requirement
from plumbnet.rules.rule_profile import GENERAL, Profile, UnknownProfile, profile, profile_names, read_profile

IPC, UPC, BOILER = profile("ipc-2021"), profile("upc-2024"), profile("us-boiler")
BOTH = {"water": "upc-2024", "heating": "us-boiler"}

BOILER_AND_CYLINDER = """
street -> meter -> tee1 -> indirect -> tap.hot
tee1 -> tap.cold
tee1 -> cv -> prv -> tee2 -> boiler -> pump -> tee3 -> indirect.coil_in
indirect.coil_out -> tee4 -> tee2
tee3 -> emitter -> tee4
tee2 -> tank
"""
FIELDS = {
    "meter": "check: true",
    "cv": "kind: reduced_pressure_assembly",
    "prv": "set: 15 psi",
    "boiler": "volume: 12 gal, relief: {pressure: 30 psi, temperature: 230 degF}",
    "indirect": "relief: {pressure: 150 psi}",
    "tank": "volume: 2 gal, precharge: 12 psi",
}


def boiler_and_cylinder(**parts: str) -> System:
    """A meter with a check, a cylinder, and a boiler with a permanent fill that heats it and a radiator."""
    return system(BOILER_AND_CYLINDER, **{**FIELDS, **parts})


def said(report: Report) -> dict[str, str]:
    """The clause of each finding, by its name and the part that leads it."""
    return {f"{one.name} {one.parts[0]}": one.clause for one in report.findings}


def test_each_circuit_of_a_building_is_judged_by_rules_of_its_own() -> None:
    found = said(plumbnet.check(boiler_and_cylinder(), rules=BOTH))
    assert found["trapped-expansion indirect"].endswith(UPC.findings["trapped-expansion"].clause)
    assert found["tank-too-small boiler"] == BOILER.findings["tank-too-small"].clause
    # a boiler's relief valve may open at 230 degF, a reducer that fills it needs no tank of its own
    assert not any(name.startswith(("relief-opens-hot", "reducer-without-tank")) for name in found)
    by_one = said(plumbnet.check(boiler_and_cylinder(tank="volume: 20 gal, precharge: 15 psi"), rules="upc-2024"))
    assert "relief-opens-hot boiler/relief" in by_one


def test_limits_are_those_of_the_circuit_in_which_a_heater_stands() -> None:
    text = "distribution_limit: {value: 60 psi, clause: ours, verified: true}\n"
    text += "relief_share: {value: 50 %, clause: ours, verified: true}\n"
    ours = read_profile(f"profile: ours\ntitle: Ours\nextends: general\n{text}".encode(), file="ours.yaml")
    low = boiler_and_cylinder(street="pressure: 40 psi")
    by_ours, by_general = plumbnet.check(low, rules={"water": ours}), plumbnet.check(low, rules={"heating": ours})
    assert limits_psi(by_ours) == {"boiler": 27.0, "indirect": 60.0}
    assert limits_psi(by_general) == {"boiler": 15.0, "indirect": 80.0}


def limits_psi(report: Report) -> dict[str, float]:
    return {heater.name: round(heater.limit_pa / PSI, 1) for heater in report.heaters}


def test_place_where_nothing_sets_a_limit_has_that_of_its_own_circuit() -> None:
    # a boiler with neither a relief valve nor a rating
    bare = system("street -> cv -> prv -> tee -> boiler -> pump -> emitter -> tee", prv="set: 15 psi")
    assert limits_psi(plumbnet.check(bare, rules={"water": "general", "heating": "us-boiler"})) == {"boiler": 160.0}
    assert limits_psi(plumbnet.check(bare, rules={"water": "us-boiler", "heating": "general"})) == {"boiler": 80.0}


def test_tank_is_sized_by_the_method_of_its_circuit() -> None:
    held = boiler_and_cylinder(meter="check: false", tank="volume: 4 gal, precharge: 15 psi")
    report = plumbnet.check(held, rules=BOTH)
    assert [(one.verdict, one.asked_method) for one in report.heaters] == [
        (Verdict.OPEN, ""),
        (Verdict.CONTROLLED, "ashrae-diaphragm"),
    ]
    sheets = {heater: plumbnet.size(report, heater) for heater in ("boiler", "indirect")}
    assert {name: (sheet.rules, sheet.method.name) for name, sheet in sheets.items()} == {
        "boiler": ("us-boiler", "ashrae-diaphragm"),
        "indirect": ("upc-2024", "membrane"),
    }
    origins = [item.origin for section in sheets["boiler"].sections for item in section.items]
    assert f"profile us-boiler: {BOILER.relief_share.clause}" in origins


def test_charge_and_its_tolerance_are_those_of_the_circuit_in_which_a_tank_hangs() -> None:
    strict = "charge_tolerance: {value: 0.1 psi, clause: ours, verified: true}\n"
    ours = read_profile(f"profile: ours\ntitle: Ours\nextends: general\n{strict}".encode(), file="ours.yaml")
    near = boiler_and_cylinder(tank="volume: 8 gal, precharge: 14 psi")
    assert "tank-charge-differs tank" in said(plumbnet.check(near, rules={"heating": ours}))
    assert "tank-charge-differs tank" not in said(plumbnet.check(near, rules={"water": ours}))


def test_solar_circuit_is_judged_as_a_heating_circuit() -> None:
    # a collector with glycol warms the coil of a preheater; only the heating rules forbid a valve before its tank
    runs = """
    street -> tee1 -> indirect -> heater -> tap.hot
    tee1 -> loop -> tee2 -> solar -> pump -> indirect.coil_in
    indirect.coil_out -> tee2
    tee2 -> valve -> tank
    solar.relief -> relief
    """
    solar = "kind: solar_collector, volume: 1 gal, setpoint: 200 degF, antifreeze: {glycol: propylene, share: 30 %}"
    tank = "volume: 8 gal, precharge: 12 psi"
    drawn = system(runs, solar=solar, tank=tank, relief="pressure: 75 psi", heater="relief: {pressure: 150 psi}")
    wanted = BOILER.valve_before_tank.clause
    assert said(plumbnet.check(drawn, rules=BOTH)).get("valve-before-tank valve") == wanted
    assert "valve-before-tank valve" not in said(plumbnet.check(drawn, rules="upc-2024"))


def test_open_loop_that_taps_draw_from_is_all_judged_as_drinking_water() -> None:
    runs = "street -> cv -> tee1 -> heater -> tee2 -> tap.hot\ntee2 -> pump -> emitter -> tee1"
    drawn = system(runs, heater="relief: {pressure: 150 psi}")
    assert plumbnet.check(drawn, rules=BOTH).findings == plumbnet.check(drawn, rules="upc-2024").findings
    assert {profile_of.profile for profile_of in map(plumbnet.check(drawn, rules=BOTH).profile_of, drawn.parts)} == {
        "upc-2024"
    }


def test_backflow_preventer_of_a_fill_is_a_matter_of_the_plumbing_code_and_a_filling_loop_too() -> None:
    report = plumbnet.check(boiler_and_cylinder(), rules=BOTH)
    assert [report.profile_of(name).profile for name in ("cv", "prv", "boiler/relief", "indirect/relief")] == [
        "upc-2024",
        "us-boiler",
        "us-boiler",
        "upc-2024",
    ]
    runs = BOILER_AND_CYLINDER.replace("-> cv -> prv ->", "-> loop ->")
    for state in ("open", "shut"):
        fields = {name: value for name, value in FIELDS.items() if name not in {"cv", "prv"}}
        drawn = system(runs, **fields, loop=f"fill: 15 psi, state: {state}")
        assert plumbnet.check(drawn, rules=BOTH).profile_of("loop") is UPC


@pytest.mark.parametrize("name", profile_names())
def test_one_profile_for_both_is_one_profile(name: str) -> None:
    layout = boiler_and_cylinder()
    one, two = (
        plumbnet.check(layout, rules=name),
        plumbnet.check(layout, rules=dict.fromkeys(("water", "heating"), name)),
    )
    assert (one.rules, one.facts, one.findings) == (two.rules, two.facts, two.findings)
    assert two.rules.is_one
    assert two.profile.profile == two.rules.named == name


def test_where_one_profile_judges_all_circuits_are_searched_for_fills_and_places_of_tanks_alone(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr("plumbnet.analysis.report.fills", lambda _network: ())
    monkeypatch.setattr("plumbnet.network.piping.circuits.Circuits.of", None)
    monkeypatch.setattr("plumbnet.network.piping.circuits.Circuits.at", None)
    layout = system("street -> cv -> tee -> heater -> tap.hot")  # no loop, so that nobody asks for a pump's suction
    assert plumbnet.check(layout).findings
    assert plumbnet.remedies(plumbnet.check(layout))
    with pytest.raises(TypeError):
        plumbnet.check(layout, rules=BOTH)


def test_finding_is_kept_by_the_rules_of_the_part_that_leads_it(monkeypatch: pytest.MonkeyPatch) -> None:
    asked: list[str] = []

    def found(_facts: Facts, judging: Profile) -> Iterator[Breach]:
        """A thing."""
        asked.append(judging.profile)
        yield from (Breach((part, "street"), "It is so.", "Do.") for part in ("boiler", "indirect"))

    monkeypatch.setattr(
        answering, "REQUIREMENTS", {"tank-cut-off": Requirement("tank-cut-off", Severity.NOTE, found, "", "")}
    )
    facts = plumbnet.check(boiler_and_cylinder()).facts
    asked.clear()
    by_both = findings_of(facts, Rules(UPC, BOILER))
    assert asked == ["upc-2024", "us-boiler"]
    assert [(one.parts[0], one.clause) for one in by_both] == [
        ("indirect", UPC.findings["tank-cut-off"].clause),
        ("boiler", BOILER.findings["tank-cut-off"].clause),
    ]
    asked.clear()
    assert [one.parts[0] for one in findings_of(facts, UPC)] == ["indirect", "boiler"]
    assert asked == ["upc-2024"]


def test_every_requirement_answers_for_a_subject_under_the_rules_of_its_circuit() -> None:
    report = plumbnet.check(boiler_and_cylinder(), rules=BOTH)
    answers = list(answers_of(report.facts, report.rules))
    relieved = {one.parts[0]: one.ruling.clause for one in answers if one.rule.name == "relief-missing"}
    assert relieved == {
        "boiler": BOILER.findings["relief-missing"].clause,
        "indirect": UPC.findings["relief-missing"].clause,
    }
    assert {one.finding for one in answers if one.finding} == set(report.findings)
    # nothing is filled by a loop here: that is said once, and not for each circuit
    assert [one.text for one in answers if one.rule.name == "filling-loop-open"] == ["the layout has no filling loops"]


def test_facts_that_nobody_looked_at_for_circuits_are_of_drinking_water() -> None:
    facts = replace(plumbnet.check(boiler_and_cylinder()).facts)
    assert [facts.circuit_of(name) for name in ("boiler", "indirect", "nobody")] == [
        Circuit.HEATING,
        Circuit.WATER,
        Circuit.WATER,
    ]


def test_rules_say_once_what_is_the_same_for_every_circuit() -> None:
    one, two = ruled_by(IPC), Rules(IPC, BOILER, RulesFrom.FILE, RulesFrom.DEFAULT)
    assert (one.named, one.sha256, one.named_by, one.in_full) == ("ipc-2021", IPC.sha256, "call", IPC.in_full)
    assert two.named == {"water": "ipc-2021", "heating": "us-boiler"}
    assert two.sha256 == {"water": IPC.sha256, "heating": BOILER.sha256}
    assert two.named_by == {"water": "file", "heating": "default"}
    assert two.in_full == f"water: {IPC.in_full}; heating: {BOILER.in_full}"
    assert two.title == f"water: {IPC.title}; heating: {BOILER.title}"
    assert (two.profiles, one.profiles) == ((IPC, BOILER), (IPC,))
    assert ruled_by(two) is two


def test_one_profile_is_had_in_short_and_several_are_not() -> None:
    assert plumbnet.check(boiler_and_cylinder(), rules="upc-2024").profile is UPC
    with pytest.raises(ValueError, match="circuits are judged by rules of their own; ask for the profile of a part"):
        _ = plumbnet.check(boiler_and_cylinder(), rules=BOTH).profile


def test_rules_are_taken_from_the_caller_then_from_the_file_then_from_general_practice() -> None:
    layout = replace(boiler_and_cylinder(), rules={Circuit.WATER: "ipc-2021"})
    chosen = {
        "nothing given": plumbnet.check(layout),
        "one for all": plumbnet.check(layout, rules="npc-2020"),
        "one for a circuit": plumbnet.check(layout, rules={"heating": BOILER}),
    }
    assert {case: (report.rules.named, report.rules.named_by) for case, report in chosen.items()} == {
        "nothing given": ({"water": "ipc-2021", "heating": "general"}, {"water": "file", "heating": "default"}),
        "one for all": ("npc-2020", "call"),
        "one for a circuit": ({"water": "ipc-2021", "heating": "us-boiler"}, {"water": "file", "heating": "call"}),
    }
    assert plumbnet.check(replace(layout, rules=None)).rules.named_by == "default"
    assert plumbnet.check(replace(layout, rules="ipc-2021")).rules.named_by == "file"


def test_rules_come_as_profiles_names_paths_or_what_was_given_before(tmp_path: Path) -> None:
    path = tmp_path / "ours.yaml"
    path.write_text("profile: ours\ntitle: Ours\nextends: ipc-2021\n", encoding="utf-8")
    for one in (path, str(path)):
        assert plumbnet.check(boiler_and_cylinder(), rules=one).rules.named == "ours"
        assert plumbnet.check(boiler_and_cylinder(), rules={"water": one, "heating": BOILER}).rules.named == {
            "water": "ours",
            "heating": "us-boiler",
        }
    given = GivenRules({Circuit.HEATING: BOILER}, RulesFrom.COMMAND_LINE)
    assert given_rules(given) is given
    assert given.whole is None
    assert given.told(lambda each: each.profile) == {"heating": "us-boiler"}
    assert given_rules("ipc-2021").told(lambda each: each.profile) == "ipc-2021"
    assert completed(given, {}).named_by == {"water": "default", "heating": "command line"}
    assert completed(given, {}).water is profile(GENERAL)
    rules = Rules(UPC, BOILER)
    assert plumbnet.check(boiler_and_cylinder(), rules=rules).rules is rules
    assert analyse(boiler_and_cylinder(), UPC).rules == ruled_by(UPC)


def test_unknown_circuit_and_unknown_profile_of_a_caller_are_told() -> None:
    with pytest.raises(UnknownCircuit, match=r'^no circuit is called "watr": did you mean "water"\?$'):
        plumbnet.check(boiler_and_cylinder(), rules={"watr": "ipc-2021"})
    with pytest.raises(UnknownCircuit, match=r'^no circuit is called "solar"; there is water and heating$'):
        circuit_named("solar")
    with pytest.raises(UnknownProfile, match="genral"):
        plumbnet.check(boiler_and_cylinder(), rules={"water": "genral"})


def test_unknown_profiles_of_a_file_are_told_together_each_at_its_place() -> None:
    parts = "parts: {street: {kind: main, pressure: 4 bar}, tap: fixture}\nruns: [street -> tap.cold]\n"
    with pytest.raises(LayoutError) as caught:
        plumbnet.check(f"plumbnet: 1\nrules: {{water: genral, heating: us-boilr}}\n{parts}".encode())
    assert str(caught.value) == (
        'layout:2:16: no rule profile is called "genral": did you mean "general"?\n'
        "  2 | rules: {water: genral, heating: us-boilr}\n"
        "    |                ^~~~~~\n"
        'layout:2:33: no rule profile is called "us-boilr": did you mean "us-boiler"?\n'
        "  2 | rules: {water: genral, heating: us-boilr}\n"
        "    |                                 ^~~~~~~~"
    )


def test_words_of_several_circuits_stand_in_one_line() -> None:
    assert rules_in_words({"water": "a", "heating": "b"}) == "water: a; heating: b"
