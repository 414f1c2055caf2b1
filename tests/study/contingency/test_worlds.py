"""Answers of other worlds; tests/oracles/test_sweep.py holds them against analyses of the whole."""

import pytest
from conftest import system
from two_codes import by_two_codes

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.edits.edit_draft import ChangeError
from plumbnet.layout.model.change import Change
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.rules.rule_profile import profile
from plumbnet.study.contingency.contingencies import Contingency
from plumbnet.study.contingency.outcome import Error
from plumbnet.study.contingency.worlds import Worlds

RUNS = """street -> tee -> valve -> tee2 -> heater -> tap.hot
          tee2 -> tank
          tee -> valve2 -> tee3 -> heater2 -> tap2.hot
          tee -> tap3.cold
          tee -> tap4.cold
          tee -> tap5.cold"""


def worlds(rules: str = "general", **parts: str) -> Worlds:
    relief = "relief: {pressure: 150 psi, temperature: 210 degF}"
    return Worlds(plumbnet.check(system(RUNS, **{"heater": relief, "heater2": relief, **parts}), rules=rules))


def event(part: str, **change: object) -> Contingency:
    return Contingency(part, "", Change.model_validate(change))


SHUT = event("valve", close="valve")


def test_only_the_district_that_feels_an_event_is_analysed() -> None:
    of = worlds()
    assert of.after([SHUT]).verdicts == {"heater": Verdict.CONTROLLED, "heater2": Verdict.OPEN}
    assert 0 < of.analysed < len(of.report.system.parts)


def test_event_at_a_supply_needs_the_whole() -> None:
    of = worlds()
    climb = event("street", set={"part": "street", "pressure": "80 psi"})
    assert of.effect([climb]) is None
    assert of.after([climb]) == of.whole(with_changes(of.report.system, [climb.change]))


def test_rules_that_ask_for_what_is_withheld_get_the_whole() -> None:
    of = worlds("uk-2010")
    assert of.effect([SHUT]) is not None
    assert of.after([SHUT]) == of.whole(with_changes(of.report.system, [SHUT.change]))


def test_layout_of_which_nothing_can_be_computed_is_refused() -> None:
    high = event("heater", set={"part": "heater", "elevation": "400 ft"})
    found = worlds().after([high])
    assert (found.verdicts, found.errors) == ({}, frozenset())
    assert found.refused is not None
    assert found.refused.startswith("heater: its piping reaches higher")


def test_event_that_changes_no_fact_is_idle() -> None:
    of = worlds()
    crossed = of.single(event("tap2", fail="tap2"))
    assert crossed.is_idle
    assert crossed.answer == of.before
    assert not of.single(SHUT).is_idle


def test_event_that_changes_only_what_is_withheld_is_not_taken_for_idle() -> None:
    rules = profile("general")
    severe = rules.findings["pump-drives-nothing"].model_copy(update={"severity": "error"})
    graded = rules.model_copy(update={"findings": {**rules.findings, "pump-drives-nothing": severe}})
    runs = """street -> tee -> valve -> pump -> tap.cold
              tee -> heater -> tap2.hot
              tee -> tap3.cold
              tee -> tap4.cold"""
    report = plumbnet.check(
        system(runs, pump="running: false", heater="relief: {pressure: 150 psi, temperature: 210 degF}"), rules=graded
    )
    started = Worlds(report).single(event("pump", set={"part": "pump", "running": True}))
    assert {error.name for error in started.answer.errors} == {"pump-drives-nothing"}
    assert not started.is_idle


def test_what_the_file_accepts_is_no_error() -> None:
    of = worlds()
    assert {error.name for error in of.after([event("tank", fail="tank")]).errors} == {"tank-waterlogged"}
    text = (
        "accept: [{finding: tank-waterlogged, part: tank, reason: a test}]\n"
        "parts: {street: {kind: main, pressure: 60 psi}, tee: tee, heater: {kind: storage_heater, volume: 40, "
        "setpoint: 140, relief: {pressure: 150, temperature: 210 degF}}, "
        "tank: {kind: expansion_tank, volume: 5, precharge: 60}, tap: fixture}\n"
        "runs: [street -> tee -> heater -> tap.hot, tee -> tank]\nplumbnet: 1\n"
    )
    accepting = Worlds(plumbnet.check(plumbnet.read_bytes(text.encode())))
    assert not accepting.after([event("tank", fail="tank")]).errors


def test_events_that_cannot_both_happen_are_refused() -> None:
    with pytest.raises(ChangeError):
        worlds().after([event("tank", remove="tank"), event("tank", fail="tank")])


def errors_of(report: Report) -> set[Error]:
    return {Error(one.name, one.parts[0]) for one in report.findings if one.severity == "error"}


def test_where_circuits_have_rules_of_their_own_the_whole_is_analysed_and_each_error_is_that_of_its_circuit() -> None:
    report = by_two_codes()
    found = Worlds(report)
    assert found.before.errors == errors_of(report)
    opened = Contingency("meter", "", Change.model_validate({"set": {"part": "meter", "check": False}}))
    whole = plumbnet.check(with_changes(report.system, [opened.change]), rules=report.rules)
    assert found.effect([opened]) is None
    assert found.single(opened).answer.errors == errors_of(whole)
