"""A plant from one moment to the next."""

from dataclasses import replace

import pytest

from plumbnet.physics.equilibrium.equilibrium import OneWayGate
from plumbnet.physics.fluids.water import enthalpy_j_kg, specific_volume_m3_kg
from plumbnet.physics.vessels.tank import Tank
from plumbnet.physics.vessels.walls import Shell
from plumbnet.physics.warmup.coupled_pressures import Basin, CoupledOutlet
from plumbnet.physics.warmup.heated_bodies import Body, Burner
from plumbnet.physics.warmup.warmup_result import Books, Moment
from plumbnet.physics.warmup.warmup_step import Plant, PlantState, advanced, reseated

FILL = 5.0e5
COLD = 283.15
RELIEF = CoupledOutlet(name="relief", opens_abs_pa=1.1e6, blowdown_pa=1e5)


def body(zone: int = 0) -> Body:
    burner = Burner(name="heater", input_w=10_000.0, hot_k=333.15)
    return Body(name="heater", burners=(burner,), shells={zone: Shell(0.2)}, cold_k=COLD, fill_abs_pa=FILL)


def plant(outlet: CoupledOutlet = RELIEF) -> Plant:
    return Plant({0: Basin(static_abs_pa=FILL, cold_k=COLD, outlets=(outlet,))}, (), (body(),))


def test_nothing_moves_while_nothing_fires() -> None:
    start = plant().start
    after = advanced(plant(), start, 60.0)
    assert after.time_s == 60.0
    assert after.warm[0].temperature_k == COLD
    assert after.pressures_abs_pa == {0: FILL}


def test_lit_burner_warms_its_body() -> None:
    after = advanced(plant(), plant().start.with_burner("heater", lit=True), 60.0)
    assert after.books.heat_j == 480_000.0
    assert after.warm[0].temperature_k - COLD == pytest.approx(480_000.0 / (199.98 * 4190.0), rel=0.01)
    assert after.pressures_abs_pa[0] > FILL


def test_open_outlet_spills_and_closes_at_its_lower_pressure() -> None:
    hot = advanced(plant(), plant().start.with_burner("heater", lit=True).with_open(0), 1000.0)
    assert hot.spilling == {0}
    assert hot.pressures_abs_pa == {0: 1.1e6}
    shut = reseated(plant(), hot.with_burner("heater", lit=False), frozenset({0}))
    assert shut.open == frozenset()
    assert shut.pressures_abs_pa == {0: pytest.approx(1.0e6)}
    assert shut.books.lost_m3["relief"] > hot.books.lost_m3["relief"]
    assert shut.time_s == hot.time_s


def test_street_gives_back_what_it_took() -> None:
    street = CoupledOutlet(name="street", opens_abs_pa=FILL, gives_back=True)
    held = plant(street)
    hot = advanced(held, held.start.with_burner("heater", lit=True), 1000.0)
    assert hot.away_m3[0] > 0.0
    assert hot.books.lost_m3 == {}


#   0 >- gate -> 1, the relief valve in 1
def test_water_let_out_beyond_a_gate_comes_from_the_heated_water() -> None:
    basins = {0: Basin(static_abs_pa=FILL, cold_k=COLD), 1: Basin(static_abs_pa=FILL, cold_k=COLD, outlets=(RELIEF,))}
    joint = Plant(basins, (OneWayGate(0, 1),), (body(),))
    hot = advanced(joint, joint.start.with_burner("heater", lit=True).with_open(1), 1000.0)
    assert hot.pressures_abs_pa == {0: 1.1e6, 1: 1.1e6}
    assert hot.warm[0].mass_kg == pytest.approx(joint.start.warm[0].mass_kg - hot.books.lost_kg["relief"], rel=1e-12)
    assert sum(hot.away_m3.values()) == pytest.approx(0.0, abs=1e-12)
    shut = reseated(joint, hot, frozenset({1}))
    assert shut.pressures_abs_pa[1] == pytest.approx(1.0e6)


def test_moment_tells_the_state() -> None:
    tank = Tank(0.02, charge_abs_pa=FILL, start_abs_pa=FILL)
    held = Plant({0: Basin(static_abs_pa=FILL, cold_k=COLD, tanks={"tank": tank}, outlets=(RELIEF,))}, (), (body(),))
    lit = held.start.with_burner("heater", lit=True)
    now = replace(lit, time_s=60.0, pressures_abs_pa={0: 2 * FILL}, books=Books(lost_m3={"relief": 0.25}))
    told = Moment(60.0, {"heater": COLD}, {0: 2 * FILL}, frozenset({"heater"}), {"relief": 0.25}, {"tank": 0.01})
    assert now.moment(held) == told
    assert now.with_burner("heater", lit=False).firing == frozenset()


