import math
from itertools import pairwise

import pytest
from conftest import PSI, drawn

from plumbnet.network.outlets import cut_sets
from plumbnet.network.outlets.cut_sets import MOST_SETS


def test_check_valve_alone_stops_it() -> None:
    assert drawn("street -> meter -> cv -> heater").stops("heater", 80) == (("cv",),)


def test_nothing_stops_open_water() -> None:
    assert drawn("street -> meter -> heater").stops("heater", 80) == ()


def test_two_checks_in_a_row_stop_it_together() -> None:
    assert drawn("street -> cv1 -> tee1 -> cv2 -> heater").stops("heater", 80) == (("cv1", "cv2"),)


def test_of_two_ways_back_the_one_past_fewer_devices_is_named() -> None:
    #          +-- cv1 -> cv2 --+
    # street - +                + - heater
    #          +----- cv3 ------+
    d = drawn("street -> tee1 -> cv1 -> cv2 -> tee2 -> heater\ntee1 -> cv3 -> tee2")
    assert d.stops("heater", 80) == (("cv3",),)


def test_each_of_two_checks_side_by_side_is_a_set_of_its_own() -> None:
    d = drawn("street -> tee1 -> cv1 -> tee2 -> heater\ntee1 -> cv2 -> tee2")
    assert d.stops("heater", 80) == (("cv1",), ("cv2",))


def test_checks_at_both_ends_of_a_pipe_shut_its_water_in() -> None:
    # street -> cv1 -> heater -> cv2 -> tap: the second check leads away from the street
    d = drawn("street -> cv1 -> heater -> cv2 -> tap.hot")
    assert d.stops("heater", 80) == (("cv1",),)
    assert d.stops("tap.hot", 80) == (("cv1", "cv2"),)


def test_device_passed_in_its_own_direction_does_not_count() -> None:
    # heater -> cv2 -> tee1 <- cv1 <- street: only cv1 stands against the water
    d = drawn("street -> cv1 -> tee1\nwell -> heater -> cv2 -> tee1")
    assert d.stops("heater", 80) == (("cv1",),)


def test_bypass_that_opens_only_above_the_limit_counts() -> None:
    # street (100) -> prv set 50 with bypass -> heater: the bypass opens at 100
    runs, fields = "street -> prv -> heater", {"street": "pressure: 100 psi", "prv": "bypass: true"}
    assert drawn(runs, **fields).stops("heater", 80) == (("prv",),)
    assert drawn(runs, **fields).stops("heater", 100) == ()


def test_reducer_under_a_high_main_stops_it() -> None:
    assert drawn("street -> prv -> heater", street="pressure: 120 psi").stops("heater", 80) == (("prv",),)


def test_cistern_above_the_limit_is_a_way_out_like_the_street() -> None:
    # surface 300 ft up: 130 psi over a reducer set at 50
    assert drawn("cistern.out -> prv -> heater", cistern="elevation: 300 ft").stops("heater", 80) == (("prv",),)


def test_vent_with_its_rim_above_the_limit_is_no_way_out() -> None:
    # rim 300 ft up: 130 psi
    d = drawn("well -> heater -> cv -> vent", vent="elevation: 300 ft")
    assert d.stops("heater", 80) == ()
    assert d.stops("heater", 140) == ()  # and at 140 the check lets the water through to it


def test_vent_below_the_limit_is_a_way_out_like_the_street() -> None:
    # street -> cv1 -> cv2 -> heater.cold, and a vent with its rim at 65 psi behind cv3 -> heater.return
    d = drawn("street -> cv1 -> cv2 -> heater\nvent -> tee1 -> cv3 -> heater.return", vent="elevation: 150 ft")
    assert d.stops("heater", 80) == (("cv3",),)
    assert d.stops("heater", 62) == (("cv1", "cv2"),)


def test_shut_valve_stops_it() -> None:
    assert drawn("street -> valve -> heater", valve="state: shut").stops("heater", 80) == (("valve",),)


def test_check_that_leads_to_a_higher_main_counts_above_the_limit() -> None:
    d = drawn("well -> heater -> cv -> street", street="pressure: 90 psi")
    assert d.stops("heater", 80) == (("cv",),)
    assert d.stops("heater", 95) == ()


def test_well_is_no_way_out() -> None:
    assert drawn("well -> cv -> heater").stops("heater", 80) == ()


