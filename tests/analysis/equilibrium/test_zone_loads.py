"""What each zone has to take up, and what can take it."""

import pytest
from conftest import PSI, drawn

from plumbnet.analysis.equilibrium.shared_tanks import SharedTanks
from plumbnet.analysis.equilibrium.zone_loads import ZoneLoads
from plumbnet.layout.model.part import Role
from plumbnet.physics.fluids.expansion import growth
from plumbnet.physics.fluids.water import ATMOSPHERE_PA
from plumbnet.physics.vessels.tank import Tank

GALLON = 231 * 0.0254**3
METRE_PA = 9806.65
CLOSED = "street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief"
LOOP = """
    street -> cv -> tee -> heater1 -> tee2 -> tap.hot
    tee -> heater2 -> tee2
    tee2 -> pump -> store -> tee
    heater1.relief -> relief
"""


def test_water_that_two_heaters_warm_grows_once() -> None:
    layout = drawn(LOOP)
    settling = SharedTanks(layout.network)
    share = settling.share(layout.zone("heater1"))
    per_m3 = growth(283.15, 333.15, pressure_abs_pa=60 * PSI + ATMOSPHERE_PA)
    assert share.heaters == ("heater1", "heater2")
    assert share.expansion_m3 == pytest.approx((50 + 50 + 80) * GALLON * per_m3, rel=1e-9)
    names = [piece.name for _, piece in settling.loading.waters(share.zones)]
    assert len(names) == len(set(names))


def test_hotter_heater_is_asked_for_the_water_both_warm() -> None:
    layout = drawn(LOOP, heater2="setpoint: 180 degF")
    waters = ZoneLoads(layout.network).waters([layout.zone("tee")])
    warmer = {piece.name: heated.name for heated, piece in waters}
    assert set(warmer.values()) == {"heater2"}


def test_tanks_are_told_by_name_and_kept_as_they_stand() -> None:
    layout = drawn(CLOSED + "\ntee -> tank2\ntee -> tank1", tank1="elevation: 10 m, acceptance: 1 gal")
    settling = SharedTanks(layout.network)
    zone = layout.zone("tee")
    (name, tank), (other, _) = settling.loading.tanks([zone])
    assert (name, other) == ("tank1", "tank2")
    start = 60 * PSI + ATMOSPHERE_PA
    assert tank == Tank(4.5 * GALLON, start, start, GALLON, tank.head_pa)
    assert tank.head_pa == pytest.approx(10 * METRE_PA)
    assert settling.share(zone).tanks == ("tank1", "tank2")


def test_street_that_is_held_has_no_tank_to_fill_and_its_heaters_growth_all_the_same() -> None:
    layout = drawn("street -> tee -> heater -> tap.hot\ntee -> tank\nheater.relief -> relief")
    loading, zone = ZoneLoads(layout.network), layout.zone("tee")
    load = loading.load(zone, 1000.0)
    assert (load.tanks, list(loading.takers_in(zone)), list(load.expansions_m3)) == ((), [], ["heater"])
    assert [name for name, _ in loading.tanks([zone])] == ["tank"]
    assert load.static_abs_pa == load.outlet_abs_pa == pytest.approx(60 * PSI + ATMOSPHERE_PA + 1000.0)


def test_outlets_that_have_opened_at_a_pressure_are_told_and_tanks_are_not() -> None:
    layout = drawn("street -> cv -> tee -> heater -> spill\ntee -> tank\nheater.relief -> relief")
    loading, zone = ZoneLoads(layout.network), layout.zone("tee")
    opened = {at: [role.value for role in loading.opened(zone, at * PSI + 1.0)] for at in (60, 100, 150)}
    assert opened == {60: [], 100: ["expansion relief"], 150: ["expansion relief", "safety relief"]}


def test_outlet_has_opened_at_the_very_pressure_at_which_it_opens() -> None:
    layout = drawn("street -> cv -> tee -> heater -> spill")
    zone = layout.zone("tee")
    (opening,) = layout.network.openings[zone]
    opened = [list(ZoneLoads(layout.network).opened(zone, opening.opens_pa + by_pa)) for by_pa in (-1e-3, 0.0)]
    assert opened == [[], [Role.EXPANSION_RELIEF]]


def test_growth_of_all_that_a_heater_warms_is_told_by_zone_whatever_else_warms_it() -> None:
    layout = drawn(LOOP, heater2="setpoint: 180 degF")
    loading, zone = ZoneLoads(layout.network), layout.zone("tee")
    assert loading.growth_by(("heater1",)) == loading.growth_by(("heater2",))
    assert list(loading.growth_by(("heater1",))) == [zone]
    per_m3 = growth(283.15, (180 + 459.67) / 1.8, pressure_abs_pa=60 * PSI + ATMOSPHERE_PA)
    assert loading.growth_by(("heater1",))[zone] == pytest.approx(180 * GALLON * per_m3, rel=1e-9)
    assert loading.load(zone).expansions_m3 == {"heater2": pytest.approx(180 * GALLON * per_m3)}
    assert loading.growth_by(("tap",)) == {}


def test_heater_that_stays_cold_grows_by_nothing() -> None:
    layout = drawn("street -> cv -> tankless -> tap.hot")
    loading, zone = ZoneLoads(layout.network), layout.zone("tankless")
    assert (loading.growth_by(("tankless",)), list(loading.waters([zone]))) == ({}, [])
    assert loading.load(zone).expansions_m3 == {}


def test_load_of_a_zone_is_lifted_as_a_whole() -> None:
    layout = drawn("street -> cv -> tee -> heater -> spill\ntee -> tank", tank="elevation: 10 m")
    loading, zone = ZoneLoads(layout.network), layout.zone("tee")
    low, high = loading.load(zone), loading.load(zone, 1000.0)
    assert low.outlet_abs_pa == pytest.approx(100 * PSI + ATMOSPHERE_PA)
    for attribute in ("static_abs_pa", "outlet_abs_pa"):
        assert getattr(high, attribute) - getattr(low, attribute) == pytest.approx(1000.0)
    assert high.tanks[0].start_abs_pa - low.tanks[0].start_abs_pa == pytest.approx(1000.0)
    assert high.tanks[0].head_pa - low.tanks[0].head_pa == pytest.approx(1000.0)
    assert high.tanks[0].charge_abs_pa == low.tanks[0].charge_abs_pa
