"""Pressures of joined zones at given temperatures."""

import pytest

from plumbnet.physics.equilibrium.equilibrium import OneWayGate
from plumbnet.physics.fluids.water import specific_volume_m3_kg
from plumbnet.physics.vessels.locked_volume import Climb, LockedVolume, locked_rise_k
from plumbnet.physics.vessels.tank import Tank
from plumbnet.physics.vessels.walls import Shell, heater_shell
from plumbnet.physics.warmup.coupled_pressures import Basin, CoupledOutlet, CoupledStanding, Coupling
from plumbnet.physics.warmup.heated_bodies import Body, Warm

FILL = 5.0e5
COLD = 283.15


def warm(kelvin: float, zone: int = 0, shell: Shell | None = None) -> Warm:
    body = Body(name=f"heater {zone}", burners=(), shells={zone: shell or Shell(0.2)}, cold_k=COLD, fill_abs_pa=FILL)
    cold = body.cold
    return cold.heated(cold.mass_kg * 4190.0 * kelvin, {zone: 0.0})


def stand(
    *waters: Warm, gates: tuple[OneWayGate[int], ...] = (), opened: dict[int, float] | None = None, **zones: Basin
) -> CoupledStanding:
    basins = {int(name.removeprefix("z")): one for name, one in zones.items()}
    joint = Coupling(basins, gates, waters, dict.fromkeys(basins, 0.0), opened or {})
    return joint.stand(dict.fromkeys(basins, FILL))


def basin(*outlets: CoupledOutlet, **tanks: Tank) -> Basin:
    return Basin(static_abs_pa=FILL, cold_k=COLD, outlets=outlets, tanks=tanks)


@pytest.mark.parametrize("shell", [Shell(0.2), heater_shell(0.2)])
def test_stiff_zone_stands_where_locked_water_does(shell: Shell) -> None:
    water = warm(5.0, shell=shell)
    found = stand(water, z0=basin())
    locked = LockedVolume(heated=shell, cold_k=COLD, start_abs_pa=FILL)
    known_k = locked_rise_k(Climb(locked, found.pressures_abs_pa[0], water.temperature_k + 1.0))
    assert known_k == pytest.approx(water.temperature_k - COLD, rel=1e-7)
    assert found.stiff_pa[0] == pytest.approx(found.pressures_abs_pa[0] - FILL, rel=1e-12)


def test_guess_changes_nothing() -> None:
    water = warm(5.0)
    joint = Coupling({0: basin()}, (), (water,), {0: 0.0}, {})
    near, far = (joint.stand({0: guess}).pressures_abs_pa[0] for guess in (FILL, 2.0e7))
    assert near == pytest.approx(far, rel=1e-9)


def test_tank_makes_a_zone_soft() -> None:
    tank = Tank(0.02, charge_abs_pa=FILL, start_abs_pa=FILL)
    found = stand(warm(50.0), z0=basin(tank=tank))
    assert found.stiff_pa == {0: None}
    assert FILL < found.pressures_abs_pa[0] < 2.0 * FILL


def test_full_tank_leaves_it_stiff_from_where_it_was_full() -> None:
    tank = Tank(0.02, charge_abs_pa=FILL, start_abs_pa=FILL, most_m3=1e-4)
    found = stand(warm(20.0), z0=basin(tank=tank))
    stiff = found.stiff_pa[0]
    assert stiff is not None
    assert found.pressures_abs_pa[0] == pytest.approx(tank.full_abs_pa + stiff)


#   0 >- gate -> 1
def test_locked_water_pushes_through_a_gate_into_what_it_can_press() -> None:
    alone = stand(warm(5.0), z0=basin()).pressures_abs_pa[0]
    more = Basin(static_abs_pa=FILL, cold_k=COLD, unheated=Shell(0.2))
    both = stand(warm(5.0), gates=(OneWayGate(0, 1),), z0=basin(), z1=more).pressures_abs_pa
    assert both[0] == pytest.approx(both[1])
    assert both[0] - FILL == pytest.approx((alone - FILL) / 2.0, rel=0.05)
    back = stand(warm(5.0), gates=(OneWayGate(1, 0),), z0=basin(), z1=more).pressures_abs_pa
    assert back == {0: pytest.approx(alone), 1: FILL}


def test_open_outlet_holds_its_pressure_and_the_pool_says_what_must_go() -> None:
    relief = CoupledOutlet(name="relief", opens_abs_pa=1.1e6, blowdown_pa=1e5)
    found = stand(warm(50.0), z0=basin(relief), opened={0: 1.1e6})
    assert found.pressures_abs_pa[0] == 1.1e6
    assert sum(pool.discharged_m3 for pool in found.pools) == pytest.approx(0.0034, rel=0.1)


def test_outlet_that_is_shut_lets_the_pressure_pass() -> None:
    relief = CoupledOutlet(name="relief", opens_abs_pa=1.1e6, blowdown_pa=1e5)
    assert stand(warm(50.0), z0=basin(relief)).pressures_abs_pa[0] > 1.1e6


def test_street_holds_its_zone() -> None:
    street = CoupledOutlet(name="street", opens_abs_pa=FILL, gives_back=True)
    found = stand(warm(50.0), z0=basin(street))
    assert found.pressures_abs_pa == {0: FILL}
    assert found.stiff_pa == {0: None}


