import math

import pytest
from all_hot import settled_pa
from conftest import PSI, Drawn, drawn

from plumbnet.analysis.equilibrium.heating_range import cold_k
from plumbnet.analysis.equilibrium.shared_tanks import SharedTanks
from plumbnet.physics.fluids.expansion import growth
from plumbnet.physics.fluids.water import ATMOSPHERE_PA

GALLON = 231 * 0.0254**3
METRE_PA = 9806.65
F50, F140 = 283.15, 333.15
GROWS_M3 = 50 * GALLON * growth(F50, F140, pressure_abs_pa=60 * PSI + ATMOSPHERE_PA)
"""Growth of the usual heater under the usual street."""
BIG = "volume: 20 gal"
CLOSED = "street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief"


def settled(layout: Drawn, place: str) -> float | None:
    """Pressure of a zone in psi at datum, all hot."""
    found = settled_pa(SharedTanks(layout.network), layout.zone(place))
    return None if found is None else (found - layout.lift_pa(place)) / PSI


def settled_at(layout: Drawn, place: str) -> float:
    """The same where something holds it."""
    found = settled(layout, place)
    assert found is not None
    return found


def by_head(growth_m3: float, *, volume: float = 20 * GALLON, charge: float = 60.0, start: float = 60.0) -> float:
    """Pressure in psi at which a tank has taken up a growth, by Boyle's law."""
    amount = volume * (charge * PSI + ATMOSPHERE_PA)
    held = max(0.0, volume - amount / (start * PSI + ATMOSPHERE_PA))
    return (amount / (volume - held - growth_m3) - ATMOSPHERE_PA) / PSI


def test_tank_in_the_zone_settles_by_boyle() -> None:
    layout = drawn(CLOSED + "\ntee -> tank", tank=BIG)
    assert settled(layout, "heater") == pytest.approx(by_head(GROWS_M3), rel=1e-12)


def test_tank_on_the_roof_counts_its_height() -> None:
    # 10 m up the water stands 14.2 psi lower; charged to that, it does what it would do below with more gas
    head = 10 * METRE_PA / PSI
    layout = drawn(CLOSED + "\ntee -> tank", tank=f"volume: 20 gal, precharge: {60 - head} psi, elevation: 10 m")
    lower = by_head(GROWS_M3, charge=60 - head, start=60 - head)
    assert settled(layout, "heater") == pytest.approx(lower + head, rel=1e-9)


def test_safety_relief_that_lifts_is_no_settling() -> None:
    assert settled(drawn(CLOSED), "heater") is None


def test_way_out_that_opens_just_above_a_safety_relief_valve_does_not_hold_it() -> None:
    assert settled(drawn(f"{CLOSED}\ntee -> spill", relief="pressure: 90 psi", spill="pressure: 91 psi"), "tee") is None
    held = drawn(f"{CLOSED}\ntee -> spill", relief="pressure: 91 psi", spill="pressure: 90 psi")
    assert settled(held, "tee") == pytest.approx(90.0)


def test_water_that_does_not_grow_lets_nothing_off_though_a_relief_valve_stands_at_its_set() -> None:
    for set_psi in (60, 70):
        layout = drawn(CLOSED, relief=f"pressure: {set_psi} psi", heater="setpoint: 50 degF")
        assert settled(layout, "heater") == pytest.approx(60.0)


def test_house_below_the_datum_settles_as_one_above_it() -> None:
    """The same house once at the datum and once 140 m lower, where all stands far below the air if read at datum."""
    runs = "cistern -> cv -> tee -> heater -> tank"
    found = []
    for metres in (0, -140):
        tank = f"{BIG}, precharge: 30 psi, elevation: {metres - 40} m"
        layout = drawn(runs, cistern=f"elevation: {metres - 10} m", tank=tank, heater=f"elevation: {metres - 40} m")
        found.append(settled_at(layout, "heater") - metres * METRE_PA / PSI)
    assert found[0] == pytest.approx(found[1], rel=1e-9)


