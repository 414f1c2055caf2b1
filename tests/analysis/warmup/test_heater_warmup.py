"""Warm-ups of whole layouts: they come to rest where the analysis says, and balance."""

from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest
from all_hot import settled_pa
from conftest import PSI, system
from showcase import SHOWCASE

import plumbnet
from plumbnet.analysis.equilibrium.shared_tanks import SharedTanks
from plumbnet.analysis.report import Report
from plumbnet.analysis.warmup.heater_warmup import HeaterWarmup, NoWarmUp, typical_warm_up, warm_up
from plumbnet.layout.edits.apply import with_changes
from plumbnet.physics.warmup.simulation import simulate
from plumbnet.physics.warmup.warmup_result import WarmupHappening

SYSTEMS = Path(__file__).parents[3] / "systems"
HOUSE = "street -> cv -> tee -> heater -> tap.hot"
FITTED = f"{HOUSE}\ntee -> tank"
RELIEVED = "{kind: storage_heater, volume: 50 gal, setpoint: 140 degF, input: 40000 Btu/h, relief: {pressure: 150 psi}}"


def drawn(runs: str, **parts: str) -> Report:
    return plumbnet.check(system(runs, **parts))


@cache
def showcase(name: str, scenario: str | None = None) -> Report:
    layout = plumbnet.read(SYSTEMS / f"{name}.yaml")
    return plumbnet.check(layout if scenario is None else with_changes(layout, layout.scenarios[scenario].change))


def by_the_minute(report: Report, heater: str) -> HeaterWarmup:
    """A warm-up with typical walls in few steps, of five minutes: where it comes to does not depend on them."""
    begun = typical_warm_up(report, heater, minutes=0.0)
    return replace(begun, run=simulate(begun.plant, step_s=300.0))


def imbalance(warming: HeaterWarmup) -> float:
    """Part of the heat, and of the water, that the books cannot account for."""
    run, books = warming.run, warming.run.books
    heat = books.heat_j + books.pressed_j + books.brought_j - books.carried_j - books.shed_j
    water = run.start_kg + books.fed_kg - sum(books.lost_kg.values())
    return max(abs(heat - (run.end_j - run.start_j)) / books.heat_j, abs(water - run.end_kg) / run.start_kg)


PATH_DEPENDENT = {("school-shared-tanks", "lab-tank-fitted")}
"""Heaters apart by a gate, which do not grow hot together: see the test of its own."""
CONTROLLED = [
    (name, scenario)
    for name, expected in SHOWCASE.items()
    for scenario, heaters in ((None, expected.heaters), *expected.scenarios.items())
    if any(answer.verdict == "controlled" for answer in heaters.values()) and (name, scenario) not in PATH_DEPENDENT
]


@pytest.mark.parametrize(("name", "scenario"), CONTROLLED)
def test_controlled_heater_comes_to_the_pressure_at_which_it_settles(name: str, scenario: str | None) -> None:
    report, told = showcase(name, scenario), set[str]()
    controlled = {one.name: one for one in report.heaters if one.verdict.value == "controlled"}
    for heater in controlled:
        if heater in told:  # those of one zone fire together
            continue
        try:
            warming = by_the_minute(report, heater)
        except NoWarmUp as error:
            assert "lacks an input" in str(error) or "antifreeze" in str(error)  # noqa: PT017  # either will do
            told.add(heater)
            continue
        assert imbalance(warming) < 1e-6
        near = [one for one in warming.fired if zone_of(report, one.name) == zone_of(report, heater)]
        for fired in near:
            settled = controlled[fired.name].settled_pa
            assert max(warming.pressures_pa(fired)) == pytest.approx(settled, rel=1e-6)
        told |= {fired.name for fired in near}
    assert told == controlled.keys()


@pytest.mark.parametrize("name", ["house-with-check", "bakery-tank-too-small", "clinic-tankless-recirculation"])
def test_trapped_heater_balances_and_lifts_what_the_ladder_has_first(name: str) -> None:
    report = showcase(name)
    warming = warm_up(report, report.heaters[0].name)
    assert imbalance(warming) < 1e-6
    opened = warming.run.first(WarmupHappening.OUTLET_OPENS)
    assert opened is not None
    rung = next(rung for rung in report.heaters[0].ladder if rung.role.value != "expansion tank")
    assert opened.name == rung.outlet
    assert warming.gauge_pa(report.heaters[0].name, opened.pressure_abs_pa) == pytest.approx(rung.opens_pa, rel=1e-6)


