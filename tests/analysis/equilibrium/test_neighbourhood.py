"""A zone among those that settle with it: the worst history of each, with heaters left cold and tanks added."""

import math

import pytest
from conftest import PSI, Drawn, drawn

from plumbnet.analysis.equilibrium.neighbourhood import Neighbourhood
from plumbnet.analysis.equilibrium.neighbourhoods import Neighbourhoods
from plumbnet.analysis.equilibrium.zone_loads import ZoneLoads
from plumbnet.physics.fluids.water import ATMOSPHERE_PA
from plumbnet.physics.vessels.tank import Tank

GALLON = 231 * 0.0254**3
METRE_PA = 9806.65
BIG = "volume: 20 gal"
ONE = "street -> cv -> tee -> heater -> tap.hot"
ROW = "street -> cv1 -> tee1 -> heater1 -> cv2 -> tee2 -> heater2 -> tap.hot\ntee1 -> tank1\ntee2 -> tank2"


def around(layout: Drawn, place: str = "heater") -> Neighbourhood:
    return Neighbourhoods(layout.network, ZoneLoads(layout.network)).of(layout.zone(place))


def boyle(*shares: float, cold: float = 60.0) -> float:
    """Pressure in psi once shares of the gas are pressed away that was charged to the cold pressure."""
    return (cold + ATMOSPHERE_PA / PSI) / (1.0 - sum(shares)) - ATMOSPHERE_PA / PSI


def row(**parts: str) -> tuple[Neighbourhood, int, int, float]:
    """Two heaters in a row with 20 gal each, their zones, and the share of 20 gal that each grows by."""
    layout = drawn(ROW, **{"tank1": BIG, "tank2": BIG} | parts)
    first, second = layout.zone("heater1"), layout.zone("heater2")
    near = around(layout, "heater1")
    return near, first, second, near.growths_m3[first] / (20 * GALLON)


def psi(pressure_pa: float) -> float:
    return round(pressure_pa / PSI, 6)


# How high


def test_two_in_a_row_come_highest_one_after_the_other() -> None:
    near, first, second, share = row()
    assert list(near.zones) == [first, second]
    assert near.highest(first).pressure_pa / PSI == pytest.approx(boyle(share))
    # first into both tanks, then the second on top
    worst = near.highest(second)
    assert worst.pressure_pa / PSI == pytest.approx(boyle(share / 2, share))
    assert worst.history == ((first,), (second,))
    assert worst.reached_pa == pytest.approx(worst.pressure_pa)


def test_zone_that_nothing_warms_has_its_static_pressure() -> None:
    near = around(drawn("street -> cv -> tee -> tankless -> tap.hot"), "tee")
    zone = next(iter(near.zones))
    assert near.growths_m3 == {}
    assert near.highest(zone).pressure_pa == pytest.approx(60 * PSI)
    assert near.highest(zone).history == ()
    assert near.static_pa(zone) == pytest.approx(60 * PSI)
    assert near.pushers(zone) == ()


def test_what_pushes_where() -> None:
    near, first, second, _ = row()
    assert list(near.reach(first)) == [first, second]
    assert list(near.reach(second)) == [second]
    assert near.pushers(second) == (first, second)
    assert near.pushers(first) == (first,)
    assert near.pushers(10_000) == ()


def test_zone_in_reach_stands_lower_by_what_the_check_needs() -> None:
    near, first, second, _ = row(cv2="opens: 5 psi")
    assert near.lifted_pa(first, second, 75 * PSI) == pytest.approx(70 * PSI)
    assert near.lifted_pa(first, first, 75 * PSI) == pytest.approx(75 * PSI)


