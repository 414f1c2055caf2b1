"""What a report says of pumps that a reducer keeps from driving their loop; every sentence in full."""

import pytest
from conftest import system

import plumbnet
from plumbnet.analysis.observations.idle_pumps import LIFTS_NOTHING, NO_HEAD
from plumbnet.analysis.report import Report

LOW_ZONE = "street -> tee1 -> heater -> tee2 -> prv -> tee3 -> tap.hot\ntee3 -> pump -> tee1\nheater.relief -> relief"
AT_OUTLET = (
    "pump runs and drives nothing: 60 psi stands at its outlet, where its water must come back, and from prv, set to "
    "50 psi,"
)
OF_ITS_OWN = (
    "Let the return of the zone behind prv end at a heater of that zone, or at a heater or exchanger behind prv, or "
    "give that zone a loop of its own"
)


def report(runs: str, **parts: str) -> Report:
    return plumbnet.check(system(runs, **parts))


def said(one: Report) -> tuple[str, str]:
    (finding,) = (each for each in one.findings if each.name == "pump-drives-nothing")
    return finding.text, finding.advice


def test_pump_of_unknown_head_is_told_what_it_would_have_to_lift() -> None:
    found = report(LOW_ZONE, pump="check: true")
    assert said(found) == (
        f"{AT_OUTLET} it comes with 50 psi; the pump's head is not given and is taken as too little.",
        OF_ITS_OWN + "; if pump does lift that far, write its head.",
    )
    assert found.facts.assumed[NO_HEAD] == ("pump",)


def test_pump_of_too_little_head_is_told_it() -> None:
    found = report(LOW_ZONE, pump="check: true, head: 4 psi")
    assert said(found) == (
        f"{AT_OUTLET} it comes with 54 psi; the pump's head of 4 psi is too little.",
        OF_ITS_OWN + ".",
    )
    assert NO_HEAD not in found.facts.assumed


@pytest.mark.parametrize("head", ["", "head: 100 psi"])
def test_pump_that_no_head_would_help_is_told_so_and_not_asked_for_it(head: str) -> None:
    runs = "street -> tee1 -> heater -> pump -> prv -> tee3 -> tap.hot\ntee3 -> cv -> tee1\nheater.relief -> relief"
    found = report(runs, pump=head)
    text, advice = said(found)
    assert text == (
        "pump runs and drives nothing: 60 psi stands at cv, where its water must come back, and from prv, set to "
        "50 psi, it comes with 50 psi, whatever the pump's head."
    )
    assert advice == OF_ITS_OWN + "."
    assert NO_HEAD not in found.facts.assumed


def test_return_whose_own_reducer_is_set_too_low_is_told_behind_it() -> None:
    runs = "street -> tee1 -> heater -> tee2 -> booster -> tee3 -> tap.hot\ntee3 -> pump -> prv -> tee1"
    text, _ = said(report(runs, booster="rise: 15 psi"))
    assert text == (
        "pump runs and drives nothing: 60 psi stands behind prv, where its water must come back, and from prv, set to "
        "50 psi, it comes with 50 psi, whatever the pump's head."
    )


def test_nothing_is_said_of_a_pump_whose_head_suffices_or_does_not_matter() -> None:
    for found in (report(LOW_ZONE, pump="check: true, head: 24 ft"), report(LOW_ZONE, street="pressure: 45 psi")):
        assert "pump-drives-nothing" not in {each.name for each in found.findings}
        assert not found.facts.hindered_pumps
        assert NO_HEAD not in found.facts.assumed


def test_heater_of_an_undriven_return_keeps_its_relief_valve_and_the_zone_its_set() -> None:
    found = report(LOW_ZONE, pump="check: true")
    (heater,) = found.heaters
    assert heater.loops == ()
    assert [rung.outlet for rung in heater.ladder] == ["street", "relief"]
    assert [tap.static_pa for tap in found.facts.taps] == [pytest.approx(50 * 6894.757293168361)]


def test_on_demand_heater_whose_return_does_not_go_round_stays_cold() -> None:
    runs = "street -> cv -> tee1 -> tankless -> tee2 -> prv -> tee3 -> tap.hot\ntee3 -> pump -> tee1"
    (idle,), (fired,) = report(runs, pump="check: true").heaters, report(runs, pump="check: true, head: 10 psi").heaters
    assert (str(idle.verdict), str(fired.verdict)) == ("on-demand", "sealed")


def test_booster_that_feeds_its_own_inlet_is_told_as_assumed() -> None:
    runs = "street -> tee1 -> booster -> tee2 -> heater -> tap.hot\ntee2 -> cv -> tee1"
    assert report(runs).facts.assumed[LIFTS_NOTHING] == ("booster",)
    assert LIFTS_NOTHING not in report("street -> booster -> heater -> tap.hot").facts.assumed


def test_what_is_taken_of_pumps_is_said_in_these_words() -> None:
    assert (NO_HEAD, LIFTS_NOTHING) == (
        "a circulator adds less than a reducer in its loop asks for",
        "a booster pump that feeds its own inlet adds nothing to what stands behind it",
    )
