"""The whole analysis: laws that hold for every layout, and what it says of tanks, zones and parts."""

import re
from dataclasses import fields, replace
from pathlib import Path
from random import Random

import pytest
from conftest import PSI, layout, system
from hypothesis import assume, given, reject, settings
from hypothesis import strategies as st
from oracles.random_closed import closed_layouts
from oracles.random_layouts import Layout, layouts
from oracles.ways_out import without

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.model.change import Change
from plumbnet.layout.model.system import Record, System
from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.rules.facts.heater_answer import HeaterFacts
from plumbnet.rules.facts.tank_facts import Need, TankFacts
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.rules.finding import Finding, Severity
from plumbnet.rules.rule_profile import profile

SYSTEMS = Path(__file__).parents[2] / "systems"
EXAMPLES = settings(max_examples=45, deadline=None, derandomize=True, database=None)
CLOSED = "street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief"
CLOSED_VERDICTS = {Verdict.TRAPPED, Verdict.SEALED}


def report(runs: str, **parts: str) -> Report:
    return plumbnet.check(system(runs, **parts))


# Laws.


@EXAMPLES
@given(layouts() | closed_layouts(), st.randoms(use_true_random=False))
def test_order_of_parts_and_runs_changes_nothing(layout: Layout, chance: Random) -> None:
    names, pipes = list(layout.parts), list(layout.pipes)
    chance.shuffle(names)
    chance.shuffle(pipes)
    shuffled = Layout({name: layout.parts[name] for name in names}, tuple(pipes))
    try:
        one = plumbnet.check(layout.system)
    except LayoutError:  # nothing can be computed of a heater whose piping stands too high, in either order
        with pytest.raises(LayoutError):
            plumbnet.check(shuffled.system)
        return
    other = plumbnet.check(shuffled.system)
    again = {heater.name: heater for heater in other.heaters}
    for heater in one.heaters:
        assert words(heater) == words(again[heater.name])
        assert numbers(heater) == pytest.approx(numbers(again[heater.name]), rel=1e-12, abs=1e-9)
    assert found(one.findings) == found(other.findings)


def test_of_ways_equally_long_one_is_told_whatever_the_order() -> None:
    # two valves side by side on the way to the relief valve, and neither joins heater and tee at once
    runs = ["street -> cv -> tee1 -> heater -> tap.hot", "tee1 -> valve1 -> tee2", "tee1 -> valve2 -> tee2"]
    runs.append("tee2 -> relief")
    told = [report("\n".join(order)).heaters[0].ladder[0].way for order in (runs, [runs[0], *reversed(runs[1:])])]
    assert told == [("heater", "tee1", "valve1", "tee2", "relief")] * 2


def words(heater: HeaterFacts) -> dict[str, object]:
    """All of an answer that is no number; loops as sets, for where they begin is the file's choice."""
    told: dict[str, object] = {
        field.name: value
        for field in fields(heater)
        if isinstance(value := getattr(heater, field.name), str | bool | tuple)
        and field.name not in {"ladder", "loops"}
    }
    told["loops"] = {frozenset(loop) for loop in heater.loops}
    told["ladder"] = [(rung.outlet, rung.role, rung.way) for rung in heater.ladder]
    told["stopped_by"], told["closes_if_shut"] = heater.stopped_by, heater.closes_if_shut
    told["need"] = heater.need and (heater.need.at, heater.need.serves, heater.need.tank_m3 is None)
    return told


def numbers(heater: HeaterFacts) -> dict[str, float]:
    """All numbers of an answer; volumes in millilitres, so that a tolerance for pascals does not blur them."""
    told = {
        field.name: value
        for field in fields(heater)
        if isinstance(value := getattr(heater, field.name), float | int) and field.name != "line"
    }
    told |= {f"rung {number}": rung.opens_pa for number, rung in enumerate(heater.ladder)}
    if heater.need is not None:
        told["charge"] = heater.need.precharge_pa
        told["tank_m3"] = heater.need.tank_m3 or 0.0
    return {name: value * 1e6 if name.endswith("_m3") else value for name, value in told.items()}