def test_relief_valve_lifts_in_a_house_far_below_the_datum_too() -> None:
    """Read at the datum, the pressure at which it lifts lies below a vacuum."""
    deep = "elevation: -180 m"
    runs = "cistern -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief"
    parts = dict.fromkeys(("cv", "tee", "heater", "tap"), deep)
    layout = drawn(runs, **parts, cistern="elevation: -150 m", relief=f"{deep}, pressure: 150 psi")
    assert settled(layout, "heater") is None


def test_nothing_holds_a_zone_without_any_outlet() -> None:
    assert settled(drawn("street -> cv -> heater -> tap.hot"), "heater") is None


def test_expansion_relief_holds_it_at_its_set() -> None:
    assert settled(drawn(CLOSED + "\ntee -> spill"), "heater") == pytest.approx(100.0)


def test_of_two_valves_with_one_set_the_safety_relief_lifts_too() -> None:
    for spill, relief in (("spill", "relief"), ("zspill", "arelief")):
        layout = drawn(
            f"street -> cv -> tee -> heater -> tap.hot\nheater.relief -> {relief}\ntee -> {spill}",
            **{spill: "kind: expansion_relief, pressure: 150 psi", relief: "kind: relief_valve, pressure: 150 psi"},
        )
        assert settled(layout, "heater") is None


def test_zone_that_nothing_warms_keeps_its_static_pressure_to_the_last_bit() -> None:
    layout = drawn("street -> cv -> tee -> tankless -> tap.hot", street="pressure: 61.7 psi")
    zone = layout.zone("tee")
    assert settled_pa(SharedTanks(layout.network), zone) == layout.network.standing.static_pa[zone]


def test_well_tank_starts_from_the_cut_out_pressure() -> None:
    layout = drawn("well -> tee -> heater -> tap.hot\ntee -> tank", tank="volume: 20 gal, precharge: 28 psi")
    start_m3 = (
        50 * GALLON * growth(cold_k(layout.network, layout.zone("tee")), F140, pressure_abs_pa=50 * PSI + ATMOSPHERE_PA)
    )
    assert settled(layout, "heater") == pytest.approx(by_head(start_m3, charge=28, start=50), rel=1e-9)


def test_acceptance_locks_a_tank() -> None:
    layout = drawn(CLOSED + "\ntee -> tank\ntee -> spill", tank=f"{BIG}, acceptance: 0.5 gal")
    assert settled(layout, "heater") == pytest.approx(100.0)


def test_waterlogged_tank_is_none() -> None:
    assert settled(drawn(CLOSED + "\ntee -> tank", tank=f"{BIG}, state: waterlogged"), "heater") is None


# Twins, each behind its own check from a common pipe:
#
#     street >| tee + >| heater1, tank1
#                   + >| heater2, tank2

TWINS = """
    street -> cv1 -> tee
    tee -> cv2 -> tee2 -> heater1 -> tap1.hot
    tee -> cv3 -> tee3 -> heater2 -> tap2.hot
    tee2 -> tank1
    tee3 -> tank2
"""


def test_twins_that_settle_alike_by_chance_share_nothing() -> None:
    layout = drawn(TWINS, tank1=BIG, tank2=BIG)
    share = SharedTanks(layout.network).share(layout.zone("heater1"))
    assert (share.heaters, share.tanks) == (("heater1",), ("tank1",))
    assert settled(layout, "tee") == pytest.approx(60.0)


def test_sealed_neighbour_leaves_a_held_heater_in_peace() -> None:
    layout = drawn(TWINS.replace("tee3 -> tank2", ""), tank1=BIG)
    assert settled(layout, "heater1") == pytest.approx(by_head(GROWS_M3), rel=1e-9)
    assert settled(layout, "heater2") is None
    assert settled(layout, "tee") == pytest.approx(60.0)


# Two in a row, water of the first pushes into the second and never back:
#
#     street >| heater1 >| heater2, tank

ROW = "street -> cv1 -> tee1 -> heater1 -> cv2 -> tee2 -> heater2 -> tap.hot"


