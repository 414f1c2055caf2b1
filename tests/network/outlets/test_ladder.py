import pytest
from conftest import PSI, drawn

from plumbnet.network.outlets.ladder import MOST_RUNGS


def test_open_pipe_to_the_street_opens_at_the_pressure_of_the_main() -> None:
    assert drawn("street -> meter -> heater").ladder("heater") == [("street", 60)]


def test_check_valve_stops_the_way_back() -> None:
    # street -> cv -> heater with its relief valve: only that is left
    d = drawn("street -> cv -> heater", heater="relief: {pressure: 150 psi}")
    assert d.ladder("heater") == [("heater/relief", 150)]


def test_outlets_above_the_main_are_listed_for_the_day_it_is_shut() -> None:
    d = drawn(
        "street -> tee1 -> heater\ntee1 -> spill\ntee1 -> tank\nheater.relief -> relief", tank="precharge: 70 psi"
    )
    assert d.ladder("heater") == [("street", 60), ("tank", 70), ("spill", 100), ("relief", 150)]


def test_tank_charged_below_the_water_takes_from_the_static_pressure_on() -> None:
    d = drawn("street -> cv -> tee1 -> heater\ntee1 -> tank", tank="precharge: 40 psi")
    assert d.ladder("heater") == [("tank", 60)]


def test_tank_charged_above_the_water_takes_from_its_charge_on() -> None:
    d = drawn("street -> cv -> tee1 -> heater\ntee1 -> tank", tank="precharge: 75 psi")
    assert d.ladder("heater") == [("tank", 75)]


def test_tank_behind_a_check_is_reached_from_the_heater_and_not_the_other_way() -> None:
    # street -> cv1 -> heater -> cv2 -> tee1 - tank
    #                                    +---- boiler
    d = drawn("street -> cv1 -> heater -> cv2 -> tee1 -> tank\ntee1 -> boiler\nheater.relief -> relief")
    assert d.ladder("heater") == [("tank", 60), ("relief", 150)]
    assert d.ladder("boiler") == [("tank", 60)]


def test_bypass_opens_at_the_pressure_of_the_main_where_that_is_higher() -> None:
    # street (90) -> prv set 50 with bypass -> heater at 50
    d = drawn("street -> prv -> heater", street="pressure: 90 psi", prv="bypass: true")
    assert d.ladder("heater") == [("street", 90)]


def test_bypass_with_a_main_below_the_set_opens_at_once() -> None:
    d = drawn("street -> prv -> heater", street="pressure: 45 psi", prv="bypass: true")
    assert d.ladder("heater") == [("street", 45)]


def test_reducer_without_bypass_lets_nothing_back() -> None:
    assert drawn("street -> prv -> heater", street="pressure: 45 psi").ladder("heater") == []


def test_relief_behind_a_reducer_is_out_of_reach_above_its_set() -> None:
    # heater at 60 - prv set 50 -> relief at 150, spill at 45: the far side stands at its 50 already
    d = drawn("street -> cv -> heater -> prv -> tee1 -> relief\ntee1 -> spill", spill="pressure: 45 psi")
    assert d.ladder("heater") == []


def test_reducer_that_is_not_satisfied_passes_up_to_its_set_and_no_further() -> None:
    # street 40 -> cv1 -> heater -> prv set 50 -> tee1: a spill at 48 can open, one at 55 cannot
    runs = "street -> cv1 -> heater -> prv -> tee1 -> spill"
    assert drawn(runs, street="pressure: 40 psi", spill="pressure: 48 psi").ladder("heater") == [("spill", 48)]
    assert drawn(runs, street="pressure: 40 psi", spill="pressure: 55 psi").ladder("heater") == []


def test_beyond_a_reducer_no_zone_that_stands_above_its_set_is_reached() -> None:
    # street1 40 -> cv1 -> heater -> prv set 50 -> cv2 -> street2 at 60, where a vent spills at 17
    d = drawn("street1 -> cv1 -> heater -> prv -> cv2 -> tee1 -> street2\ntee1 -> vent", street1="pressure: 40 psi")
    assert d.ladder("heater") == []


def test_way_without_a_reducer_reaches_what_a_lower_one_through_it_does_not() -> None:
    #          +------ prv set 50 ------+
    # heater - +                        + tee2 -> cv2 -> spill at 70
    #          +- meter: check, 5 psi --+
    d = drawn(
        "street -> cv1 -> heater -> tee1 -> prv -> tee2 -> cv2 -> spill\ntee1 -> meter -> tee2",
        street="pressure: 40 psi",
        meter="kind: check_valve, opens: 5 psi",
        spill="pressure: 70 psi",
    )
    assert d.ladder("heater") == [("spill", 75)]