def test_mixing_valve_is_one_device_though_it_holds_two_checks() -> None:
    # well -> heater -> hot  [mixer] mixed -> store: from the store back through either inlet
    #          street -> cold
    d = drawn("well -> cv -> heater -> mixer.hot\nstreet -> mixer.cold\nmixer.mixed -> store")
    assert d.stops("store", 80) == (("mixer",),)
    assert d.stops("heater", 80) == (("mixer",),)


def test_device_passed_twice_is_named_once() -> None:
    # a body with two checks in a row, a - b - c, against the water from c to a
    twin = "kind: device, ports: [a, c, b], passages: [{one_way: [a, b]}, {one_way: [b, c]}]"
    assert drawn("street -> twin -> heater", twin=twin).stops("heater", 80) == (("twin",),)


def test_more_than_sixteen_sets_are_counted() -> None:
    # 3 x 7 = 21 pairs: three checks side by side, then seven
    first = "\n".join(f"tee1 -> cv{n} -> tee2" for n in range(1, 4))
    second = "\n".join(f"tee2 -> cv{n} -> tee3" for n in range(4, 11))
    d = drawn(f"street -> tee1\n{first}\n{second}\ntee3 -> heater")
    stops = d.network.stops(d.zone("heater"), 80 * PSI)
    assert len(stops.sets) == MOST_SETS
    assert stops.more == 5
    assert not stops.most
    assert stops.sets[0] == ("cv1", "cv10")


def test_count_of_sets_ends_somewhere() -> None:
    # 12 to the power of 4 sets
    rows = ["\n".join(f"tee{row} -> cv{row}0{n} -> tee{row + 1}" for n in range(12)) for row in range(4)]
    d = drawn("\n".join(["street -> tee0", *rows, "tee4 -> heater"]))
    stops = d.network.stops(d.zone("heater"), 80 * PSI)
    assert stops.most
    assert len(stops.sets) + stops.more == 1000


def test_two_devices_that_stand_in_every_row_do_not_double_the_search_without_end() -> None:
    # one body with a check in each of 60 rows, and another beside it: 2 to the power of 60 ways
    ports = [f"p{n}" for n in range(61)]
    rows = [f"{{one_way: [{a}, {b}]}}" for a, b in pairwise(ports)]
    many = f"kind: device, ports: [{', '.join(ports)}], passages: [{', '.join(rows)}]"
    joints = "\n".join(f"one.{port} -> tee{n}\ntwo.{port} -> tee{n}" for n, port in enumerate(ports))
    d = drawn(f"street -> tee0\n{joints}\ntee60 -> heater", one=many, two=many)
    stops = d.network.stops(d.zone("heater"), 80 * PSI)
    assert ("one",) in stops.sets
    assert stops.most


def test_three_thousand_checks_in_a_row_are_one_set() -> None:
    chain = " -> ".join(f"cv{n}" for n in range(3000))
    (devices,) = drawn(f"street -> {chain} -> heater").stops("heater", 80)
    assert len(devices) == 3000


def test_vent_with_its_rim_at_the_very_limit_is_a_way_out() -> None:
    d = drawn("street -> cv1 -> cv2 -> heater\nvent -> tee1 -> cv3 -> heater.return", vent="elevation: 150 ft")
    rim_pa = d.network.site_of["vent"].opens_pa
    assert d.network.stops(d.zone("heater"), rim_pa).sets == (("cv3",),)
    assert d.network.stops(d.zone("heater"), math.nextafter(rim_pa, 0.0)).sets == (("cv1", "cv2"),)


@pytest.mark.parametrize(("most", "sets", "ended_early"), [(2, (("cv1",), ("cv2",)), False), (1, (("cv1",),), True)])
def test_search_for_sets_ends_after_its_last_step(
    monkeypatch: pytest.MonkeyPatch, most: int, sets: tuple[tuple[str, ...], ...], *, ended_early: bool
) -> None:
    # the heater's zone is the first step, what lies beyond cv1 the second; beyond cv2 the third
    monkeypatch.setattr(cut_sets, "_MOST_STEPS", most)
    d = drawn("street -> tee1 -> cv1 -> tee2 -> heater\ntee1 -> cv2 -> tee2")
    stops = d.network.stops(d.zone("heater"), 80 * PSI)
    assert (stops.sets, stops.most) == (sets, ended_early)


def test_tank_is_no_way_out_though_it_takes_water() -> None:
    assert drawn("street -> cv -> tee -> heater\ntee -> tank").stops("heater", 100) == (("cv",),)