def test_walls_that_grow_more_than_the_water_leave_the_pressure_where_it_was() -> None:
    swelling = Shell(0.2, expansion_per_k=5e-3)
    found = stand(warm(5.0, shell=swelling), z0=basin())
    assert found.pressures_abs_pa == {0: FILL}
    assert found.stiff_pa == {0: 0.0}


def test_lowest_outlet_opens_and_closes_no_lower_than_the_supply() -> None:
    low = CoupledOutlet(name="low", opens_abs_pa=FILL + 1e4, blowdown_pa=5e4)
    held = basin(CoupledOutlet(name="high", opens_abs_pa=2e6), low)
    assert held.outlet is low
    assert held.opens_abs_pa == FILL + 1e4
    assert held.reseats_abs_pa == FILL
    assert held.held_by is None


def test_tanks_of_a_zone_take_together() -> None:
    pair = {"one": Tank(0.02, charge_abs_pa=FILL, start_abs_pa=FILL), "two": Tank(0.04, FILL, FILL)}
    assert basin(**pair).taken_m3(2.0 * FILL) == pytest.approx(0.03)  # the pressure doubles: half of the gas is left
    assert basin(**pair).taken_m3(FILL) == 0.0


#   0 >- gate -> 1, the tank in 1
def test_water_that_shrinks_beyond_a_gate_makes_no_room_for_what_grows_before_it() -> None:
    tank = Tank(0.02, charge_abs_pa=FILL, start_abs_pa=FILL)
    icy = Body(name="icy", burners=(), shells={1: Shell(5.0)}, cold_k=274.15, fill_abs_pa=FILL).cold
    shrunk = icy.heated(icy.mass_kg * 4200.0 * 2.0, {1: 0.0})
    assert shrunk.volume_m3(1) < 5.0
    gates = (OneWayGate(0, 1),)
    both = stand(warm(20.0), shrunk, gates=gates, z0=basin(), z1=basin(tank=tank))
    without = stand(warm(20.0), gates=gates, z0=basin(), z1=basin(tank=tank))
    assert both.pressures_abs_pa == pytest.approx(without.pressures_abs_pa, rel=1e-12)
    assert both.pressures_abs_pa[1] > FILL


@pytest.mark.parametrize("rise_pa", [None, 0.5, 1.0e6])
@pytest.mark.parametrize("tanks", [{}, {"tank": Tank(0.02, charge_abs_pa=FILL, start_abs_pa=FILL)}])
@pytest.mark.parametrize("away_m3", [{}, {0: 0.001}])
def test_outgrowth_is_water_less_walls_and_less_what_has_passed_on(
    rise_pa: float | None, tanks: dict[str, Tank], away_m3: dict[int, float]
) -> None:
    water = warm(40.0, shell=Shell(0.2, 1e-9, 36e-6))
    pipes = Basin(static_abs_pa=FILL, cold_k=COLD, tanks=tanks, unheated=Shell(0.05, 3e-10, 5e-5))
    found = Coupling({0: pipes}, (), (water,), away_m3, {}).excess_m3(0, rise_pa)
    rise = rise_pa or 0.0
    cold_before, cold_now, hot = (
        specific_volume_m3_kg(kelvin, pressure_abs_pa=pressure)
        for kelvin, pressure in ((COLD, FILL), (COLD, FILL + rise), (water.temperature_k, FILL + rise))
    )
    warmth = 0.0 if rise_pa is None or tanks else 36e-6 * (water.temperature_k - COLD)  # with a tank walls are rigid
    heated = water.mass_kg * hot - 0.2 * (1 + warmth + 1e-9 * rise)
    unheated = 0.05 * cold_now / cold_before - 0.05 * (1 + 3e-10 * rise)  # cold: no warmth widens it
    assert found == pytest.approx(heated + unheated - away_m3.get(0, 0.0), abs=1e-14)


#   a relief valve that stands open holds the pressure just where a tank begins to take, or where it is full
def test_tank_yields_from_where_it_opens_and_no_more_where_it_is_full() -> None:
    relief = CoupledOutlet(name="relief", opens_abs_pa=1.1e6)
    opening = Tank(0.02, charge_abs_pa=1.1e6, start_abs_pa=FILL)
    full = Tank(0.002, charge_abs_pa=5.5e5, start_abs_pa=FILL, most_m3=0.001)
    assert (opening.opens_abs_pa, full.full_abs_pa) == (1.1e6, 1.1e6)
    soft, stiff = (stand(warm(50.0), z0=basin(relief, tank=one), opened={0: 1.1e6}) for one in (opening, full))
    assert soft.stiff_pa == {0: None}
    assert stiff.stiff_pa == {0: 0.0}


def test_water_of_a_zone_that_yields_is_taken_as_it_was_filled() -> None:
    assert CoupledStanding({0: 6e5, 1: 5e5}, {0: 1e5, 1: None}, ()).rises_pa([0, 1]) == {0: 1e5, 1: 0.0}


def test_unheated_water_is_taken_at_its_own_fill_where_that_is_known() -> None:
    assert Basin(static_abs_pa=5e5, cold_k=COLD, fill_abs_pa=FILL).water_abs_pa(1e5) == FILL + 1e5
    assert Basin(static_abs_pa=5e5, cold_k=COLD).water_abs_pa(1e5) == 6e5