def test_order_of_the_file_chooses_none_of_equal_histories() -> None:
    lines = ("street -> cv -> tee.run1", "tee -> cv1 -> heater1 -> tap1.hot", "tee -> cv2 -> heater2 -> tap2.hot")
    told = []
    for runs in (lines, (lines[0], lines[2], lines[1])):
        layout = drawn("\n".join(runs).replace("tee.run1", "tee"))
        near = around(layout, "heater1")
        names = {layout.zone(name): name for name in ("heater1", "heater2", "tee")}
        told.append([names[zone] for zone in near.zones if zone in names])
    assert told[0] == told[1]


def test_place_below_datum_counts_as_any_other() -> None:
    # all 60 m lower: cistern at 30 m and heater at 0, or 30 m below datum and 60 m
    runs = "cistern.out -> cv -> tee -> heater -> tap.hot\ntee -> tank"
    found = []
    for lower_m in (0, 60):
        place = f"elevation: {-lower_m} m"
        parts = {"tank": f"{place}, volume: 20 gal, precharge: {30 * METRE_PA / PSI} psi", "tee": place}
        parts |= {"heater": place, "tap": place, "cv": place, "cistern": f"elevation: {30 - lower_m} m"}
        layout = drawn(runs, **parts)
        near, zone = around(layout), layout.zone("heater")
        found.append(near.highest(zone).pressure_pa - near.static_pa(zone))
        assert near.static_pa(zone) == pytest.approx((30 - lower_m) * METRE_PA)
        assert near.lift_pa == pytest.approx(max(0.0, (lower_m - 30) * METRE_PA))
        assert near.absolute_pa(near.static_pa(zone)) == pytest.approx(ATMOSPHERE_PA + 30 * METRE_PA * (lower_m == 0))
        assert near.gauge_pa(near.absolute_pa(1234.0)) == pytest.approx(1234.0)
        own = Tank(
            20 * GALLON, 20 * METRE_PA + ATMOSPHERE_PA, near.static_pa(zone) + ATMOSPHERE_PA, None, -lower_m * METRE_PA
        )
        found.append(near.with_tank(zone, own).highest(zone).pressure_pa - near.static_pa(zone))
    assert found[0] == pytest.approx(found[2], rel=1e-9)
    assert found[1] == pytest.approx(found[3], rel=1e-9)
    assert found[1] < found[0]


# Outlets


def test_first_outlet_in_reach_lets_go() -> None:
    runs = f"{ONE}\nheater.relief -> relief\ntee -> spill"
    layout = drawn(runs)
    near, zone = around(layout), layout.zone("heater")
    assert near.opens_pa(zone) == near.lets_go_pa(zone) == pytest.approx(100 * PSI)
    assert list(near.opened(zone, near.opens_pa(zone))) == [zone]
    bare = drawn(ONE)
    assert around(bare).opens_pa(bare.zone("heater")) == around(bare).lets_go_pa(bare.zone("heater")) == math.inf


def test_outlet_beyond_a_check_lets_go_by_so_much_later() -> None:
    layout = drawn("street -> cv -> tee -> heater -> cv2 -> tee2 -> tap.hot\ntee2 -> spill", cv2="opens: 5 psi")
    near, zone, beyond = around(layout), layout.zone("heater"), layout.zone("tap.hot")
    assert near.lets_go_pa(zone) == pytest.approx(105 * PSI)
    assert near.opens_pa(zone) == math.inf
    assert list(near.opened(zone, 104.9 * PSI)) == []
    assert list(near.opened(zone, 105 * PSI + 1e-6)) == [beyond]


def test_safety_relief_valve_that_lifts_is_no_holding() -> None:
    for runs, relieved in (
        (f"{ONE}\nheater.relief -> relief", True),
        (f"{ONE}\nheater.relief -> relief\ntee -> tank", False),  # the tank keeps it below
        (f"{ONE}\nheater.relief -> relief\ntee -> spill", False),  # a valve that is meant to let out, at 100 psi
        (f"{ONE}\ntee -> spill", False),
        (ONE, False),  # nothing lets out at all
    ):
        layout = drawn(runs, tank=BIG) if "tank" in runs else drawn(runs)
        assert around(layout).is_relieved(layout.zone("heater")) is relieved, runs


