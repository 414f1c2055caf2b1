"""What differs between two reports: heaters, key figures, and what counts as worse."""

from dataclasses import replace
from pathlib import Path

import pytest
from conftest import PSI
from curing import HOUSE, RELIEVED, TANKED, house

import plumbnet
from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.model.system import System
from plumbnet.rules.facts.verdict_words import FROM_BEST_TO_WORST, Verdict
from plumbnet.rules.finding import Accepted, Severity
from plumbnet.study.compare.report_difference import Difference, HeaterChange, difference

SYSTEMS = sorted((Path(__file__).parents[3] / "systems").glob("*.yaml"))
OPEN = "street -> tee -> heater -> tap.hot\ntee -> tap.cold"


def between(before: System, after: System) -> Difference:
    return difference(plumbnet.check(before), plumbnet.check(after))


def only(found: Difference) -> HeaterChange:
    (heater,) = found.heaters
    return heater


def test_same_layout_twice_differs_in_nothing() -> None:
    found = between(house(), house())
    assert not found.differs
    assert not found.is_worse
    assert not found.is_better
    assert [heater.name for heater in found.heaters] == ["heater"]


def test_check_valve_newly_fitted_makes_an_open_heater_worse() -> None:
    found = between(house(OPEN), house())
    assert only(found).is_worse
    assert not only(found).is_better
    assert found.is_worse
    assert [one.name for one in found.new] == ["trapped-expansion"]
    assert found.gone == ()


def test_tank_newly_fitted_makes_a_trapped_heater_better() -> None:
    found = between(house(), house(TANKED))
    assert only(found).is_better
    assert found.is_better
    assert not found.is_worse
    assert [one.name for one in found.gone] == ["trapped-expansion"]


@pytest.mark.parametrize("before", list(Verdict))
@pytest.mark.parametrize("after", list(Verdict))
def test_verdict_further_down_is_worse_and_further_up_is_better(before: Verdict, after: Verdict) -> None:
    (facts,) = plumbnet.check(house()).heaters
    calm = replace(facts, settled_pa=facts.limit_pa)
    change = HeaterChange("heater", replace(calm, verdict=before), replace(calm, verdict=after))
    step = FROM_BEST_TO_WORST.index(after) - FROM_BEST_TO_WORST.index(before)
    assert (change.is_worse, change.is_better) == (step > 0, step < 0)


def test_order_of_verdicts_names_each_of_them() -> None:
    assert sorted(FROM_BEST_TO_WORST) == sorted(Verdict)


def test_pressure_that_newly_passes_the_limit_is_worse_under_the_same_verdict() -> None:
    (facts,) = plumbnet.check(house(OPEN)).heaters
    held = replace(facts, settled_pa=facts.limit_pa)
    passing = replace(facts, settled_pa=facts.limit_pa + 1000.0)
    assert HeaterChange("heater", held, passing).is_worse
    assert HeaterChange("heater", passing, held).is_better
    assert not HeaterChange("heater", passing, passing).is_worse


def test_trapped_heater_whose_pressure_now_comes_to_rest_past_the_limit_is_no_worse() -> None:
    (facts,) = plumbnet.check(house()).heaters
    assert facts.settled_pa is None
    settled = replace(facts, settled_pa=facts.limit_pa + 1000.0)
    assert not HeaterChange("heater", facts, settled).is_worse


def test_new_heater_is_worse_only_if_it_is_in_trouble() -> None:
    (facts,) = plumbnet.check(house()).heaters
    assert HeaterChange("heater", None, facts).is_worse
    assert HeaterChange("heater", facts, None).is_better
    assert not HeaterChange("heater", None, replace(facts, verdict=Verdict.CONTROLLED)).is_worse
    assert not HeaterChange("heater", replace(facts, verdict=Verdict.OPEN), None).is_worse
    assert HeaterChange("heater", None, facts).differs


def test_worse_heaters_come_first_then_better_ones_then_the_rest_in_the_order_of_the_file() -> None:
    runs = """street -> tee1 -> {one}heater1 -> tap1.hot
              tee1 -> heater2 -> tap2.hot
              tee1 -> {three}heater3 -> tap3.hot
              tee1 -> heater4 -> tap4.hot"""
    more = {f"heater{number}": RELIEVED for number in (1, 2, 3, 4)}
    more["heater4"] += ", volume: 60 gal"
    before = house(runs.format(one="cv1 -> ", three=""), heater2=RELIEVED, heater3=RELIEVED, heater4=RELIEVED)
    after = house(runs.format(one="", three="cv3 -> "), **more)
    found = between(before, after)
    assert [heater.name for heater in found.heaters] == ["heater3", "heater1", "heater4", "heater2"]
    assert [heater.differs for heater in found.heaters] == [True, True, True, False]


def test_figures_stand_before_and_after_in_si() -> None:
    found = between(house(), house(street="pressure: 70 psi"))
    figures = {figure.key: figure for figure in only(found).figures}
    assert list(figures) == ["static_pa", "limit_pa", "settled_pa", "expansion_m3", "short_m3", "need_m3"]
    assert figures["static_pa"].before == pytest.approx(60 * PSI)
    assert figures["static_pa"].after == pytest.approx(70 * PSI)
    assert figures["static_pa"].differs
    assert not figures["limit_pa"].differs
    need = figures["need_m3"]
    assert need.before is not None
    assert need.after is not None
    assert need.after > 1.5 * need.before
    assert figures["settled_pa"].before is figures["settled_pa"].after is None
    assert only(found).differs


