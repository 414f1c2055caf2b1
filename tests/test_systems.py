"""The showcase layouts in systems/: every verdict, what stops it, what opens first, every finding, every scenario."""

from functools import cache
from pathlib import Path

import pytest
from covering import findings_with_own_tests, kinds_with_own_tests
from every_command import app
from showcase import SHOWCASE, Answer, Expected
from shown import as_kept
from typer.testing import CliRunner

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.analysis.water_walk.walk_search import water_walk
from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.model.part import KINDS
from plumbnet.layout.model.system import System
from plumbnet.report.trace.trace_report import trace_text
from plumbnet.rules.facts.heater_answer import HeaterFacts
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.rules.requirement import REQUIREMENTS

ROOT = Path(__file__).parents[1]
SYSTEMS = ROOT / "systems"
PASCAL_IN = {"us": 6894.757293168361, "metric": 1000.0}
"""Of the unit in which each system of units states a pressure: psi, kPa."""
SMALLEST_ON_A_GAUGE = {"us": 0.01, "metric": 0.1}
"""The opening pressures are written down to these, in psi and kPa."""


@cache
def layout(name: str) -> System:
    """The layout as it is read from the root of the repository."""
    data = (SYSTEMS / f"{name}.yaml").read_bytes()
    return plumbnet.read_bytes(data, file=f"systems/{name}.yaml")


@cache
def report(name: str, scenario: str | None = None) -> Report:
    system = layout(name)
    if scenario is not None:
        system = with_changes(system, system.scenarios[scenario].change)
    return plumbnet.check(system)


HEATERS = [(name, heater) for name, expected in SHOWCASE.items() for heater in expected.heaters]
SCENARIOS = [(name, scenario) for name, expected in SHOWCASE.items() for scenario in expected.scenarios]
CHANGED = [
    (name, scenario, heater)
    for name, expected in SHOWCASE.items()
    for scenario, heaters in expected.scenarios.items()
    for heater in heaters
]


def heater_of(made: Report, heater: str) -> HeaterFacts:
    return next(one for one in made.heaters if one.name == heater)


def assert_answer(made: Report, heater: str, answer: Answer) -> None:
    facts = heater_of(made, heater)
    units = made.system.units
    assert facts.verdict.value == answer.verdict
    assert (facts.stopped_by.sets or ((),))[0] == answer.stopped_by
    if answer.opens_first is None:
        assert facts.ladder == ()
        return
    outlet, opens = answer.opens_first
    assert facts.ladder[0].outlet == outlet
    assert facts.ladder[0].opens_pa / PASCAL_IN[units] == pytest.approx(opens, abs=SMALLEST_ON_A_GAUGE[units])


def test_every_layout_stands_in_the_table() -> None:
    assert sorted(path.stem for path in SYSTEMS.glob("*.yaml")) == sorted(SHOWCASE)


@pytest.mark.parametrize(("name", "heater"), HEATERS)
def test_heater_is_answered_as_reasoned(name: str, heater: str) -> None:
    assert_answer(report(name), heater, SHOWCASE[name].heaters[heater])


@pytest.mark.parametrize("name", SHOWCASE)
def test_no_heater_is_left_out_of_the_table(name: str) -> None:
    assert [heater.name for heater in report(name).heaters] == list(_in_file_order(name, SHOWCASE[name]))


def _in_file_order(name: str, expected: Expected) -> list[str]:
    return sorted(expected.heaters, key=list(layout(name).parts).index)


@pytest.mark.parametrize("name", SHOWCASE)
def test_findings_are_exactly_those_reasoned(name: str) -> None:
    assert tuple(sorted(one.name for one in report(name).findings)) == SHOWCASE[name].findings


@pytest.mark.parametrize("name", SHOWCASE)
def test_every_scenario_stands_in_the_table(name: str) -> None:
    written = list(layout(name).scenarios)
    assert written == list(SHOWCASE[name].scenarios)
    assert sorted(written) == sorted(SHOWCASE[name].scenario_findings)