#   0 with its relief valve open;   1 with its own shut; nothing between them
def test_open_outlet_lets_out_the_water_of_its_own_zone_alone() -> None:
    basins = {zone: Basin(static_abs_pa=FILL, cold_k=COLD, outlets=(RELIEF,)) for zone in (0, 1)}
    apart = Plant(basins, (), (body(0), body(1)))
    hot = advanced(apart, apart.start.with_burner("heater", lit=True).with_open(0), 1000.0)
    lost = [then.mass_kg - now.mass_kg for then, now in zip(apart.start.warm, hot.warm, strict=True)]
    assert lost == [pytest.approx(hot.books.lost_kg["relief"], rel=1e-9), 0.0]
    assert lost[0] > 0.1


def enthalpy_j(now: PlantState) -> float:
    return sum(one.enthalpy_j for one in now.warm)


def test_books_of_locked_water_that_loses_heat_add_up_over_two_stretches() -> None:
    leaking = replace(body(), loss_w_k=100.0, room_k=273.15)  # 100 W for each kelvin above 0 degC
    locked = Plant({0: Basin(static_abs_pa=FILL, cold_k=COLD)}, (), (leaking,))
    one = advanced(locked, locked.start.with_burner("heater", lit=True), 60.0)
    two = advanced(locked, one, 30.0)
    assert one.books.shed_j == pytest.approx(60.0 * 100.0 * 10.0, rel=1e-12)
    assert two.books.shed_j == pytest.approx(60_000.0 + 30.0 * 100.0 * (one.warm[0].temperature_k - 273.15), rel=1e-12)
    assert two.books.heat_j == pytest.approx(90.0 * 8000.0, rel=1e-12)
    # Walls are rigid, so that the integral of V dp is V times the rise.
    assert two.books.pressed_j == pytest.approx(0.2 * (two.pressures_abs_pa[0] - FILL), rel=1e-6)
    given = two.books.heat_j + two.books.pressed_j - two.books.shed_j
    assert enthalpy_j(two) - enthalpy_j(locked.start) == pytest.approx(given, rel=1e-9)
    assert two.pressures_abs_pa[0] > one.pressures_abs_pa[0] > FILL


def test_outlet_that_lets_out_nothing_more_is_told_to_spill_no_more() -> None:
    hot = advanced(plant(), plant().start.with_burner("heater", lit=True).with_open(0), 1000.0)
    still = advanced(plant(), hot.with_burner("heater", lit=False), 60.0)
    assert hot.spilling == {0}
    assert still.spilling == frozenset()
    assert still.books.lost_m3 == hot.books.lost_m3


#   0 >- gate -> 1, a heater in each, the relief valve in 1
def test_outlet_takes_alike_of_all_warm_water_of_its_pool() -> None:
    basins = {0: Basin(static_abs_pa=FILL, cold_k=COLD), 1: Basin(static_abs_pa=FILL, cold_k=COLD, outlets=(RELIEF,))}
    joint = Plant(basins, (OneWayGate(0, 1),), (body(0), replace(body(1), shells={1: Shell(0.3)})))
    full = [one.mass_kg for one in joint.start.warm]
    first = advanced(joint, joint.start.with_burner("heater", lit=True).with_open(1), 500.0)
    hot = advanced(joint, first, 500.0)
    gone = [before - one.mass_kg for before, one in zip(full, hot.warm, strict=True)]
    assert hot.books.lost_kg == {"relief": pytest.approx(sum(gone), rel=1e-9)}
    assert gone[0] > 0.1
    assert gone[1] > 0.1
    assert hot.books.lost_m3["relief"] > first.books.lost_m3["relief"] > 0.0
    spread = [mass / volume for mass, volume in zip(gone, (0.2, 0.3), strict=True)]
    assert spread[0] == pytest.approx(spread[1], rel=0.03)  # by volume, and the smaller store is the hotter one
    given = hot.books.heat_j + hot.books.pressed_j - hot.books.carried_j
    assert enthalpy_j(hot) - enthalpy_j(joint.start) == pytest.approx(given, rel=1e-9)