def found(findings: tuple[Finding, ...]) -> list[tuple[str, tuple[str, ...]]]:
    return sorted((one.name, one.parts) for one in findings)


def answered(drawn: System) -> Report:
    """The report on a layout; no example where its supply cannot lift water to the top of a heater's piping."""
    try:
        return plumbnet.check(drawn)
    except LayoutError as refused:
        if "reaches higher than the supply can lift water" in str(refused):
            reject()
        raise


@EXAMPLES
@given(closed_layouts(), st.integers(0, 99))
def test_check_taken_out_closes_no_open_heater(layout: Layout, choice: int) -> None:
    drawn = layout.system
    checks = [name for name, part in drawn.parts.items() if part.is_check]
    assume(checks)
    before = {one.name for one in answered(drawn).heaters if one.verdict is Verdict.OPEN}
    after = answered(without(drawn, checks[choice % len(checks)])).heaters
    assert before <= {one.name for one in after if one.verdict is Verdict.OPEN}


@EXAMPLES
@given(layouts() | closed_layouts())
def test_verdicts_and_numbers_agree_with_each_other(layout: Layout) -> None:
    for heater in answered(layout.system).heaters:
        closed = heater.verdict in CLOSED_VERDICTS
        assert (heater.need is not None) == closed
        assert (heater.short_m3 > 0.0) == closed
        if heater.settled_pa is not None:
            assert heater.static_pa is None or heater.settled_pa >= heater.static_pa
        if heater.verdict is Verdict.CONTROLLED:
            assert heater.settled_pa is not None
            assert heater.settled_pa <= max(heater.limit_pa, heater.static_pa or 0.0) + 1.0
        if closed:
            assert heater.settled_pa is None or heater.broken
        if heater.verdict is Verdict.OPEN:
            assert heater.settled_pa is not None
            assert heater.stopped_by.sets == ()


@EXAMPLES
@given(closed_layouts())
def test_tank_that_is_wanted_cures_the_heater_it_is_wanted_for(layout: Layout) -> None:
    """Hung where the report says, of the size and charge it says, beside the tanks at hand."""
    drawn = layout.system
    for heater in plumbnet.check(drawn).heaters:
        change = None if heater.static_pa is None or heater.need is None else hang(heater.need, drawn)
        if change is not None:
            hung = plumbnet.check(with_changes(drawn, [change])).heaters
            assert [one.verdict for one in hung if one.name == heater.name] == [Verdict.CONTROLLED]


def hang(need: Need, drawn: System) -> Change | None:
    """The tank, joined to its fitting; None where it is to go into a pipe, or where no tank can do it."""
    fitting = drawn.parts.get(need.at)
    if need.tank_m3 is None or fitting is None or not fitting.is_fitting or need.precharge_pa < 0.0:
        return None
    fields_ = {
        "part": "hung",
        "kind": "expansion_tank",
        "volume": f"{need.tank_m3 * 1e3!r} L",
        "precharge": f"{need.precharge_pa!r} Pa",
        "elevation": f"{fitting.elevation_m!r} m",
        "run": f"{need.at} -> hung",
    }
    return Change.model_validate({"add": fields_})


# One building in either system of units.

US_TO_METRIC = {
    "psi": lambda value: value * PSI / 1e3,
    "degF": lambda value: (value - 32.0) / 1.8,
    "gal": lambda value: value * 3.785411784,
    "ft": lambda value: value * 0.3048,
    "Btu/h": lambda value: value * 1055.05585262 / 3.6e6,
    "gpm": lambda value: value * 3.785411784,
}
METRIC_TO_US = {
    "kPa": lambda value: value * 1e3 / PSI,
    "degC": lambda value: value * 1.8 + 32.0,
    "L": lambda value: value / 3.785411784,
    "m": lambda value: value / 0.3048,
    "kW": lambda value: value * 3.6e6 / 1055.05585262,
    "L/min": lambda value: value / 3.785411784,
}
QUANTITY = re.compile(r"(?<![\w./-])(-?\d+(?:\.\d+)?) (psi|degF|gal|ft|Btu/h|gpm|kPa|degC|L/min|L|m|kW)(?![\w/])")


