"""What each zone has to take up, and what can take it."""

import pytest
from conftest import PSI, drawn

from plumbnet.analysis.loading import Loading
from plumbnet.analysis.settling import Settling
from plumbnet.physics.expansion import growth
from plumbnet.physics.tank import Tank
from plumbnet.physics.water import ATMOSPHERE_PA

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
    settling = Settling(layout.network)
    share = settling.share(layout.zone("heater1"))
    per_m3 = growth(283.15, 333.15, pressure_abs_pa=60 * PSI + ATMOSPHERE_PA)
    assert share.heaters == ("heater1", "heater2")
    assert share.expansion_m3 == pytest.approx((50 + 50 + 80) * GALLON * per_m3, rel=1e-9)
    names = [piece.name for _, piece in settling.loading.waters(share.zones)]
    assert len(names) == len(set(names))


def test_hotter_heater_is_asked_for_the_water_both_warm() -> None:
    layout = drawn(LOOP, heater2="setpoint: 180 degF")
    waters = Loading(layout.network).waters([layout.zone("tee")])
    warmer = {piece.name: heated.name for heated, piece in waters}
    assert set(warmer.values()) == {"heater2"}


def test_tanks_are_told_by_name_and_kept_as_they_stand() -> None:
    layout = drawn(CLOSED + "\ntee -> tank2\ntee -> tank1", tank1="elevation: 10 m, acceptance: 1 gal")
    settling = Settling(layout.network)
    zone = layout.zone("tee")
    (name, tank), (other, _) = settling.loading.tanks([zone])
    assert (name, other) == ("tank1", "tank2")
    start = 60 * PSI + ATMOSPHERE_PA
    assert tank == Tank(4.5 * GALLON, start, start, GALLON, tank.head_pa)
    assert tank.head_pa == pytest.approx(10 * METRE_PA)
    assert settling.share(zone).tanks == ("tank1", "tank2")


def test_street_that_is_held_has_no_tank_to_fill_and_its_heaters_growth_all_the_same() -> None:
    layout = drawn("street -> tee -> heater -> tap.hot\ntee -> tank\nheater.relief -> relief")
    loading, zone = Loading(layout.network), layout.zone("tee")
    load = loading.load(zone, 1000.0)
    assert (load.tanks, list(loading.takers_in(zone)), list(load.expansions_m3)) == ((), [], ["heater"])
    assert [name for name, _ in loading.tanks([zone])] == ["tank"]
    assert load.static_abs_pa == load.outlet_abs_pa == pytest.approx(60 * PSI + ATMOSPHERE_PA + 1000.0)


def test_outlets_that_have_opened_at_a_pressure_are_told_and_tanks_are_not() -> None:
    layout = drawn("street -> cv -> tee -> heater -> spill\ntee -> tank\nheater.relief -> relief")
    loading, zone = Loading(layout.network), layout.zone("tee")
    opened = {at: [role.value for role in loading.opened(zone, at * PSI + 1.0)] for at in (60, 100, 150)}
    assert opened == {60: [], 100: ["expansion relief"], 150: ["expansion relief", "safety relief"]}
