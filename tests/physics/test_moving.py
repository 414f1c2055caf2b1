"""A plant from one moment to the next."""

from dataclasses import replace

import pytest

from plumbnet.physics.course import Books, Moment
from plumbnet.physics.heating import Body, Burner
from plumbnet.physics.joined import Basin, Outlet
from plumbnet.physics.moving import Plant, advanced, reseated
from plumbnet.physics.settle import OneWayGate
from plumbnet.physics.tank import Tank
from plumbnet.physics.walls import Shell

FILL = 5.0e5
COLD = 283.15
RELIEF = Outlet(name="relief", opens_abs_pa=1.1e6, blowdown_pa=1e5)


def body(zone: int = 0) -> Body:
    burner = Burner(name="heater", input_w=10_000.0, hot_k=333.15)
    return Body(name="heater", burners=(burner,), shells={zone: Shell(0.2)}, cold_k=COLD, fill_abs_pa=FILL)


def plant(outlet: Outlet = RELIEF) -> Plant:
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
    street = Outlet(name="street", opens_abs_pa=FILL, gives_back=True)
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
