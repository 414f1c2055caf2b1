"""What verdicts rest on, and nothing else."""

import pytest
from conftest import system

import plumbnet
from plumbnet.analysis.report import facts_of
from plumbnet.rules.requirement import REQUIREMENTS
from plumbnet.rules.rule_profile import profile, profile_names
from plumbnet.study.contingency.outcome import answer
from plumbnet.study.contingency.verdict_only import NotTold, Withheld, hasty_network_of

RUNS = """street -> cv -> valve -> tee -> heater -> tap.hot
          tee -> valve2 -> tank"""


def test_way_to_a_safety_relief_valve_is_withheld() -> None:
    facts = facts_of(hasty_network_of(system(RUNS, heater="relief: {pressure: 150 psi}")), profile("general"))
    (heater,) = facts.heaters
    tank, relief = heater.ladder
    assert tank.way == ("heater", "tee", "valve2", "tank")
    assert heater.valves_to_tank == ("valve2",)
    with pytest.raises(NotTold):
        list(relief.way)
    with pytest.raises(NotTold):
        list(heater.closes_if_shut.sets)


def test_whoever_asks_for_what_is_withheld_is_told_so() -> None:
    for ask in (len, bool, list, lambda one: one[0], lambda one: 3 in one):
        with pytest.raises(NotTold):
            ask(Withheld())
    assert Withheld() == Withheld()


@pytest.mark.parametrize("rules", profile_names())
@pytest.mark.parametrize("name", sorted(REQUIREMENTS))
def test_errors_are_those_of_a_full_analysis(name: str, rules: str) -> None:
    for text in (REQUIREMENTS[name].bad, REQUIREMENTS[name].good):
        of = plumbnet.read_bytes(text.encode(), file="example.yaml")
        report = plumbnet.check(of, rules=rules)
        full = answer(report.facts, report.profile)
        assert answer(facts_of(hasty_network_of(of), report.profile), report.profile) == full