#  main >- RP assembly >- hot header (2 heaters, 2 tanks) >- RP assembly >- lab (heater, tank)
def zone_of(report: Report, name: str) -> int:
    return report.network.zoning.zone_of[next(report.network.piping.nodes_of(name))]


def test_heater_behind_its_own_check_that_is_hot_last_ends_between_settling_at_once_and_the_worst_order() -> None:
    """Water of the others came in by its check while it was cold, and cannot go back."""
    report = showcase("school-shared-tanks", "lab-tank-fitted")
    lab = next(one for one in report.heaters if one.name == "lab-heater")
    warming = by_the_minute(report, "lab-heater")
    assert lab.settled_pa is not None
    at_once_pa = settled_pa(SharedTanks(report.network), zone_of(report, "lab-heater"))
    assert at_once_pa is not None
    assert 1.03 * at_once_pa < max(warming.pressures_pa(warming.fired[0])) < lab.settled_pa
    assert imbalance(warming) < 1e-6


def test_heaters_that_share_a_zone_fire_together() -> None:
    report = showcase("two-heaters-one-tank")
    warming = warm_up(report, "heater-b")
    assert [one.name for one in warming.fired] == ["heater-b", "heater-a"]
    assert {event.name for event in warming.run.events if event.what is WarmupHappening.BURNER_ON} == {
        "heater-a",
        "heater-b",
    }


def test_heaters_in_one_loop_warm_as_one() -> None:
    warming = warm_up(showcase("clinic-tankless-recirculation"), "heater-1")
    first, second = warming.fired
    assert first.body == second.body
    assert warming.temperatures_k(first) == warming.temperatures_k(second)


def test_loop_water_counts_with_its_heater() -> None:
    loop = "street -> cv -> tee -> heater -> tee2 -> tap.hot\ntee2 -> pump -> store -> heater.return\ntee -> tank"
    plain = "street -> cv -> tee -> heater -> tee2 -> tap.hot\ntee2 -> store\ntee -> tank"
    large = {"tank": "volume: 40 gal"}
    with_loop, without = (warm_up(drawn(runs, **large), "heater") for runs in (loop, plain))
    assert with_loop.run.start_kg == pytest.approx(without.run.start_kg * 130.0 / 50.0, rel=1e-9)
    assert with_loop.run.times_s[-1] == pytest.approx(without.run.times_s[-1] * 2.6, rel=1e-6)


def test_open_heater_gives_its_growth_back_to_the_street() -> None:
    warming = warm_up(drawn("street -> heater -> tap.hot"), "heater")
    assert max(warming.pressures_pa(warming.fired[0])) == pytest.approx(60.0 * PSI)
    assert warming.run.returned_m3 == pytest.approx(plumbnet.check(system(HOUSE)).heaters[0].expansion_m3, rel=1e-9)


def test_height_counts() -> None:
    """20 ft up, 60 psi in the street are 51.3 psi at the heater."""
    warming = warm_up(drawn(FITTED, heater="elevation: 20 ft", tank="volume: 10 gal"), "heater")
    assert warming.pressures_pa(warming.fired[0])[0] / PSI == pytest.approx(60.0 - 20.0 * 0.43353, abs=0.02)


@cache
def at_datum(runs: str) -> HeaterWarmup:
    return warm_up(drawn(runs), "heater")


@pytest.mark.parametrize("height_m", [-20, -90, 200])
def test_datum_may_lie_far_above_or_below_the_house(height_m: int) -> None:
    """90 m below datum 60 psi are less than a vacuum there."""
    names = ("street", "cv", "tee", "heater", "tap", "tank", "relief", "valve")
    runs = f"{FITTED}\nheater.relief -> relief\ntee -> valve -> tee2 -> cv2 -> heater2 -> tap2.hot"
    there = dict.fromkeys((*names, "tee2", "cv2", "heater2", "tap2"), f"elevation: {height_m} m")
    here, moved = at_datum(runs), warm_up(drawn(runs, **there), "heater")
    assert moved.run.times_s == pytest.approx(here.run.times_s, rel=1e-9)
    for one, other in zip(here.fired, moved.fired, strict=True):
        assert moved.pressures_pa(other) == pytest.approx(here.pressures_pa(one), abs=1.0)


