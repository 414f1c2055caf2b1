"""What a page is written from: remedies tried, scenarios made, and what of them cannot be computed."""

import yaml
from conftest import layout, system

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.study.dossier.report_dossier import dossier
from plumbnet.study.whatif.what_if import whatif

HOUSE = "street -> cv -> tee -> heater -> tap.hot"


def with_scenarios(**scenarios: object) -> Report:
    document = yaml.safe_load(layout(HOUSE, heater="relief: {pressure: 150 psi}"))
    document["scenarios"] = {name: {"change": changes} for name, changes in scenarios.items()}
    return plumbnet.check(plumbnet.read_bytes(yaml.safe_dump(document).encode()))


def test_first_remedy_of_each_heater_in_trouble_is_made() -> None:
    found = dossier(plumbnet.check(system(HOUSE, heater="relief: {pressure: 150 psi}")))
    assert list(found.cures) == ["heater"]
    assert found.found is not None
    assert found.cures["heater"].remedy == found.found["heater"][0]
    assert found.cures["heater"].after.heaters[0].verdict is Verdict.CONTROLLED


def test_how_far_it_all_holds_is_handed_over_with_that_of_the_cures() -> None:
    found = dossier(plumbnet.check(system(HOUSE, heater="relief: {pressure: 150 psi}")))
    assert found.margins is not None
    assert [one.heater for one in found.margins.cures] == ["heater"]


def test_every_scenario_of_the_file_is_made() -> None:
    found = dossier(with_scenarios(unchecked=[{"remove": "cv"}], warmer=[{"set": {"part": "heater", "setpoint": 150}}]))
    assert [one.scenario for one in found.whatifs] == ["unchecked", "warmer"]
    assert found.whatifs[0].after.heaters[0].verdict is Verdict.OPEN


def test_scenario_of_which_nothing_can_be_computed_says_why() -> None:
    report = with_scenarios(skyward=[{"set": {"part": "tap", "elevation": "3000 ft"}}])
    found = dossier(report)
    assert found.whatifs == ()
    assert "higher than the supply" in found.refused["skyward"]


def test_report_on_a_scenario_leaves_the_others_out() -> None:
    report = whatif(with_scenarios(unchecked=[{"remove": "cv"}]), scenario="unchecked").after
    assert dossier(report).whatifs == ()