def in_the_other_units(text: str) -> str:
    """A layout with every quantity as a bare number of the other units; sizes of pipe keep their inches."""
    metric = "units: metric" in text
    factors = METRIC_TO_US if metric else US_TO_METRIC
    text, count = QUANTITY.subn(lambda match: repr(factors[match[2]](float(match[1]))), text)
    assert count > 5
    if metric:
        return text.replace("units: metric", "units: us")
    return text.replace("units: us", "").replace("plumbnet: 1\n", "plumbnet: 1\nunits: metric\n")


@pytest.mark.parametrize(
    "name",
    [
        "bakery-tank-too-small",
        "boiler-loop-with-indirect-heater",
        "cistern-vented-cylinder",
        "school-shared-tanks",
        "tower-tank-on-the-roof",
        "well-with-checked-softener",
        "reducer-with-bypass-main-above-limit",
    ],
)
def test_building_gives_the_same_numbers_in_either_system_of_units(name: str) -> None:
    text = (SYSTEMS / f"{name}.yaml").read_text(encoding="utf-8")
    one, other = (plumbnet.check(plumbnet.read_bytes(each.encode())) for each in (text, in_the_other_units(text)))
    assert one.system.units != other.system.units
    for heater, again in zip(one.heaters, other.heaters, strict=True):
        assert words(heater) == words(again)
        assert numbers(heater) == pytest.approx(numbers(again), rel=1e-9, abs=1e-9)
    assert found(one.findings) == found(other.findings)


# Tanks, zones, parts.


def tank(made: Report, name: str = "tank") -> TankFacts:
    return next(one for one in made.facts.tanks if one.name == name)


def test_tank_is_told_where_it_stands_and_at_what_pressure() -> None:
    one = tank(report(f"{CLOSED}\ntee -> tank", tank="precharge: 50 psi, elevation: 10 m"))
    assert one.static_pa == pytest.approx(60 * PSI - 98_066.5)
    assert one.precharge_pa == pytest.approx(50 * PSI)
    assert (one.reached, one.on_hot_side, one.is_waterlogged, one.stopped_by) == (True, False, False, ())
    assert not one.serves_a_pump


def test_tank_beyond_a_check_that_faces_the_heater_is_cut_off_by_it() -> None:
    one = tank(report("street -> tee -> cv -> heater -> tap.hot\ntee -> tank"))
    assert (one.reached, one.stopped_by) == (False, ("cv",))


def test_tank_at_the_hot_pipe_is_on_the_hot_side_and_in_a_heating_circuit_it_is_not() -> None:
    assert tank(report("street -> cv -> heater -> tee -> tap.hot\ntee -> tank")).on_hot_side
    assert not tank(report("street -> cv -> prv -> boiler -> tee\ntee -> tank")).on_hot_side


def test_tank_on_a_well_serves_the_pump() -> None:
    one = tank(report("well -> tee -> heater -> tap.hot\ntee -> tank", tank="precharge: 28 psi"))
    assert one.static_pa == pytest.approx(50 * PSI)
    assert one.cut_in_pa == pytest.approx(30 * PSI)
    assert one.serves_a_pump


def test_fixture_is_told_with_the_highest_that_stands_at_one_of_its_connections() -> None:
    runs = "street -> tee -> prv -> heater -> tap.hot\ntee -> tap.cold\ntee -> tap2.cold"
    taps = report(runs, tap="elevation: 5 m", tap2="elevation: -5 m").facts.taps
    assert [one.name for one in taps] == ["tap", "tap2"]
    assert [one.static_pa for one in taps] == pytest.approx([60 * PSI - 5 * 9806.65, 60 * PSI + 5 * 9806.65])