def test_relief_valve_closes_a_tenth_below_its_set() -> None:
    warming = warm_up(drawn(HOUSE, heater=RELIEVED[1:-1]), "heater")
    assert warming.pressures_pa(warming.fired[0])[-1] == pytest.approx(135.0 * PSI, rel=1e-6)
    assert warming.outlets == ("heater/relief",)


def test_check_that_needs_a_difference_holds_it() -> None:
    """The tank lies behind a check that opens at 5 psi: the heater stands 5 psi above it."""
    runs = "street -> cv -> tee -> heater -> tap.hot\ntee -> cv2 -> tank"
    report = drawn(runs, cv2="kind: check_valve, opens: 5 psi", tank="volume: 10 gal, precharge: 55 psi")
    warming = warm_up(report, "heater")
    assert report.heaters[0].settled_pa is not None
    assert max(warming.pressures_pa(warming.fired[0])) == pytest.approx(report.heaters[0].settled_pa, rel=1e-6)


def test_minutes_end_it() -> None:
    warming = warm_up(drawn(FITTED), "heater", minutes=2.0)
    assert warming.run.times_s[-1] == 120.0
    assert warming.hot_after_s(warming.fired[0]) is None


REFUSED = {
    "no heater is called boiler": (FITTED, {}, "boiler", {}),
    "heater lacks an input, so nothing says how fast the water warms: add one, such as input: 40000 Btu/h; of a heater "
    "with a coil it is the heat that the coil gives": (
        FITTED,
        {"heater": "kind: storage_heater, volume: 50 gal, setpoint: 140 degF"},
        "heater",
        {},
    ),
    "tankless fires only while water moves through it: with every fixture shut it stays cold, and nothing warms up": (
        "street -> cv -> tankless -> tap.hot",
        {},
        "tankless",
        {},
    ),
    "a warm-up lasts from 0 to 1440 minutes, not nan": (FITTED, {}, "heater", {"minutes": float("nan")}),
    "some of its water takes more than 365 days to its setpoint: look at the input of heater": (
        FITTED,
        {"heater": "kind: storage_heater, volume: 50 gal, setpoint: 140 degF, input: 1 W"},
        "heater",
        {},
    ),
    "some of its water stands at more than 7251.9 psi, and nothing holds that: look at the supplies": (
        "well -> heater -> tap.hot",
        {"well": "kind: well, cut_in: 30 psi, cut_out: 1400 psi, elevation: 20000 ft"},
        "heater",
        {},
    ),
}


def test_heater_of_no_input_at_all_lacks_one_too() -> None:
    with pytest.raises(NoWarmUp, match=r"^heater lacks an input"):
        warm_up(drawn(FITTED, heater="input: 0 W"), "heater")


@pytest.mark.parametrize("words", REFUSED)
def test_what_cannot_be_warmed_up_says_why(words: str) -> None:
    runs, parts, heater, options = REFUSED[words]
    with pytest.raises(NoWarmUp) as caught:
        warm_up(drawn(runs, **parts), heater, **options)
    assert str(caught.value) == words


def test_bracket_is_rigid_walls_and_typical_ones() -> None:
    warming = warm_up(drawn(HOUSE, heater=RELIEVED[1:-1]), "heater")
    rigid, typical = warming.bracket
    assert (rigid.walls, typical.walls) == ("rigid", "typical")
    assert warming.walls_matter
    facts = warming.report.heaters[0].locked
    assert facts is not None
    for end, rise_k in ((rigid, facts.rise_k.rigid), (typical, facts.rise_k.walls)):
        opened = end.run.first(WarmupHappening.OUTLET_OPENS)
        assert opened is not None
        moment = next(each for each in end.run.moments if each.time_s == opened.time_s)
        assert moment.temperatures_k["heater"] - end.run.moments[0].temperatures_k["heater"] == pytest.approx(
            rise_k, rel=0.02
        )