def test_both_heaters_in_a_row_fill_the_tank_at_the_last() -> None:
    layout = drawn(f"{ROW}\ntee2 -> tank", tank=BIG)
    assert settled(layout, "heater1") == settled(layout, "heater2") == pytest.approx(by_head(2 * GROWS_M3), rel=1e-9)
    share = SharedTanks(layout.network).share(layout.zone("heater1"))
    assert (share.heaters, share.tanks) == (("heater1", "heater2"), ("tank",))
    assert share.expansion_m3 == pytest.approx(2 * GROWS_M3, rel=1e-9)


def test_tank_at_the_first_does_nothing_for_the_last() -> None:
    layout = drawn(f"{ROW}\ntee1 -> tank\nheater2.relief -> relief", tank=BIG)
    assert settled(layout, "heater1") == pytest.approx(by_head(GROWS_M3), rel=1e-9)
    assert settled(layout, "heater2") is None
    settling = SharedTanks(layout.network)
    short = settling.shortage(layout.zone("heater2"), 80 * PSI)
    assert (short.heaters, short.tanks) == (("heater2",), ())
    assert short.short_m3 == pytest.approx(GROWS_M3, rel=1e-9)


def test_check_that_takes_5_psi_to_open_keeps_the_first_5_psi_above_the_last() -> None:
    layout = drawn(f"{ROW}\ntee2 -> tank", tank="volume: 60 gal, precharge: 55 psi", cv2="opens: 5 psi")
    last = settled_at(layout, "heater2")
    assert 55.0 < last < 60.0  # below where the first stands cold
    assert settled(layout, "heater1") == pytest.approx(last + 5.0, rel=1e-12)


def test_water_of_the_first_is_counted_where_its_check_takes_a_difference_to_open() -> None:
    """Small enough for one heater's growth and not for both: the last is no longer controlled."""
    runs = f"{ROW}\ntee2 -> tank\nheater2.relief -> relief"
    one = drawn(runs.replace("-> heater1 ", ""), tank="volume: 4 gal, precharge: 55 psi", cv2="opens: 5 psi")
    both = drawn(runs, tank="volume: 4 gal, precharge: 55 psi", cv2="opens: 5 psi")
    alone = settled(one, "heater2")
    assert alone is not None
    assert alone < 80.0
    beside = settled(both, "heater2")
    assert beside is not None
    assert beside > 90.0


@pytest.mark.parametrize(("direct", "more"), [(3, 3.0), (4, 4.0), (5, 4.0)])
def test_of_ways_that_lose_different_pressures_water_goes_by_the_one_that_loses_least(direct: int, more: float) -> None:
    """From the heater to the tank by two checks of 2 psi, or by one of another: no heights fit both."""
    runs = "street -> cv1 -> heater -> tee1 -> cv2 -> tee2 -> cv3 -> tee3 -> tank\ntee1 -> cv4 -> tee3"
    layout = drawn(runs, cv2="opens: 2 psi", cv3="opens: 2 psi", cv4=f"opens: {direct} psi", tank=BIG)
    last = settled_at(layout, "tee3")
    assert last == pytest.approx(by_head(GROWS_M3, start=60.0 - min(direct, 4)), rel=1e-9)
    assert settled(layout, "heater") == pytest.approx(last + more, rel=1e-9)
    assert SharedTanks(layout.network).share(layout.zone("heater")).tanks == ("tank",)


BOOSTED = "street -> cv -> tee -> tank\ntee -> booster -> heater -> tap.hot"


def test_pump_without_a_check_holds_its_rise_over_what_the_water_flows_back_to() -> None:
    layout = drawn(BOOSTED, booster="check: false", tank=BIG)
    assert settled(layout, "heater") == pytest.approx(40.0 + settled_at(layout, "tee"), rel=1e-12)
    grows_m3 = 50 * GALLON * growth(F50, F140, pressure_abs_pa=100 * PSI + ATMOSPHERE_PA)
    assert settled(layout, "tee") == pytest.approx(by_head(grows_m3), rel=1e-12)
    assert layout.ladder("heater") == [("tank", 100.0)]
    assert settled(drawn(BOOSTED, tank=BIG), "heater") is None