@pytest.mark.parametrize(("name", "scenario", "heater"), CHANGED)
def test_scenario_changes_the_answer_as_reasoned(name: str, scenario: str, heater: str) -> None:
    assert_answer(report(name, scenario), heater, SHOWCASE[name].scenarios[scenario][heater])


@pytest.mark.parametrize(("name", "scenario"), SCENARIOS)
def test_scenario_leaves_no_heater_out(name: str, scenario: str) -> None:
    answered = {heater.name for heater in report(name, scenario).heaters}
    assert answered == set(SHOWCASE[name].scenarios[scenario])


@pytest.mark.parametrize(("name", "scenario"), SCENARIOS)
def test_scenario_has_exactly_the_findings_reasoned(name: str, scenario: str) -> None:
    found = tuple(sorted(one.name for one in report(name, scenario).findings))
    assert found == SHOWCASE[name].scenario_findings[scenario]


@pytest.mark.parametrize("name", SHOWCASE)
def test_text_report_is_the_one_on_file(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """After a change of wording that is meant, `python tests/golden.py` writes it anew."""
    monkeypatch.chdir(ROOT)
    told = CliRunner().invoke(app, ["check", f"systems/{name}.yaml"])
    assert as_kept(told.stdout).encode() == (SYSTEMS / f"{name}.out").read_bytes()
    assert told.exit_code == (0 if report(name).is_fine else 1)


def test_no_report_on_file_is_left_over() -> None:
    assert sorted(path.stem for path in SYSTEMS.glob("*.out")) == sorted(SHOWCASE)


@pytest.mark.parametrize(("name", "heater"), HEATERS)
def test_trace_names_the_heater_and_its_verdict(name: str, heater: str) -> None:
    made = report(name)
    facts = heater_of(made, heater)
    told = trace_text(made.facts, water_walk(made, facts))
    assert f"{heater} is " in told
    assert facts.verdict.value.upper() in told


def test_every_kind_of_part_occurs_or_has_tests_of_its_own() -> None:
    used = {part.kind for name in SHOWCASE for part in layout(name).parts.values()}
    assert used | kinds_with_own_tests() == set(KINDS)


def test_every_verdict_occurs() -> None:
    assert {heater.verdict for name in SHOWCASE for heater in report(name).heaters} == set(Verdict)


def test_every_finding_occurs_or_has_tests_of_its_own() -> None:
    found = {one.name for name in SHOWCASE for one in report(name).findings}
    assert found | findings_with_own_tests() == set(REQUIREMENTS)


def test_every_action_of_a_change_occurs() -> None:
    used = {
        change.action for name in SHOWCASE for scenario in layout(name).scenarios.values() for change in scenario.change
    }
    assert used == {"close", "open", "remove", "insert", "add", "set", "fail", "draw"}


@pytest.mark.parametrize("name", SHOWCASE)
def test_file_opens_with_what_it_teaches_and_says_that_it_is_invented(name: str) -> None:
    lines = (SYSTEMS / f"{name}.yaml").read_text(encoding="utf-8").splitlines()
    comment = lines[: lines.index("plumbnet: 1")]
    assert all(line.startswith("# ") for line in comment)
    assert comment[-1] == "# Lantern Falls and everything in it is invented."
    assert 2 <= len(comment) - 1 <= 5
    assert any("redict" in line for line in comment)


@pytest.mark.parametrize("name", SHOWCASE)
def test_layout_is_no_toy(name: str) -> None:
    assert 8 <= len(layout(name).parts) <= 45


def test_no_scenario_takes_a_relief_valve_away_from_a_heater() -> None:
    for name in SHOWCASE:
        for scenario in layout(name).scenarios.values():
            for change in scenario.change:
                assert change.remove is None or layout(name).parts[change.remove].kind != "relief_valve"