def test_safety_relief_valve_set_as_the_other_lifts_too_unless_a_way_out_opens_there() -> None:
    layout = drawn(f"{ONE}\nheater.relief -> relief\ntee -> spill", spill="pressure: 150 psi")
    assert around(layout).is_relieved(layout.zone("heater"))
    layout = drawn(
        "street -> prv -> tee -> heater -> tap.hot\nheater.relief -> relief",
        prv="bypass: true, set: 50 psi",
        relief="pressure: 60 psi",
    )
    assert not around(layout).is_relieved(layout.zone("heater"))


def test_safety_relief_valve_beyond_a_check_lifts_for_the_heater_before_it() -> None:
    layout = drawn("street -> cv -> tee -> heater -> cv2 -> tee2 -> tap.hot\ntee2 -> relief")
    assert around(layout).is_relieved(layout.zone("heater"))


# Left cold


def test_only_the_heaters_named_grow() -> None:
    near, first, second, share = row()
    assert near.only(("heater2",)).growths_m3 == {second: near.growths_m3[second]}
    assert near.only(("heater2",)).highest(second).pressure_pa / PSI == pytest.approx(boyle(share))
    assert near.only(("heater1",)).growths_m3 == {first: near.growths_m3[first]}
    assert near.only(("heater1",)).highest(second).pressure_pa / PSI == pytest.approx(boyle(share / 2))
    assert near.only(("heater1", "heater2")).growths_m3 == pytest.approx(near.growths_m3)
    assert near.only(("nobody",)).growths_m3 == {}


def test_what_some_heaters_make_of_it_is_worked_out_once_in_whatever_order_they_are_named() -> None:
    near, *_ = row()
    assert near.only(("heater1", "heater2")) is near.only(("heater2", "heater1"))
    assert near.only(("heater1",)) is not near.only(("heater2",))


THREE = "street -> cv -> tee -> heater1 -> tap.hot\ntee -> heater2\ntee -> heater3\ntee -> tank\ntee -> spill"


def test_any_two_of_three_are_too_much_so_that_each_is_to_blame() -> None:
    # 50 gal grow by 0.84 gal; one comes to 72 psi in 6 gal, two to 89, three to the 95 at which the outlet opens
    layout = drawn(THREE, tank="volume: 6 gal", spill="pressure: 89 psi")
    near, zone = around(layout, "heater1"), layout.zone("heater1")
    alone, two = (near.only(some).highest(zone).pressure_pa / PSI for some in (("heater1",), ("heater1", "heater2")))
    assert alone < 80 < two
    assert two == pytest.approx(near.highest(zone).pressure_pa / PSI)
    for name in ("heater1", "heater2", "heater3"):
        assert near.is_brought_by(zone, name, 80 * PSI)


def test_of_many_each_that_raises_a_zone_at_all_is_to_blame() -> None:
    many = "\n".join(f"tee -> heater{number}" for number in range(2, 9))
    layout = drawn(
        f"street -> cv -> tee -> heater1 -> tap.hot\n{many}\ntee -> tank\ntee -> spill", tank="volume: 20 gal"
    )
    near, zone = around(layout, "heater1"), layout.zone("heater1")
    assert near.only(("heater1",)).highest(zone).pressure_pa < 80 * PSI
    assert near.is_brought_by(zone, "heater5", 80 * PSI)
    assert not near.is_brought_by(zone, "nobody", 80 * PSI)


def test_static_pressure_above_a_limit_is_no_heaters_fault() -> None:
    # the outlet runs all the time, and takes the growth as it comes
    layout = drawn(f"{ONE}\ntee -> spill", street="pressure: 90 psi", spill="pressure: 85 psi")
    near, zone = around(layout), layout.zone("heater")
    assert near.highest(zone).pressure_pa == pytest.approx(90 * PSI)
    assert not near.is_brought_by(zone, "heater", 80 * PSI)