def test_water_before_a_pump_without_a_check_is_pumped_on() -> None:
    runs = "street -> cv -> tee -> heater -> tap.hot\ntee -> booster -> tee2 -> tank"
    layout = drawn(runs, booster="check: false", tank="volume: 20 gal, precharge: 100 psi")
    assert settled_at(layout, "tee2") == pytest.approx(by_head(GROWS_M3, charge=100.0, start=100.0), rel=1e-12)
    assert settled(layout, "heater") == pytest.approx(settled_at(layout, "tee2") - 40.0, rel=1e-12)


def test_what_is_short_is_what_a_safety_relief_valve_beyond_lets_out_below_the_limit() -> None:
    """The valve has to lift at 70 psi of the last zone, where the first may stand at 80: not all is well up to 80."""
    layout = drawn(f"{ROW}\ntee2 -> tank\nheater2.relief -> relief", relief="pressure: 70 psi", tank="volume: 4 gal")
    short = SharedTanks(layout.network).shortage(layout.zone("heater1"), 80 * PSI)
    assert short.heaters == ("heater1", "heater2")
    amount = 4 * GALLON * (60 * PSI + ATMOSPHERE_PA)
    taken_m3 = 4 * GALLON - amount / (70 * PSI + ATMOSPHERE_PA)
    assert short.short_m3 == pytest.approx(short.expansion_m3 - taken_m3, rel=1e-9)


def test_vent_high_above_the_limit_is_asked_of_all_that_push_into_it_in_any_order() -> None:
    # heater1 >| heater2, tank, vent 300 ft up
    runs = f"{ROW}\ntee2 -> tank\nheater2.relief -> vent"
    layout = drawn(runs, tank=BIG, vent="elevation: 300 ft")
    asked_first, asked_last = SharedTanks(layout.network), SharedTanks(layout.network)
    zones = layout.zone("heater1"), layout.zone("heater2")
    assert [settled_pa(asked_first, zone) for zone in zones] == [settled_pa(asked_last, zone) for zone in zones[::-1]]
    assert settled_pa(asked_last, zones[1]) == pytest.approx(by_head(2 * GROWS_M3) * PSI, rel=1e-9)


def test_reducer_passes_water_until_what_lies_beyond_comes_to_its_set() -> None:
    # street 60 >| heater1 >reducer> tank
    runs = "street -> cv1 -> tee1 -> heater1 -> prv -> tee2 -> tank\ntee2 -> tap.cold\nheater1.relief -> relief"
    passes = drawn(runs, prv="set: 70 psi", tank=BIG)
    assert settled(passes, "heater1") == pytest.approx(by_head(GROWS_M3), rel=1e-9)
    stops = drawn(runs, prv="set: 61 psi", tank=BIG)
    assert settled(stops, "heater1") is None
    short = SharedTanks(stops.network).shortage(stops.zone("heater1"), 80 * PSI)
    assert (short.heaters, short.tanks) == (("heater1",), ())
    assert short.short_m3 == pytest.approx(GROWS_M3)


def test_zones_and_gates_that_settle_together_are_given_as_they_stand() -> None:
    layout = drawn(f"{ROW}\ntee2 -> tank", tank="volume: 20 gal, precharge: 55 psi", cv2="opens: 5 psi")
    first, last = layout.zone("heater1"), layout.zone("heater2")
    whole = SharedTanks(layout.network).joined(last)
    assert [(gate.near, gate.far, gate.below_abs_pa) for gate in whole.gates] == [(first, last, math.inf)]
    assert whole.lifts_pa[last] - whole.lifts_pa[first] == pytest.approx(5 * PSI)
    cold = {zone: load.static_abs_pa - whole.lifts_pa[zone] for zone, load in whole.loads.items()}
    assert cold == {zone: pytest.approx(psi * PSI + ATMOSPHERE_PA) for zone, psi in ((first, 60), (last, 55))}
    assert whole.loads[first].expansions_m3 == {"heater1": pytest.approx(GROWS_M3)}