def test_what_stands_before_a_reducer_does_not_count_against_its_set() -> None:
    # heater at 100 above an unchecked booster, back through it to tee1 at 60,
    # and on through a reducer set at 80 to a spill at 70: it opens with tee1 at 70 and the heater at 110
    d = drawn(
        "street -> cv1 -> tee1 -> booster -> heater\ntee1 -> prv -> spill",
        booster="check: false",
        prv="set: 80 psi",
        spill="pressure: 70 psi",
    )
    assert d.ladder("heater") == [("spill", 110)]


def test_of_two_ways_the_lower_counts() -> None:
    # back to the main at 90 by a bypass, or through a check to a second main at 70
    d = drawn(
        "street1 -> prv -> tee1 -> heater\ntee1 -> cv -> street2",
        street1="pressure: 90 psi",
        street2="pressure: 70 psi",
        prv="bypass: true",
    )
    assert d.ladder("heater") == [("street2", 70)]


def test_highest_threshold_on_the_way_counts() -> None:
    # heater 50 -> cv -> tee1 at 80 (street2) -> prv1 bypass back -> street1 at 55
    d = drawn(
        "street2 -> cv2 -> tee1 -> cv1 -> street1\nwell -> cv3 -> heater -> cv4 -> tee1",
        street1="pressure: 55 psi",
        street2="pressure: 80 psi",
    )
    assert d.static("street1") == pytest.approx(80)  # street2 pushes through both checks
    assert d.ladder("heater") == [("street1", 80)]


def test_vent_opens_at_the_height_of_its_rim() -> None:
    # rim 170 ft up: 73.7 psi
    d = drawn("street -> cv -> heater -> vent", vent="elevation: 170 ft")
    ((name, opens),) = d.ladder("heater")
    assert name == "vent"
    assert opens == pytest.approx(73.7, abs=0.1)


def test_vent_below_the_static_pressure_already_spills() -> None:
    d = drawn("street -> cv -> heater -> vent")
    ((name, opens),) = d.ladder("heater")
    assert name == "vent"
    assert opens < 20


def test_running_tap_is_a_way_to_open_air() -> None:
    d = drawn("street -> cv -> heater -> tap.hot", tap="drawing: true")
    assert d.ladder("heater") == [("tap", 0)]


def test_well_takes_nothing_back_and_its_tank_takes_from_the_cut_out_on() -> None:
    d = drawn("well -> tee1 -> heater\ntee1 -> tank\nheater.relief -> relief", tank="precharge: 28 psi")
    assert d.ladder("heater") == [("tank", 50), ("relief", 150)]


def test_cistern_takes_water_back_at_its_surface() -> None:
    d = drawn("cistern.out -> heater")
    ((name, opens),) = d.ladder("heater")
    assert name == "cistern"
    assert opens == pytest.approx(43.4, abs=0.1)


def test_way_back_through_a_bypass_opens_at_the_pressure_at_which_the_water_stands() -> None:
    # street1 80 > prv 50, bypassed > heater < cv < street2 90: water stands at 90 and goes back to street1
    d = drawn(
        "street1 -> prv -> heater\nstreet2 -> cv -> heater.hot",
        prv="bypass: true",
        street1="pressure: 80 psi",
        street2="pressure: 90 psi",
    )
    assert d.ladder("heater") == [("street1", 90)]


def test_unchecked_booster_lets_water_back_and_a_checked_one_does_not() -> None:
    assert drawn("street -> booster -> heater").ladder("heater") == []
    assert drawn("street -> booster -> heater", booster="check: false").ladder("heater") == [("street", 100)]


def test_shut_valve_stops_the_way_though_the_pressure_stands() -> None:
    d = drawn("street -> valve -> heater", valve="state: shut", heater="relief: {pressure: 150 psi}")
    assert d.ladder("heater") == [("heater/relief", 150)]


def test_nothing_is_sought_beyond_the_main() -> None:
    # the neighbour's tank hangs on the same main, but the main takes all
    d = drawn("street -> meter1 -> heater1\nstreet -> cv -> tee1 -> heater2\ntee1 -> tank")
    assert d.ladder("heater1") == [("street", 60)]


def test_ladder_names_the_gates_it_crosses() -> None:
    d = drawn("street -> cv1 -> heater -> cv2 -> tee1 -> cv3 -> tank")
    (rung,) = d.network.ladder(d.zone("heater"))
    assert [crossing.part for crossing in rung.crossings] == ["cv2", "cv3"]


def test_ladder_of_a_house_with_forty_tanks_is_cut_short() -> None:
    tanks = "\n".join(f"tee1 -> tank{n}" for n in range(40))
    d = drawn(f"street -> cv -> tee1 -> heater\n{tanks}")
    assert len(d.ladder("heater")) == MOST_RUNGS


