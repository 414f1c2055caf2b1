import pytest
from conftest import PSI, drawn


def psi(value: float) -> object:
    return pytest.approx(value, abs=0.05)


def test_water_stands_at_the_pressure_of_the_main() -> None:
    assert drawn("street -> cv -> heater").static("heater") == psi(60)


def test_height_takes_nothing_from_the_pressure_at_datum() -> None:
    assert drawn("street -> heater", heater="elevation: 30 ft").static("heater") == psi(60)


def test_main_below_datum_reaches_less_high() -> None:
    # 62.4 lb/ft3 / 144 = 0.433 psi a foot: the main 50 ft down gives 60 - 21.7
    assert drawn("street -> heater", street="elevation: -50 ft").static("heater") == psi(60 - 21.67)


def test_reducer_holds_its_set_while_the_main_stands_higher() -> None:
    assert drawn("street -> prv -> heater", street="pressure: 90 psi").static("heater") == psi(50)


def test_reducer_passes_a_main_that_stands_below_its_set() -> None:
    assert drawn("street -> prv -> heater", street="pressure: 40 psi").static("heater") == psi(40)


def test_reducer_upstairs_holds_its_set_upstairs() -> None:
    # set 50 at 30 ft is 50 + 13 at datum
    assert drawn("street -> prv -> heater", street="pressure: 90 psi", prv="elevation: 30 ft").static("heater") == psi(
        63
    )


def test_reducers_in_series_leave_the_lowest_set() -> None:
    d = drawn("street -> prv1 -> tee1 -> prv2 -> heater", street="pressure: 120 psi", prv1="set: 80 psi")
    assert (d.static("tee1"), d.static("heater")) == (psi(80), psi(50))


def test_of_two_reducers_side_by_side_the_higher_set_counts() -> None:
    d = drawn(
        "street -> tee1 -> prv1 -> tee2 -> heater\ntee1 -> prv2 -> tee2", street="pressure: 120 psi", prv2="set: 55 psi"
    )
    assert d.static("heater") == psi(55)


def test_check_that_opens_late_keeps_back_what_opens_it() -> None:
    assert drawn("street -> cv -> heater", cv="opens: 4 psi").static("heater") == psi(56)


def test_boosters_in_series_add_up() -> None:
    d = drawn("street -> booster1 -> tee1 -> booster2 -> heater", booster2="rise: 25 psi")
    assert (d.static("tee1"), d.static("heater")) == (psi(100), psi(125))


def test_boosters_in_a_circle_lift_nothing() -> None:
    # street - tee1 -> booster1 -> tee2
    #           ^---- booster2 <----+
    d = drawn("street -> tee1 -> booster1 -> tee2 -> booster2 -> tee1\ntee2 -> heater")
    assert d.static("heater") == psi(60)


def test_booster_with_a_check_back_to_its_inlet_lifts_nothing() -> None:
    d = drawn("street -> tee1 -> booster -> tee2 -> cv -> tee1\ntee2 -> heater")
    assert d.static("heater") == psi(60)


def test_reducer_behind_a_booster_holds_its_set() -> None:
    assert drawn("street -> booster -> prv -> heater").static("heater") == psi(50)


def test_of_two_mains_the_higher_counts() -> None:
    d = drawn("street1 -> cv1 -> tee1 -> heater\nstreet2 -> cv2 -> tee1", street2="pressure: 75 psi")
    assert (d.static("heater"), d.static("street1")) == (psi(75), psi(60))


def test_well_stands_at_its_cut_out_and_falls_to_its_cut_in() -> None:
    d = drawn("well -> tee1 -> heater\ntee1 -> tank")
    standing = d.network.standing
    assert d.static("heater") == psi(50)
    assert (standing.cut_in_pa[d.zone("heater")] or 0) / PSI == psi(30)


def test_cistern_on_the_roof_stands_over_the_house() -> None:
    # surface 100 ft up: 43.3 psi
    assert drawn("cistern.out -> heater").static("heater") == psi(43.35)


def test_water_behind_a_shut_valve_keeps_its_pressure() -> None:
    d = drawn("street -> prv -> valve -> heater -> tap.hot", street="pressure: 90 psi", valve="state: shut")
    assert d.static("heater") == psi(50)
    assert d.network.standing.cut_off == {d.zone("heater")}