def test_water_comes_to_the_last_from_both_and_to_the_first_from_itself() -> None:
    layout = drawn(ROW)
    settling, first, last = SharedTanks(layout.network), layout.zone("heater1"), layout.zone("heater2")
    assert settling.pushing(first, {first, last}, 80 * PSI) == {first}
    assert settling.pushing(last, {first, last}, 80 * PSI) == {first, last}


def test_water_that_stands_above_the_limit_before_a_check_would_come_too() -> None:
    # heater1, spill at 100 psi >| heater2: a tank for heater2 at 80 psi meets the water of both
    layout = drawn(f"{ROW}\ntee1 -> spill\nheater2.relief -> relief")
    settling, first, last = SharedTanks(layout.network), layout.zone("heater1"), layout.zone("heater2")
    assert settling.share(last).zones == {last}
    assert settling.pushing(last, {last}, 80 * PSI) == {first, last}
    assert settling.pushing(last, {last}, 110 * PSI) == {last}


def test_limit_is_asked_at_the_height_of_the_zone_that_a_check_lifts() -> None:
    # the first stands at 100 psi by its spill, which is 95 psi beyond a check that takes 5 psi to open
    layout = drawn(f"{ROW}\ntee1 -> spill\nheater2.relief -> relief", cv2="opens: 5 psi")
    settling, first, last = SharedTanks(layout.network), layout.zone("heater1"), layout.zone("heater2")
    assert settling.pushing(last, {last}, 94 * PSI) == {first, last}
    assert settling.pushing(last, {last}, 96 * PSI) == {last}


def test_water_before_a_reducer_that_shuts_would_come_too() -> None:
    # street 40 >| heater1, tank1 >reducer 50> heater2, tank2: heater1 may fill tank2 up to 50 psi first
    layout = drawn(
        """street -> cv -> tee1 -> heater1 -> prv -> tee2 -> heater2 -> tap.hot
           tee1 -> tank1
           tee2 -> tank2""",
        street="pressure: 40 psi",
        tank1="volume: 9 gal, precharge: 40 psi",
        tank2="volume: 2.6 gal, precharge: 40 psi",
    )
    settling, first, last = SharedTanks(layout.network), layout.zone("heater1"), layout.zone("heater2")
    assert settling.pushing(last, {last}, 110 * PSI) == {first, last}
    alone = by_head(GROWS_M3, volume=2.6 * GALLON, charge=40, start=40)
    assert alone < 80.0
    beside = settled(layout, "heater2")
    assert beside is not None
    assert beside == pytest.approx(by_head(GROWS_M3, volume=2.6 * GALLON, charge=40, start=50), rel=1e-3)
    assert beside > 80.0


def test_shortage_is_asked_at_the_height_of_the_zone_beyond_a_check_too() -> None:
    runs = f"{ROW}\ntee2 -> tank"
    layout = drawn(runs, tank="volume: 9 gal, precharge: 55 psi", cv2="opens: 5 psi")
    settling = SharedTanks(layout.network)
    for place in ("heater1", "heater2"):
        zone = layout.zone(place)
        stands = settled_pa(settling, zone)
        assert stands is not None
        assert settling.shortage(zone, stands + PSI).short_m3 == 0.0
        assert settling.shortage(zone, stands - PSI).short_m3 > 0.0


def test_tanks_of_several_zones_are_told_by_name() -> None:
    for first, last in (("tank1", "tank2"), ("tank2", "tank1")):
        layout = drawn(f"{ROW}\ntee1 -> {first}\ntee2 -> {last}", tank1=BIG, tank2=BIG)
        assert SharedTanks(layout.network).share(layout.zone("heater2")).tanks == ("tank1", "tank2")