def test_walls_do_not_matter_where_a_tank_yields() -> None:
    warming = warm_up(drawn(FITTED, tank="volume: 10 gal"), "heater")
    assert not warming.walls_matter


def test_greatest_flow_with_rigid_walls_is_the_published_one_of_the_heat_that_reaches_the_water() -> None:
    warming = warm_up(drawn(HOUSE, heater=RELIEVED[1:-1]), "heater")
    assert warming.outlets_of_both == ("heater/relief",)
    published = warming.efficiency * warming.published_m3_s("heater/relief")
    assert warming.rigid.discharge_m3_s("heater/relief") == pytest.approx(published, rel=0.01)
    assert warming.discharge_m3_s("heater/relief") < 0.97 * published


def test_each_heater_is_told_the_time_of_its_own_setpoint() -> None:
    """As much water behind half the input takes twice as long."""
    runs = f"{FITTED}\ntee -> heater2 -> tap2.hot"
    warming = warm_up(drawn(runs, heater2="input: 20000 Btu/h", tank="volume: 20 gal"), "heater2")
    slow, fast = (warming.hot_after_s(one) for one in warming.fired)
    assert slow is not None
    assert fast is not None
    assert slow == pytest.approx(2.0 * fast, rel=1e-3)


def test_both_ends_of_the_bracket_end_after_the_same_minutes() -> None:
    warming = warm_up(drawn(FITTED), "heater", minutes=2.0)
    assert [end.run.times_s[-1] for end in warming.bracket] == [120.0, 120.0]


STORE = "{kind: storage_heater, volume: 100 gal, setpoint: 140 degF, input: 100000 Btu/h, relief: {pressure: 150 psi}}"
TEMPERED = """plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  cv: check_valve
  split: tee
  tank: {kind: expansion_tank, volume: 20 gal, precharge: 60 psi}
  back: tee
  heater: HEATER
  join: tee
  mixer: {kind: mixing_valve, outlet: 120 degF}
  far: tee
  shower: fixture
  pump: circulator
runs:
  - street -> cv -> split -> back -> heater -> join -> mixer.hot
  - split -> tank
  - split -> mixer.cold
  - {path: mixer.mixed -> far, volume: 80 gal}
  - far -> shower.hot
  - far -> pump -> back
"""
LODGES = {
    "a store": (TEMPERED.replace("HEATER", STORE), (100.0, 0.0)),
    "a tankless heater": (
        TEMPERED.replace("HEATER", "{kind: tankless_heater, volume: 1 gal, setpoint: 140 degF, input: 100000 Btu/h}"),
        (1.0, 0.0),
    ),
    "two stores": (
        TEMPERED.replace("HEATER", f"{STORE}\n  other: {STORE}") + "  - back -> other -> join\n",
        (100.0, 100.0),
    ),
}
"""A loop of 80 gal behind a mixing valve, at 120 degF, and what its heaters hold, in gal."""


@pytest.mark.parametrize("lodge", LODGES)
def test_loop_behind_a_mixing_valve_warms_to_what_the_valve_lets_it_come_to(lodge: str) -> None:
    text, gallons = LODGES[lodge]
    report = plumbnet.check(text.encode())
    warming = by_the_minute(report, "heater")
    facts = report.heaters[0]
    assert facts.settled_pa is not None
    assert max(warming.pressures_pa(warming.fired[0])) == pytest.approx(facts.settled_pa, rel=1e-6)
    assert imbalance(warming) < 1e-6
    reached, hot = (
        warming.run.first(what) for what in (WarmupHappening.MIXED_REACHED, WarmupHappening.SETPOINT_REACHED)
    )
    assert reached is not None
    assert hot is not None
    assert reached.name == "mixer"
    assert reached.temperature_k == pytest.approx(322.0389, abs=1e-3)
    useful = 0.8 * 100_000 * sum(gallons_of > 0.0 for gallons_of in gallons)  # Btu/h; by head, at 8.3 Btu/gal degF
    assert reached.time_s / 3600.0 == pytest.approx((sum(gallons) + 80.0) * 70.0 * 8.3 / useful, rel=0.01)
    assert (hot.time_s - reached.time_s) / 3600.0 == pytest.approx(sum(gallons) * 20.0 * 8.2 / useful, rel=0.02)