def test_water_behind_two_shut_valves_keeps_its_pressure() -> None:
    # street - shut valve1 - booster -> heater - shut valve2 - tap
    d = drawn("street -> valve1 -> booster -> heater -> valve2 -> tap.hot", valve1="state: shut", valve2="state: shut")
    assert (d.static("heater"), d.static("tap.hot")) == (psi(100), psi(100))
    assert d.network.standing.cut_off == {d.zone("booster.in"), d.zone("heater"), d.zone("tap.hot")}


def test_shut_valve_does_not_count_while_another_way_is_open() -> None:
    # street1 at 90 - shut valve - heater - street2 at 60
    d = drawn("street1 -> valve -> heater -> street2", street1="pressure: 90 psi", valve="state: shut")
    assert d.static("heater") == psi(60)
    assert d.network.standing.cut_off == frozenset()


def test_shut_bypass_round_a_booster_that_is_itself_cut_off_lifts_it_once() -> None:
    #                         +-- shut valve2 ----+
    # street - shut valve1 ---+                   +- heater
    #                         +---- booster -> ---+
    d = drawn(
        "street -> valve1 -> tee1 -> booster -> tee2 -> heater\ntee1 -> valve2 -> tee2",
        valve1="state: shut",
        valve2="state: shut",
    )
    assert (d.static("tee1"), d.static("heater")) == (psi(60), psi(100))


def test_part_that_no_water_reaches_has_no_pressure() -> None:
    # the check points away from the heater
    d = drawn("heater -> cv -> street")
    assert d.static("heater") is None
    assert d.network.standing.at(d.zone("heater")) == float("-inf")


@pytest.mark.parametrize(("second", "coldest"), [("40 degF", 277.59), ("70 degF", 283.15)])
def test_coldest_supply_that_reaches_the_water_counts(second: str, coldest: float) -> None:
    d = drawn("street1 -> cv -> heater -> street2", street2=f"temperature: {second}")
    assert d.network.standing.cold_k[d.zone("heater")] == pytest.approx(coldest, abs=0.01)


def test_supply_behind_a_check_against_it_cools_nothing() -> None:
    d = drawn("street1 -> heater -> cv -> street2", street2="temperature: 35 degF")
    assert d.network.standing.cold_k[d.zone("heater")] == pytest.approx(283.15)


def test_water_cut_off_was_filled_from_the_supply_behind_the_shut_valve() -> None:
    d = drawn("street -> valve -> heater", street="temperature: 40 degF", valve="state: shut")
    assert d.network.standing.cold_k[d.zone("heater")] == pytest.approx(277.59, abs=0.01)


def test_twenty_five_boosters_each_behind_a_stiff_check_are_settled_at_once() -> None:
    #       +------------- cv ----------------+
    # tee0 -+                                 +- tee1 - and so on: searched highest first, each stage
    #       +- meter (stiff check) - booster -+  would be gone through twice as often as the one before
    runs, fields = ["street -> tee0"], {}
    for n in range(25):
        runs += [f"tee{n} -> cv{n} -> tee{n + 1}", f"tee{n} -> meter{n} -> booster{n} -> tee{n + 1}"]
        stiff = 16 / 2**n
        fields[f"meter{n}"] = f"kind: check_valve, opens: {stiff:.9f} psi"
        fields[f"booster{n}"] = f"rise: {stiff + 1:.9f} psi"
    d = drawn("\n".join([*runs, "tee25 -> heater"]), **fields)
    assert d.static("heater") == psi(60 + 25)


def test_colder_supply_behind_a_shut_valve_cools_nothing_that_another_fills() -> None:
    d = drawn("street1 -> valve -> heater -> street2", street1="temperature: 35 degF", valve="state: shut")
    assert d.network.standing.cold_k[d.zone("heater")] == pytest.approx(283.15)


def test_supply_is_followed_beyond_a_place_that_it_reaches_twice() -> None:
    d = drawn("street -> tee1 -> cv1 -> tee2\ntee1 -> cv2 -> tee2\ntee1 -> cv3 -> heater")
    assert d.network.standing.cold_k[d.zone("heater")] == pytest.approx(283.15)


def test_well_on_a_hill_falls_to_its_cut_in_and_the_height() -> None:
    # 10 ft up: 30 + 4.3 at datum
    d = drawn("well -> heater", well="elevation: 10 ft")
    assert (d.network.standing.cut_in_pa[d.zone("heater")] or 0) / PSI == psi(34.33)


