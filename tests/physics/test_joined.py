"""Pressures of joined zones at given temperatures."""

import pytest

from plumbnet.physics.heating import Body, Warm
from plumbnet.physics.joined import Basin, Joint, Outlet, Standing
from plumbnet.physics.locked import Locked
from plumbnet.physics.settle import OneWayGate
from plumbnet.physics.tank import Tank
from plumbnet.physics.walls import Shell, heater_shell

FILL = 5.0e5
COLD = 283.15


def warm(kelvin: float, zone: int = 0, shell: Shell | None = None) -> Warm:
    body = Body(name=f"heater {zone}", burners=(), shells={zone: shell or Shell(0.2)}, cold_k=COLD, fill_abs_pa=FILL)
    cold = body.cold
    return cold.heated(cold.mass_kg * 4190.0 * kelvin, {zone: 0.0})


def stand(
    *waters: Warm, gates: tuple[OneWayGate[int], ...] = (), opened: dict[int, float] | None = None, **zones: Basin
) -> Standing:
    basins = {int(name.removeprefix("z")): one for name, one in zones.items()}
    joint = Joint(basins, gates, waters, dict.fromkeys(basins, 0.0), opened or {})
    return joint.stand(dict.fromkeys(basins, FILL))


def basin(*outlets: Outlet, **tanks: Tank) -> Basin:
    return Basin(static_abs_pa=FILL, cold_k=COLD, outlets=outlets, tanks=tanks)


@pytest.mark.parametrize("shell", [Shell(0.2), heater_shell(0.2)])
def test_stiff_zone_stands_where_locked_water_does(shell: Shell) -> None:
    water = warm(5.0, shell=shell)
    found = stand(water, z0=basin())
    known = Locked(heated=shell, cold_k=COLD, start_abs_pa=FILL).pressure_abs_pa(water.temperature_k)
    assert found.pressures_abs_pa[0] == pytest.approx(known, rel=1e-7)
    assert found.stiff_pa[0] == pytest.approx(known - FILL, rel=1e-7)


def test_guess_changes_nothing() -> None:
    water = warm(5.0)
    joint = Joint({0: basin()}, (), (water,), {0: 0.0}, {})
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
    relief = Outlet(name="relief", opens_abs_pa=1.1e6, blowdown_pa=1e5)
    found = stand(warm(50.0), z0=basin(relief), opened={0: 1.1e6})
    assert found.pressures_abs_pa[0] == 1.1e6
    assert sum(pool.discharged_m3 for pool in found.pools) == pytest.approx(0.0034, rel=0.1)


def test_outlet_that_is_shut_lets_the_pressure_pass() -> None:
    relief = Outlet(name="relief", opens_abs_pa=1.1e6, blowdown_pa=1e5)
    assert stand(warm(50.0), z0=basin(relief)).pressures_abs_pa[0] > 1.1e6


def test_street_holds_its_zone() -> None:
    street = Outlet(name="street", opens_abs_pa=FILL, gives_back=True)
    found = stand(warm(50.0), z0=basin(street))
    assert found.pressures_abs_pa == {0: FILL}
    assert found.stiff_pa == {0: None}


def test_walls_that_grow_more_than_the_water_leave_the_pressure_where_it_was() -> None:
    swelling = Shell(0.2, expansion_per_k=5e-3)
    assert stand(warm(5.0, shell=swelling), z0=basin()).pressures_abs_pa == {0: FILL}


def test_lowest_outlet_opens_and_closes_no_lower_than_the_supply() -> None:
    low = Outlet(name="low", opens_abs_pa=FILL + 1e4, blowdown_pa=5e4)
    held = basin(Outlet(name="high", opens_abs_pa=2e6), low)
    assert held.outlet is low
    assert held.opens_abs_pa == FILL + 1e4
    assert held.reseats_abs_pa == FILL
    assert held.held_by is None
