"""Closed heaters left as they are."""

import math

import pytest
from conftest import PSI, system

import plumbnet
from plumbnet.analysis.warmup.heater_warmup import warm_up
from plumbnet.physics.fluids.water import ATMOSPHERE_PA
from plumbnet.physics.vessels.locked_volume import Climb, LockedVolume, discharged_m3, locked_rise_k
from plumbnet.physics.vessels.walls import Shell, heater_shell
from plumbnet.physics.warmup.warmup_result import WarmupHappening
from plumbnet.rules.facts.heater_answer import HeaterFacts, LockedFacts

HOUSE = "street -> cv -> tee -> heater -> tap.hot"
RELIEVED = "relief: {pressure: 150 psi}"
GALLONS_50 = 50 * 231 * 0.0254**3
OPENS = ATMOSPHERE_PA + 150.0 * PSI
COLD, HOT = 283.15, 333.15


def heater(runs: str = HOUSE, **parts: str) -> HeaterFacts:
    return plumbnet.check(system(runs, **parts)).heaters[0]


def locked(runs: str = HOUSE, **parts: str) -> LockedFacts:
    found = heater(runs, **parts).locked
    assert found is not None
    return found


def known(shell: Shell) -> LockedVolume:
    return LockedVolume(heated=shell, cold_k=COLD, start_abs_pa=ATMOSPHERE_PA + 60.0 * PSI)


def test_rise_and_discharge_are_those_of_locked_water() -> None:
    found = locked(heater=RELIEVED)
    rigid, walls = (Climb(known(shell(GALLONS_50)), OPENS, HOT) for shell in (Shell, heater_shell))
    assert found.outlet == "heater/relief"
    assert found.opens_pa == pytest.approx(150.0 * PSI)
    assert found.rise_k.rigid == pytest.approx(locked_rise_k(rigid), rel=1e-6)
    assert found.rise_k.walls == pytest.approx(locked_rise_k(walls), rel=1e-6)
    assert found.discharged_m3 is not None
    assert found.discharged_m3.rigid == pytest.approx(discharged_m3(rigid), rel=1e-6)
    assert found.discharged_m3.walls == pytest.approx(discharged_m3(walls), rel=1e-6)


def test_firing_by_hand() -> None:
    """189.2 kg, 4.19 kJ/kg K, by the rise, from 40000 Btu/h of which 80 % reach the water."""
    found = locked(heater=RELIEVED)
    assert found.firing_s is not None
    assert found.firing_s.rigid == pytest.approx(189.2 * 4190.0 * found.rise_k.rigid / (11_722.8 * 0.8), rel=2e-3)


def test_warm_up_lifts_the_valve_after_the_rise_and_time_of_the_bracket_s_end_with_walls() -> None:
    report = plumbnet.check(system(HOUSE, heater=RELIEVED))
    run = warm_up(report, "heater").run
    found, opened = report.heaters[0].locked, run.first(WarmupHappening.OUTLET_OPENS)
    assert found is not None
    assert found.firing_s is not None
    assert opened is not None
    assert opened.time_s == pytest.approx(found.firing_s.walls, rel=3e-3)


def test_input_not_given_leaves_the_time_open() -> None:
    bare = "kind: storage_heater, volume: 50 gal, setpoint: 140 degF, relief: {pressure: 150 psi}"
    assert locked(heater=bare).firing_s is None


SHARED = "street -> cv -> tee -> heater -> tap.hot\ntee -> heater2 -> tap2.hot"


def test_burners_of_heaters_that_share_water_fire_together() -> None:
    """Twice the water, twice the burners: as long as one alone; by 100/50 : 50000/40000 longer with a small one."""
    alone, both = locked(heater=RELIEVED).firing_s, locked(SHARED, heater=RELIEVED).firing_s
    small = locked(SHARED, heater=RELIEVED, heater2="input: 10000 Btu/h").firing_s
    assert alone is not None
    assert both is not None
    assert small is not None
    assert both.rigid == pytest.approx(alone.rigid, rel=1e-6)
    assert small.rigid == pytest.approx(alone.rigid * 1.6, rel=1e-6)


@pytest.mark.parametrize("unknown", ["heater", "heater2"])
def test_one_input_not_given_of_two_leaves_the_time_open_for_both(unknown: str) -> None:
    bare = "kind: storage_heater, volume: 50 gal, setpoint: 140 degF, relief: {pressure: 150 psi}"
    parts = {"heater": RELIEVED, "heater2": RELIEVED, unknown: bare}
    found = [each.locked for each in plumbnet.check(system(SHARED, **parts)).heaters]
    assert [each is not None and each.firing_s for each in found] == [None, None]
    assert [each is not None and each.rise_k.rigid > 0.0 for each in found] == [True, True]


def test_burner_that_gives_nothing_never_lifts_a_valve() -> None:
    assert locked(heater=f"{RELIEVED}, input: 0 W").firing_s is None


@pytest.mark.parametrize("mixed", ["heater", "heater2"])
def test_antifreeze_in_one_of_two_heaters_that_share_water_leaves_both_open(mixed: str) -> None:
    pytest.importorskip("CoolProp")
    antifreeze = {mixed: f"{RELIEVED}, antifreeze: {{glycol: propylene, share: 30 %}}"}
    heaters = plumbnet.check(system(SHARED, **{"heater": RELIEVED, "heater2": RELIEVED, **antifreeze})).heaters
    assert [each.verdict.value for each in heaters] == ["trapped", "trapped"]
    assert [each.locked for each in heaters] == [None, None]