def test_zone_is_brought_above_a_limit_by_whoever_raises_it() -> None:
    near, first, second, _ = row()
    assert near.is_brought_by(second, "heater1", 60 * PSI)
    assert near.is_brought_by(second, "heater2", 60 * PSI)
    assert near.is_brought_by(first, "heater1", 60 * PSI)
    assert not near.is_brought_by(first, "nobody", 60 * PSI)


def test_zone_with_no_end_is_brought_there_by_each_that_alone_passes_the_limit() -> None:
    # no tank at all: either alone has no end; with 20 gal for itself the first comes to 63 psi alone
    worn = "volume: 20 gal, state: waterlogged"
    near, _, second, _ = row(tank1=worn, tank2=worn)
    assert near.is_brought_by(second, "heater1", 80 * PSI)
    assert near.is_brought_by(second, "heater2", 80 * PSI)
    held, _, beyond, _ = row(tank2=worn)
    assert not held.is_brought_by(beyond, "heater1", 80 * PSI)
    assert held.is_brought_by(beyond, "heater1", 62 * PSI)
    assert held.is_brought_by(beyond, "heater2", 80 * PSI)


def test_limit_is_passed_by_more_than_half_a_pascal_alone() -> None:
    # an outlet ends the climb at 100 psi whoever warms
    layout = drawn(f"{ONE}\ntee -> spill")
    near, zone = around(layout), layout.zone("heater")
    assert near.is_brought_by(zone, "heater", 100 * PSI - 0.6)  # raised from 60
    assert not near.is_brought_by(zone, "heater", 100 * PSI - 0.4)
    assert not near.is_brought_by(zone, "nobody", 80 * PSI)
    twins = drawn("street -> cv -> tee -> heater1 -> tee2 -> tap1.hot\ntee -> heater2 -> tee2\ntee -> spill")
    near, zone = around(twins, "heater1"), twins.zone("heater1")
    assert near.is_brought_by(zone, "heater1", 100 * PSI - 0.6)
    assert not near.is_brought_by(zone, "heater1", 100 * PSI - 0.4)


# Tanks added and charged


def test_tank_more_takes_its_part() -> None:
    near, first, second, share = row()
    own = Tank(20 * GALLON, 60 * PSI + ATMOSPHERE_PA, 60 * PSI + ATMOSPHERE_PA)
    more = near.with_tank(second, own)
    assert more.highest(second).pressure_pa / PSI == pytest.approx(boyle(share / 3, share / 2))
    assert more.highest(first).pressure_pa / PSI == pytest.approx(boyle(2 * share / 3))
    assert near.highest(second).pressure_pa / PSI == pytest.approx(boyle(share / 2, share))


def test_tank_charged_otherwise_is_the_one_named() -> None:
    near, first, second, share = row(tank2="volume: 20 gal, precharge: 40 psi")
    right = near.charged({"tank2": 60 * PSI})
    assert right.highest(second).pressure_pa / PSI == pytest.approx(boyle(share / 2, share))
    assert near.highest(second).pressure_pa > right.highest(second).pressure_pa + PSI
    assert near.charged({}).highest(second) == near.highest(second)
    # charged to 90 psi the upper tank takes nothing below that: all of the first is pushed on
    high = near.charged({"tank1": 90 * PSI, "tank2": 60 * PSI})
    assert high.highest(second).pressure_pa / PSI == pytest.approx(boyle(2 * share))
    assert high.highest(first).pressure_pa / PSI == pytest.approx(boyle(2 * share))


# Which neighbourhood


def test_zone_is_held_by_a_tank_or_a_valve_meant_to_let_out_and_by_nothing_else() -> None:
    for more, held in (("tee -> tank", True), ("tee -> spill", True), ("heater.relief -> relief", False), ("", False)):
        layout = drawn(f"{ONE}\n{more}".strip(), **({"tank": BIG} if "tank" in more else {}))
        assert around(layout).is_held(layout.zone("heater")) is held, more