def test_tank_on_a_main_that_falls_is_no_tank_of_a_well() -> None:
    (one,) = report(
        "street -> cv -> tee -> heater -> tap.hot\ntee -> tank",
        street="pressure: 60 psi, highest: 70 psi, lowest: 40 psi",
    ).facts.tanks
    assert one.static_pa == pytest.approx(70 * PSI)
    assert one.cut_in_pa == pytest.approx(70 * PSI)
    assert not one.serves_a_pump


def test_street_of_which_no_extremes_are_said_is_taken_as_steady() -> None:
    assumed = report("street -> heater -> tap.hot").facts.assumed
    assert assumed["a main is steady, by night and by day"] == ("street",)
    assumed = report("street -> heater -> tap.hot", street="highest: 70 psi").facts.assumed
    assert assumed["a main falls no lower by day"] == ("street",)
    assert "a main is steady, by night and by day" not in assumed
    assumed = report("street -> heater -> tap.hot", street="highest: 70 psi, lowest: 40 psi").facts.assumed
    assert not {words for words in assumed if words.startswith("a main") and "delivers" not in words}


def test_what_the_file_does_not_say_is_told_as_assumed() -> None:
    assumed = report("street -> meter -> valve -> heater -> tap.hot").facts.assumed
    assert assumed["a meter has no check valve"] == ("meter",)
    assert "valve" not in {name for words_, names in assumed.items() if words_.startswith("a meter") for name in names}
    given_ = report("street -> meter -> heater -> tap.hot", meter="check: false").facts.assumed
    assert "a meter has no check valve" not in given_


def test_report_is_fine_unless_an_error_stands() -> None:
    fine = report(f"{CLOSED}\ntee -> tank", tank="volume: 5 gal")
    assert fine.is_fine
    assert all(one.severity is not Severity.ERROR for one in fine.findings)
    assert not report(CLOSED).is_fine


def test_heaters_come_in_the_order_of_the_file() -> None:
    made = report("street -> cv -> tee -> heater2 -> tap.hot\ntee -> heater1 -> tap2.hot")
    assert [one.name for one in made.heaters] == ["heater2", "heater1"]


def test_report_keeps_its_profile_and_speaks_in_the_units_asked_for() -> None:
    drawn = system(CLOSED)
    assert plumbnet.check(drawn).profile is profile("general")
    assert plumbnet.check(drawn).facts.units == "us"
    assert plumbnet.check(drawn, units="metric").facts.units == "metric"
    assert plumbnet.check(drawn).scenario is None


def test_piping_that_the_supply_cannot_fill_is_refused_in_words() -> None:
    high = "street -> tee -> heater -> tap.hot"
    with pytest.raises(LayoutError, match="higher than the supply can lift water"):
        plumbnet.check(system(high, tee="kind: tee, elevation: 300 ft"))
    assert plumbnet.check(system(high, tee="kind: tee, elevation: 30 ft")).heaters


def test_vent_far_above_the_water_is_not_refused() -> None:
    vented = "street -> tee -> heater -> tap.hot\ntee -> vent"
    report = plumbnet.check(system(vented, vent="kind: vent, elevation: 300 ft"))
    assert [heater.verdict.value for heater in report.heaters] == ["open"]


def test_acceptance_that_no_finding_meets_is_told_as_idle_and_one_that_does_is_not() -> None:
    trapped = "street -> cv -> heater -> tap.hot\nheater.relief -> relief"
    accept = [f"{{finding: trapped-expansion, part: {part}, reason: as it is}}" for part in ("heater", "tap")]
    text = layout(trapped) + "accept:\n" + "".join(f"  - {one}\n" for one in accept)
    made = plumbnet.check(plumbnet.read_bytes(text.encode(), file="drawn.yaml"))
    assert [(one.finding.name, one.finding.parts[0]) for one in made.accepted] == [("trapped-expansion", "heater")]
    assert [(one.acceptance.finding, one.acceptance.part) for one in made.idle] == [("trapped-expansion", "tap")]
    assert "trapped-expansion" not in {finding.name for finding in made.findings}