def test_reducer_set_the_wrong_way_round_is_filled_through_its_bypass() -> None:
    runs = "heater -> prv -> tee\nstreet -> cv -> tee"
    assert drawn(runs, prv="bypass: true").static("heater") == psi(60)
    assert drawn(runs).static("heater") is None


def test_water_comes_back_through_a_pump_without_a_check_below_what_it_lifts() -> None:
    # heater > booster > tee < cv < street: all that comes to the heater comes back through the pump
    runs = "heater -> booster -> tee\nstreet -> cv -> tee"
    assert drawn(runs, booster="check: false").static("heater") == psi(20)
    assert drawn(runs).static("heater") is None


def test_water_that_comes_forward_at_all_does_not_come_the_wrong_way() -> None:
    # street2 at 90 psi stands behind the reducer, street at 60 before it
    runs = "street -> tee -> prv -> tee2 -> heater\nstreet2 -> cv -> tee2"
    assert drawn(runs, prv="bypass: true", street2="pressure: 90 psi").static("tee") == psi(60)


def test_way_back_that_is_open_counts_before_one_forward_that_is_shut() -> None:
    # street2 at 90 psi lies behind a shut valve, street at 60 behind a bypass the wrong way
    runs = "tee2 -> prv -> tee\nstreet -> cv -> tee\nstreet2 -> valve -> tee2 -> heater"
    layout = drawn(runs, prv="bypass: true", valve="state: shut", street2="pressure: 90 psi")
    assert layout.static("heater") == psi(60)
    assert layout.zone("heater") not in layout.network.standing.cut_off


def test_zone_behind_a_shut_valve_is_filled_on_through_a_bypass_the_wrong_way() -> None:
    layout = drawn(
        "street -> valve -> tee\ntee2 -> prv -> tee\ntee2 -> heater", prv="bypass: true", valve="state: shut"
    )
    assert layout.static("heater") == psi(60)
    assert layout.zone("heater") in layout.network.standing.cut_off


def test_of_ways_through_one_shut_valve_that_forward_counts_before_one_back() -> None:
    # tee2 was fed by street at 60 psi through valve1, or by street2 at 90 through a bypass the wrong way and valve2
    runs = "street -> valve1 -> tee2 -> heater\ntee4 -> prv -> tee3 -> street2\ntee4 -> valve2 -> tee2"
    shut = {"valve1": "state: shut", "valve2": "state: shut", "prv": "bypass: true, set: 20 psi"}
    assert drawn(runs, street2="pressure: 90 psi", **shut).static("heater") == psi(60)


REDUCED_BACK = "street -> tee1 -> booster -> tee2 -> tap.hot\ntee2 -> prv -> tee1"
"""A booster from 60 to 100 psi, and a reducer from behind it back to its inlet."""


@pytest.mark.parametrize(("set_psi", "stands_psi"), [(59, 100), (60, 100), (61, 60)])
def test_booster_keeps_its_rise_where_the_reducer_back_to_its_inlet_is_held_shut(set_psi: int, stands_psi: int) -> None:
    d = drawn(REDUCED_BACK, prv=f"set: {set_psi} psi")
    assert (d.static("tee1"), d.static("tee2")) == (psi(60), psi(stands_psi))
    assert d.network.standing.circling == (() if stands_psi == 100 else ("booster",))


def test_reducer_that_alone_feeds_what_lies_behind_it_is_not_held_shut_by_its_own_set() -> None:
    # street 60 - prv 50 - booster - check - back before the reducer: the water goes round
    d = drawn("street -> tee1 -> prv -> tee2 -> booster -> tee3 -> cv -> tee1")
    assert d.network.standing.circling == ("booster",)


def test_one_reducer_held_shut_by_what_another_lets_stand_is_found_in_turn() -> None:
    # booster1: 60 to 100, back through prv1 (50) shut; so booster2 stands over 100, back through prv2 (90) shut
    d = drawn(
        "street -> tee1 -> booster1 -> tee2 -> booster2 -> tee3\ntee2 -> prv1 -> tee1\ntee3 -> prv2 -> tee2",
        prv2="set: 90 psi",
    )
    assert (d.static("tee2"), d.static("tee3")) == (psi(100), psi(140))


def test_booster_before_a_circulation_keeps_its_rise() -> None:
    d = drawn("street -> booster -> tee1 -> heater -> tee2 -> tap.hot\ntee2 -> pump -> tee1")
    assert (d.static("heater"), d.network.standing.circling) == (psi(100), ())