def test_rounding_is_no_difference() -> None:
    (facts,) = plumbnet.check(house()).heaters
    assert facts.static_pa is not None
    near = replace(facts, static_pa=facts.static_pa + 0.5, expansion_m3=facts.expansion_m3 + 1e-10)
    assert not HeaterChange("heater", facts, near).differs
    far = replace(facts, static_pa=facts.static_pa + 2.0)
    assert HeaterChange("heater", facts, far).differs


def test_other_device_that_stops_the_water_is_a_difference_and_no_worse() -> None:
    other = HOUSE.replace("cv", "meter")
    found = between(house(), house(other, meter="check: true"))
    assert only(found).differs
    assert not found.is_worse
    assert [one.after.parts for one in found.altered] == [("heater", "meter")]
    assert (found.new, found.gone) == ((), ())


def test_finding_whose_numbers_changed_is_altered_and_not_new() -> None:
    found = between(house(), house(heater=f"{RELIEVED}, volume: 60 gal"))
    assert (found.new, found.gone) == ((), ())
    (altered,) = found.altered
    assert altered.before.name == altered.after.name == "trapped-expansion"
    assert altered.before.text != altered.after.text
    assert not found.is_worse


def test_error_that_replaces_another_about_the_same_heater_is_no_worse() -> None:
    found = between(house(), house(TANKED, tank="volume: 1 gal"))
    assert [one.name for one in found.new if one.severity is Severity.ERROR] == ["tank-too-small"]
    assert [one.name for one in found.gone] == ["trapped-expansion"]
    assert not found.is_worse


def test_second_error_about_a_heater_is_worse_though_one_is_gone() -> None:
    before, after = plumbnet.check(house()), plumbnet.check(house())
    (old,) = before.findings
    one, two = replace(old, name="tank-too-small"), replace(old, name="relief-missing")
    assert not difference(before, replace(after, findings=(one,))).is_worse
    assert difference(before, replace(after, findings=(one, two))).is_worse


def test_new_error_about_a_part_that_is_no_heater_is_worse() -> None:
    runs = f"{TANKED}\ntee -> tank2"
    found = between(house(runs), house(runs, tank2="state: waterlogged"))
    assert [one.name for one in found.new if one.severity is Severity.ERROR] == ["tank-waterlogged"]
    assert not only(found).is_worse
    assert found.is_worse


def test_new_warning_is_told_and_is_not_worse() -> None:
    found = between(house(TANKED), house(TANKED, tank="precharge: 55 psi, volume: 10 gal"))
    assert [(one.name, one.severity.value) for one in found.new] == [("tank-charge-differs", "warning")]
    assert found.differs
    assert not found.is_worse
    assert not found.is_better


def test_finding_that_becomes_an_error_is_worse_and_back_is_better() -> None:
    report = plumbnet.check(house())
    (error,) = report.findings
    warned = replace(report, findings=(replace(error, severity=Severity.WARNING),))
    assert difference(warned, report).is_worse
    assert difference(report, warned).is_better


def test_finding_that_the_later_file_accepts_is_neither_gone_nor_better() -> None:
    report = plumbnet.check(house())
    accepted = tuple(Accepted(one, "Letter of the authority.", 9) for one in report.findings)
    after = replace(report, findings=(), accepted=accepted)
    found = difference(report, after)
    assert [one.name for one in found.accepted] == ["trapped-expansion"]
    assert (found.new, found.gone) == ((), ())
    assert (found.is_better, found.is_worse, found.differs) == (False, False, True)
    back = difference(after, report)
    assert [one.name for one in back.new] == ["trapped-expansion"]
    assert back.is_worse


@pytest.mark.parametrize("path", SYSTEMS, ids=lambda path: path.stem)
def test_what_is_worse_one_way_is_better_the_other_in_every_scenario(path: Path) -> None:
    system = plumbnet.read(path)
    before = plumbnet.check(system)
    for scenario in system.scenarios.values():
        after = plumbnet.check(with_changes(system, scenario.change))
        there, back = difference(before, after), difference(after, before)
        assert {one.name for one in there.heaters if one.is_worse} == {
            one.name for one in back.heaters if one.is_better
        }
        assert {one.name for one in there.heaters if one.is_better} == {
            one.name for one in back.heaters if one.is_worse
        }
        assert not any(one.is_worse and one.is_better for one in there.heaters)
        assert not any((one.is_worse or one.is_better) and not one.differs for one in there.heaters)
        assert {(one.name, one.parts) for one in there.new} == {(one.name, one.parts) for one in back.gone}
        assert len(there.altered) == len(back.altered)
        assert not (there.is_worse and there.is_better)


def test_severe_findings_come_first() -> None:
    empty = replace(plumbnet.check(house()), findings=())
    runs = f"{TANKED}\ntee -> tank2"
    full = plumbnet.check(house(runs, tank="precharge: 40 psi", tank2="state: waterlogged"))
    severities = [one.severity for one in difference(empty, full).new]
    assert severities == sorted(severities, key=list(Severity).index)
    assert set(severities) == {Severity.ERROR, Severity.WARNING}
    assert [one.severity for one in difference(full, empty).gone] == severities