def test_parts_that_no_water_reaches_are_told_less_the_device_that_keeps_it_away() -> None:
    dry = report("street -> heater -> tap.hot\ncv -> tee -> valve -> tap2.cold\ntee -> cv2 -> heater.return")
    assert dry.facts.unreached == ("cv", "tee", "valve", "tap2")
    shut = report("street -> tee -> heater -> tap.hot\ntap2.cold -> cv -> tee")
    assert shut.facts.unreached == ("tap2",)
    assert report("street -> heater -> tap.hot").facts.unreached == ()


def test_tank_is_parted_by_the_devices_next_to_what_heated_water_reaches_and_by_no_other() -> None:
    # the tank hangs behind cv2 at the street, of which no heated water comes
    one = tank(report("street -> tee2 -> cv -> tee -> heater -> tap.hot\ntee2 -> cv2 -> tee3 -> tank"))
    assert (one.reached, one.stopped_by) == (False, ())
    beyond = tank(report("street -> tee2 -> cv1 -> tee -> heater -> tap.hot\ntee -> prv -> tee3 -> tank"))
    assert (beyond.reached, beyond.stopped_by) == (False, ("prv",))


def test_checks_on_the_hot_side_and_pumps_that_drive_nothing_are_told() -> None:
    one = report("street -> cv -> heater -> cv2 -> tee -> tap.hot\ntee -> pump -> tap2.hot\ntee -> booster -> tap3.hot")
    assert one.facts.hot_side_checks == ("cv2",)
    assert one.facts.idle_pumps == ("pump",)


def test_report_tells_itself_in_a_line() -> None:
    house = plumbnet.check("systems/school-shared-tanks.yaml")
    assert repr(house) == (
        "<Report of systems/school-shared-tanks.yaml, rules general: 2 controlled, 1 trapped, 1 on-demand; 1 finding>"
    )
    assert (
        repr(plumbnet.check(system("street -> tap.cold")))
        == "<Report of drawn.yaml, rules general: no heater; 0 findings>"
    )


def test_line_of_a_report_names_its_scenario_and_the_title_where_there_is_no_file() -> None:
    house = report("street -> heater -> tap.hot", heater="relief: {pressure: 150 psi, temperature: 210 degF}")
    titled = replace(house.system, record=Record(), title="The house")
    assert repr(replace(house, system=titled, scenario="stop shut")) == (
        '<Report of The house, rules general, scenario "stop shut": 1 open; 0 findings>'
    )
    nameless = replace(house, system=replace(titled, title=""))
    assert repr(nameless) == "<Report of a layout, rules general: 1 open; 0 findings>"


def test_line_of_a_report_is_one_line_whatever_the_file_is_called() -> None:
    house = plumbnet.check(plumbnet.read_bytes(layout("street -> heater -> tap.hot").encode(), file="a\nb\x1b[2J"))
    assert repr(house).startswith(r"<Report of a\nb\x1b[2J, rules general: 1 open; ")


def test_two_acceptances_that_each_meet_a_finding_of_their_own_are_not_idle() -> None:
    apart = """street -> tee -> cv1 -> heater1 -> tap1.hot
    tee -> cv2 -> heater2 -> tap2.hot
    heater1.relief -> relief1
    heater2.relief -> relief2"""
    accept = [f"{{finding: trapped-expansion, part: heater{number}, reason: as it is}}" for number in "12"]
    text = layout(apart) + "accept:\n" + "".join(f"  - {one}\n" for one in accept)
    made = plumbnet.check(plumbnet.read_bytes(text.encode(), file="drawn.yaml"))
    assert [one.finding.parts[0] for one in made.accepted] == ["heater1", "heater2"]
    assert made.idle == ()


def test_pump_that_a_reducer_hinders_and_the_lowest_places_are_told_with_the_rest() -> None:
    runs = "street -> tee1 -> heater -> tee2 -> prv -> tee3 -> tap.hot\ntee3 -> pump -> tee1"
    facts = report(runs, pump="check: true").facts
    assert [one.pump for one in facts.hindered_pumps] == ["pump"]
    assert [one.name for one in facts.lows] == ["heater", "tap"]