def test_what_is_let_out_is_counted_by_mass_by_room_and_by_its_heat() -> None:
    hot = advanced(plant(), plant().start.with_burner("heater", lit=True).with_open(0), 1000.0)
    mass, warmth = hot.books.lost_kg["relief"], hot.warm[0].temperature_k
    pressed = FILL + hot.warm[0].rises_pa[0]
    assert hot.books.lost_m3["relief"] == pytest.approx(
        mass * specific_volume_m3_kg(warmth, pressure_abs_pa=pressed), rel=1e-9
    )
    assert hot.books.carried_j == pytest.approx(mass * enthalpy_j_kg(warmth, pressure_abs_pa=pressed), rel=1e-9)


def test_icy_water_that_shrinks_draws_cold_water_in() -> None:
    icy = replace(body(), cold_k=274.15)
    fed = Plant({0: Basin(static_abs_pa=FILL, cold_k=274.15)}, (), (icy,))
    after = advanced(fed, fed.start.with_burner("heater", lit=True), 210.0)  # 200 kg by 2 K
    cold_m3_kg = specific_volume_m3_kg(274.15, pressure_abs_pa=FILL)
    before = after.warm[0].mass_kg - after.books.fed_kg
    assert before == pytest.approx(0.2 / cold_m3_kg, rel=1e-12)
    assert after.books.brought_j == pytest.approx(
        after.books.fed_kg * enthalpy_j_kg(274.15, pressure_abs_pa=FILL), rel=1e-12
    )
    unfed_k = 274.15 + 210.0 * 8000.0 / (before * 4211.0)  # cp at 2 degC and 5 bar by IAPWS-95: 4.211 kJ/kg K
    wanting = 0.2 - before * specific_volume_m3_kg(unfed_k, pressure_abs_pa=FILL)
    assert after.books.fed_kg == pytest.approx(wanting / cold_m3_kg, rel=1e-2)
    assert after.books.fed_kg > 0.01


#   0, its relief valve set high >- gate -> 1, its own set lower; both stand open
def test_of_two_open_outlets_the_lower_lets_out() -> None:
    high = replace(RELIEF, name="high", opens_abs_pa=1.2e6)
    basins = {
        0: Basin(static_abs_pa=FILL, cold_k=COLD, outlets=(high,)),
        1: Basin(static_abs_pa=FILL, cold_k=COLD, outlets=(RELIEF,)),
    }
    joint = Plant(basins, (OneWayGate(0, 1),), (body(),))
    hot = advanced(joint, joint.start.with_burner("heater", lit=True).with_open(0).with_open(1), 1000.0)
    assert set(hot.books.lost_kg) == set(hot.books.lost_m3) == {"relief"}
    assert hot.pressures_abs_pa == {0: 1.1e6, 1: 1.1e6}


#   0, heated >- gate -> 1 with the tank
def test_growth_passes_from_the_heater_s_zone_to_the_tank_s_in_every_stretch() -> None:
    tank = Tank(0.02, charge_abs_pa=FILL, start_abs_pa=FILL)
    basins = {
        0: Basin(static_abs_pa=FILL, cold_k=COLD),
        1: Basin(static_abs_pa=FILL, cold_k=COLD, tanks={"tank": tank}),
    }
    joint = Plant(basins, (OneWayGate(0, 1),), (body(),))
    now = joint.start.with_burner("heater", lit=True)
    for _ in range(2):
        now = advanced(joint, now, 500.0)
        warm = now.warm[0]
        grown = warm.mass_kg * specific_volume_m3_kg(warm.temperature_k, pressure_abs_pa=FILL) - 0.2
        assert now.away_m3 == pytest.approx({0: grown, 1: -grown}, rel=1e-9)
        assert tank.uptake_m3(now.pressures_abs_pa[1]) == pytest.approx(grown, rel=1e-9)


#   0, open to the street;   1, on its own
def test_store_on_its_own_is_fed_where_one_on_the_street_draws_its_own_water_back() -> None:
    street = CoupledOutlet(name="street", opens_abs_pa=FILL, gives_back=True)
    basins = {
        0: Basin(static_abs_pa=FILL, cold_k=274.15, outlets=(street,)),
        1: Basin(static_abs_pa=FILL, cold_k=274.15),
    }
    icy = Plant(basins, (), tuple(replace(body(zone), cold_k=274.15) for zone in (0, 1)))
    after = advanced(icy, icy.start.with_burner("heater", lit=True), 210.0)  # 200 kg by 2 K: both shrink
    gained = [one.mass_kg - before.mass_kg for one, before in zip(after.warm, icy.start.warm, strict=True)]
    assert gained == [0.0, pytest.approx(after.books.fed_kg, rel=1e-6)]
    assert after.books.fed_kg > 0.01
