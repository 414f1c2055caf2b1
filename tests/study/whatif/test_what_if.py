"""A layout before and after changes."""

import pytest
from conftest import layout, system

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.layout.edits.edit_draft import ChangeError
from plumbnet.layout.model.change import Change
from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.study.whatif.what_if import FaultyScenario, UnknownScenario, untouched, whatif

RUNS = """street -> valve -> tee -> heater -> tap.hot
          tee -> tank"""
SCENARIOS = """
scenarios:
  shut: {note: Left shut after a repair., change: [{close: valve}]}
  bare: {change: [{close: valve}, {remove: tank}]}
"""


def report() -> Report:
    text = layout(RUNS, heater="relief: {pressure: 150 psi}") + SCENARIOS
    return plumbnet.check(plumbnet.read_bytes(text.encode(), file="house.yaml"), rules="general", units="metric")


def verdict(of: Report) -> Verdict:
    return of.heaters[0].verdict


def test_before_and_after_stand_side_by_side() -> None:
    before = report()
    found = whatif(before, [Change(close="valve")])
    assert (verdict(found.before), verdict(found.after)) == (Verdict.OPEN, Verdict.CONTROLLED)
    assert found.before is before
    assert found.scenario is found.after.scenario is None
    assert found.difference.is_worse


def test_rules_and_units_are_those_of_the_report() -> None:
    before = report()
    after = whatif(before, [Change(close="valve")]).after
    assert after.profile is before.profile
    assert after.facts.units == "metric"


def test_scenario_of_the_file_is_made_first_and_names_the_report() -> None:
    found = whatif(report(), [Change(open="valve")], scenario="shut")
    assert (found.scenario, found.note, found.after.scenario) == ("shut", "Left shut after a repair.", "shut")
    assert [change.action for change in found.changes] == ["close", "open"]
    assert verdict(found.after) is Verdict.OPEN
    assert not found.difference.is_worse


def test_changes_are_made_in_their_order() -> None:
    tank = Change.model_validate({"fail": "tank"})
    with pytest.raises(ChangeError, match='no part is called "tank"'):
        whatif(report(), [Change(remove="tank"), tank])
    assert verdict(whatif(report(), [tank, Change(remove="tank"), Change(close="valve")]).after) is Verdict.TRAPPED


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("shutt", 'no scenario is called "shutt": did you mean "shut"?'),
        ("xyz", 'no scenario is called "xyz"; there is "shut", "bare"'),
    ],
)
def test_unknown_scenario_is_named_with_those_there_are(name: str, said: str) -> None:
    with pytest.raises(UnknownScenario) as caught:
        whatif(report(), scenario=name)
    assert str(caught.value) == said


def test_file_without_scenarios_says_so() -> None:
    before = plumbnet.check(plumbnet.read_bytes(layout("street -> heater").encode()))
    with pytest.raises(UnknownScenario, match='no scenario is called "shut"; the file has none'):
        whatif(before, scenario="shut")


def test_what_cannot_be_computed_is_an_error_of_the_layout() -> None:
    with pytest.raises(LayoutError, match="reaches higher than the supply can lift water"):
        whatif(report(), [Change.model_validate({"set": {"part": "heater", "elevation": "400 ft"}})])


def test_layout_that_is_not_touched_stays_what_it_is() -> None:
    report = plumbnet.check(system("street -> cv -> heater -> tap.hot"))
    found = untouched(report)
    assert found.before is found.after is report
    assert found.changes == ()
    assert (found.difference.is_worse, found.difference.is_better) == (False, False)


def test_layout_is_supposed_as_its_report_is() -> None:
    house = report()
    assert whatif(house.system, scenario="shut") == whatif(plumbnet.check(house.system), scenario="shut")


def test_scenario_has_the_changes_of_the_one_below_and_a_faulty_one_is_refused_with_its_line() -> None:
    more = "  more: {after: shut, change: [{remove: tank}]}\n  bad: {after: shut, change: [{close: valvv}]}\n"
    made = plumbnet.check(plumbnet.read_bytes((layout(RUNS) + SCENARIOS + more).encode(), file="house.yaml"))
    found = whatif(made, scenario="more")
    assert [change.action for change in found.changes] == ["close", "remove"]
    assert verdict(found.after) is verdict(whatif(made, scenario="bare").after)
    with pytest.raises(FaultyScenario, match='no part is called "valvv": did you mean "valve"') as caught:
        whatif(made, scenario="bad")
    assert "  bad: {after: shut" in str(caught.value)
    with pytest.raises(UnknownScenario, match='did you mean "bad"'):
        whatif(made, scenario="bat")