def test_heater_on_the_street_itself_shares_nothing_with_one_that_is_short() -> None:
    #  street 60 -> prv 50 -> cv -> tee -> heater        a street of 100 psi holds heater2, whose growth goes there;
    #                               `-> cv2 -> tee2      heater comes to that pressure and passes its limit of 80
    #                          street2 100 -> tee2 -> heater2
    layout = drawn(
        "street -> prv -> cv -> tee -> heater -> tap.hot\ntee -> cv2 -> tee2 -> heater2\nstreet2 -> tee2",
        street2="pressure: 100 psi",
    )
    settling = SharedTanks(layout.network)
    share = settling.shortage(layout.zone("heater"), 80 * PSI)
    assert settled(layout, "heater") == pytest.approx(100.0)
    assert share.heaters == ("heater",)
    assert share.short_m3 == share.expansion_m3 == pytest.approx(GROWS_M3, rel=1e-3)
    assert settling.share(layout.zone("heater2")).heaters == ("heater2",)


def test_heaters_whose_water_meets_only_in_the_street_share_nothing() -> None:
    #  street -> prv -> tee +> cv1 -> heater1, tank1 -> cv2 -+
    #                       +> cv3 -> heater2, tank2 -> cv4 -+-> tee3 - street2 of 100 psi
    d = drawn(
        """street -> prv -> tee -> cv1 -> tee1 -> heater1 -> cv2 -> tee3 -> street2
        tee -> cv3 -> tee2 -> heater2 -> cv4 -> tee3
        tee1 -> tank1
        tee2 -> tank2""",
        street2="pressure: 100 psi",
        tank1="volume: 1 gal",
        tank2="volume: 1 gal",
    )
    room_m3 = GALLON * (1.0 - (60 * PSI + ATMOSPHERE_PA) / (80 * PSI + ATMOSPHERE_PA))
    for number in "12":
        heater = f"heater{number}"
        share = SharedTanks(d.network).shortage(d.zone(heater), 80 * PSI)
        assert settled(d, heater) == pytest.approx(100.0)
        assert (share.heaters, share.tanks) == ((heater,), (f"tank{number}",))
        assert share.short_m3 == pytest.approx(share.expansion_m3 - room_m3, rel=1e-9)


def test_way_out_to_which_its_water_cannot_come_holds_no_heater_whose_relief_valve_lifts_at_that_pressure() -> None:
    # street 60 >| tee >| tee2, which a vent holds at 60; tee >| heater, whose relief valve is set at 60
    runs = "street -> cv -> tee -> cv1 -> tee2 -> vent\ntee -> cv2 -> tee3 -> heater -> tank\nheater.relief -> relief"
    layout = drawn(runs, vent="elevation: 130 ft", relief="pressure: 60 psi")
    assert settled(layout, "heater") is None
    layout = drawn(f"{runs}\ntee3 -> cv3 -> tee2", vent="elevation: 130 ft", relief="pressure: 60 psi")
    assert settled(layout, "heater") == pytest.approx(60.0)


def test_water_that_no_supply_reaches_grows_into_what_stands_as_high_beyond_a_check() -> None:
    # heater, with a pipe up to 150 ft, would be full at 65 psi; it runs out to 60 >| tee, fed at 60 psi, with a tank
    layout = drawn(
        "top -> heater -> cv -> tee -> tank\nstreet -> cv2 -> tee", top="kind: tee, elevation: 150 ft", tank=BIG
    )
    assert settled(layout, "tee") == pytest.approx(by_head(GROWS_M3), rel=1e-9)
    assert settled(layout, "heater") == pytest.approx(by_head(GROWS_M3), rel=1e-9)


def test_water_that_stands_below_a_vent_where_no_supply_reaches_it_rises_in_its_tank_first() -> None:
    # heater - tee - vent, 80 ft up; tee -> cv: what stood above it has run out there
    layout = drawn(
        "street -> meter -> tap.cold\nheater -> tee -> vent\ntee -> tank\ntee -> cv -> store",
        vent="elevation: 80 ft",
        tank=f"{BIG}, precharge: 10 psi",
    )
    zone = layout.zone("heater")
    assert layout.network.start_pa(zone) == 0.0
    assert layout.network.way_out_pa[zone] > 30 * PSI
    grows_m3 = 50 * GALLON * growth(cold_k(layout.network, zone), F140, pressure_abs_pa=ATMOSPHERE_PA)
    assert settled(layout, "heater") == pytest.approx(by_head(grows_m3, charge=10, start=0), rel=1e-9)