def test_a_thousand_checks_in_a_row_are_climbed() -> None:
    chain = " -> ".join(f"cv{n}" for n in range(1000))
    d = drawn(f"well -> heater -> {chain} -> street", street="pressure: 70 psi")
    (rung,) = d.network.ladder(d.zone("heater"))
    assert len(rung.crossings) == 1000
    assert rung.opens_pa / PSI == pytest.approx(70)


def test_outlet_at_the_very_set_of_a_reducer_is_out_of_reach_behind_it() -> None:
    runs = "street -> cv1 -> heater -> prv -> tee1 -> spill"
    assert drawn(runs, street="pressure: 40 psi", spill="pressure: 50 psi").ladder("heater") == []


def test_zone_that_stands_at_the_very_set_of_a_reducer_is_out_of_reach_behind_it() -> None:
    d = drawn(
        "street1 -> cv1 -> heater -> prv -> cv2 -> tee1 -> street2\ntee1 -> vent",
        street1="pressure: 40 psi",
        street2="pressure: 50 psi",
    )
    assert d.ladder("heater") == []


def test_vent_that_spills_is_reached_once_the_heater_stands_above_the_water_there() -> None:
    # well 50 -> heater -> cv -> tee1 at 70, where a vent spills at 17
    d = drawn("well -> heater -> cv -> tee1 -> street\ntee1 -> vent", street="pressure: 70 psi")
    assert d.ladder("heater") == [("vent", 70)]


def test_of_two_ways_out_at_one_pressure_the_one_behind_fewer_gates_ends_the_search() -> None:
    #          +- cv1 -> cv2 -> vent1
    # heater - +
    #          +- cv3 -> vent2            both rims 170 ft up
    d = drawn(
        "well -> heater -> tee1 -> cv1 -> cv2 -> vent1\ntee1 -> cv3 -> vent2",
        vent1="elevation: 170 ft",
        vent2="elevation: 170 ft",
    )
    assert [name for name, _ in d.ladder("heater")] == ["vent2"]


def test_every_outlet_behind_a_check_is_listed() -> None:
    d = drawn("street -> cv1 -> heater -> cv2 -> tee1 -> tank\ntee1 -> spill")
    assert d.ladder("heater") == [("tank", 60), ("spill", 100)]


def test_zone_with_just_as_many_outlets_as_a_ladder_lists_shows_them_all() -> None:
    tanks = [f"tank{n}" for n in range(MOST_RUNGS - 1)]
    runs = "\n".join(f"tee1 -> {tank}" for tank in tanks)
    d = drawn(f"street -> tee1 -> heater\n{runs}", **dict.fromkeys(tanks, "precharge: 70 psi"))
    assert len(d.ladder("heater")) == MOST_RUNGS


def test_outlets_of_the_zone_fill_up_what_the_search_leaves_of_the_ladder() -> None:
    # the vent behind cv2 ends the search; of the sixteen tanks fifteen find a place
    tanks = [f"tank{n}" for n in range(MOST_RUNGS)]
    runs = "\n".join(f"tee1 -> {tank}" for tank in tanks)
    d = drawn(
        f"street -> cv1 -> tee1 -> heater\ntee1 -> cv2 -> vent\n{runs}", **dict.fromkeys(tanks, "precharge: 70 psi")
    )
    ladder = d.ladder("heater")
    assert len(ladder) == MOST_RUNGS
    assert ladder[0] == ("vent", 60)


def test_of_two_outlets_at_one_pressure_the_one_that_takes_any_amount_comes_first() -> None:
    d = drawn("street -> tee1 -> heater\ntee1 -> spill\ntee1 -> tank", street="pressure: 100 psi")
    assert d.ladder("heater") == [("street", 100), ("spill", 100), ("tank", 100)]


def test_names_and_not_the_order_of_the_file_settle_what_is_equal() -> None:
    # both rims 170 ft up, behind one check each
    rims = {"vent1": "elevation: 170 ft", "vent2": "elevation: 170 ft"}
    d = drawn("well -> heater -> tee1 -> cv1 -> vent2\ntee1 -> cv2 -> vent1", **rims)
    assert [name for name, _ in d.ladder("heater")] == ["vent1"]
    # two checks side by side to one tank
    d = drawn("street -> cv -> heater -> tee1 -> cv2 -> tee2 -> tank\ntee1 -> cv1 -> tee2")
    (rung,) = d.network.ladder(d.zone("heater"))
    assert [crossing.part for crossing in rung.crossings] == ["cv1"]


def test_main_behind_a_check_ends_the_search_before_a_valve_that_lets_off_at_the_same_pressure() -> None:
    d = drawn("well -> heater -> tee1 -> cv1 -> street\ntee1 -> cv2 -> spill", street="pressure: 100 psi")
    assert d.ladder("heater") == [("street", 100)]