def test_sealed_heater_is_asked_for_the_pressure_it_is_tested_to() -> None:
    found = locked()
    assert found.outlet is None
    assert found.opens_pa == pytest.approx(300.0 * PSI)
    assert found.discharged_m3 is None
    assert found.rise_k.walls > locked(heater=RELIEVED).rise_k.walls


def test_open_and_controlled_heaters_have_no_such_end() -> None:
    assert heater("street -> heater -> tap.hot").locked is None
    assert heater(f"{HOUSE}\ntee -> tank", tank="volume: 10 gal").locked is None


def test_tank_too_small_puts_it_off_and_takes_its_part() -> None:
    small = f"{HOUSE}\ntee -> tank"
    found, bare = locked(small, heater=RELIEVED, tank="volume: 0.5 gal"), locked(heater=RELIEVED)
    taken = 0.5 * GALLONS_50 / 50 * (1.0 - (60.0 * PSI + ATMOSPHERE_PA) / OPENS)
    assert found.rise_k.rigid > bare.rise_k.walls
    assert found.discharged_m3 is not None
    assert bare.discharged_m3 is not None
    assert bare.discharged_m3.rigid - found.discharged_m3.rigid == pytest.approx(taken, rel=1e-3)


def test_nothing_lifts_where_a_tank_holds_it_above_the_limit_but_below_the_valve() -> None:
    found = heater(f"{HOUSE}\ntee -> tank", heater=RELIEVED, tank="volume: 3 gal")
    assert found.verdict.value == "trapped"
    assert found.settled_pa is not None
    assert found.locked is None


def test_typical_walls_may_take_what_rigid_ones_cannot() -> None:
    found = locked(heater=f"{RELIEVED}, setpoint: 60 degF")
    assert found.rise_k.rigid < 60.0
    assert found.rise_k.walls == math.inf
    assert found.firing_s is not None
    assert found.firing_s.walls == math.inf
    assert found.discharged_m3 is not None
    assert found.discharged_m3.walls == 0.0


def test_street_that_takes_it_back_late_wastes_nothing() -> None:
    runs = "street -> prv -> tee -> heater -> tap.hot"
    found = locked(runs, street="pressure: 120 psi", prv="set: 50 psi, bypass: true", heater=RELIEVED)
    assert found.outlet == "street"
    assert found.discharged_m3 is None


def test_plastic_pipe_leaves_the_answer_as_it_is() -> None:
    """Ten feet of it hold 0.2 gal: rigid it stiffens nothing, and by its own stretch it would be a control."""
    layout = plumbnet.read_bytes(
        b"""
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  check: check_valve
  heater: {kind: storage_heater, volume: 50 gal, setpoint: 140 degF, relief: {pressure: 150 psi}}
  tap: fixture
runs:
  - street -> check -> heater
  - {path: heater -> tap.hot, pipe: pex 3/4 in, length: 200 ft}
"""
    )
    found = plumbnet.check(layout).heaters[0].locked
    assert found is not None
    assert found.rise_k.rigid < 4.0


@pytest.mark.parametrize("above_pa", [0.0, 4e-9, 1e-6])
def test_outlet_that_opens_a_hair_above_the_fill_opens_at_once(above_pa: float) -> None:
    found = locked(
        "street -> cv -> heater -> tap.hot\nheater.relief -> relief", relief=f"pressure: {60 * PSI + above_pa!r} Pa"
    )
    assert found.outlet == "relief"
    assert found.rise_k.rigid < 1e-6
    assert found.discharged_m3 is not None
    assert found.discharged_m3.rigid == pytest.approx(0.0032, rel=0.05)


def test_tank_below_the_heater_takes_what_it_takes_at_the_pressure_that_stands_there_when_the_valve_lifts() -> None:
    """10 m up the valve lifts at 150 psi; in the cellar the tank stands at 164.2 psi then, and at 60 when cold."""
    high, column = f"elevation: 10 m, {RELIEVED}", 10 * 9806.65
    small = f"{HOUSE}\ntee -> tank"
    found, bare = locked(small, heater=high, tank="volume: 0.5 gal"), locked(heater=high)
    taken = 0.5 * GALLONS_50 / 50 * (1.0 - (60.0 * PSI + ATMOSPHERE_PA) / (OPENS + column))
    assert found.discharged_m3 is not None
    assert bare.discharged_m3 is not None
    assert bare.discharged_m3.rigid - found.discharged_m3.rigid == pytest.approx(taken, rel=1e-3)


def test_walls_of_a_heater_on_the_street_do_not_yield_for_the_store_shut_in_between_two_checks() -> None:
    """The store grows until it pushes through cv3, 20 psi above the street of 70; its own walls count as rigid."""
    found = locked(
        "street -> tee1 -> heater -> tee2 -> tap.hot\ntee2 -> pump -> cv2 -> store -> cv3 -> tee1\n"
        "heater.relief -> relief",
        street="pressure: 70 psi",
        store="rating: 75 psi",
        cv3="opens: 20 psi",
    )
    assert found.outlet == "street"
    assert found.opens_pa == pytest.approx(90 * PSI)
    store = LockedVolume(heated=Shell(80 * GALLONS_50 / 50), cold_k=COLD, start_abs_pa=ATMOSPHERE_PA + 70.0 * PSI)
    climb = Climb(store, ATMOSPHERE_PA + 90.0 * PSI, HOT)
    assert found.rise_k.rigid == found.rise_k.walls == pytest.approx(locked_rise_k(climb))
