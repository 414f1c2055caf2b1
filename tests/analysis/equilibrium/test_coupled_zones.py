import math

import pytest
from conftest import PSI, Drawn, drawn

from plumbnet.analysis.equilibrium.coupled_zones import coupled_heights, coupled_zones, gate_of, is_held, pushing
from plumbnet.physics.fluids.water import ATMOSPHERE_PA

SERIES = "street -> cv1 -> heater1 -> cv2 -> heater2 -> tap.hot"


def with_it(layout: Drawn, place: str) -> list[bool]:
    """Of the street and both heaters in a row, which settle together with a place."""
    zones, _ = coupled_zones(layout.network, layout.zone(place))
    return [layout.zone(name) in zones for name in ("street", "heater1", "heater2")]


def test_zones_joined_by_a_check_settle_together_and_the_street_is_left_out() -> None:
    layout = drawn(SERIES)
    assert with_it(layout, "heater1") == with_it(layout, "heater2") == [False, True, True]
    (crossing,) = coupled_zones(layout.network, layout.zone("heater1"))[1]
    assert (crossing.part, crossing.near, crossing.far) == ("cv2", layout.zone("heater1"), layout.zone("heater2"))


def test_street_that_takes_water_back_belongs_to_it_and_nothing_beyond_it() -> None:
    # street <bypass< prv ... and a neighbour at the same street
    layout = drawn(
        "street -> tee -> prv -> heater1 -> tap1.hot\ntee -> prv2 -> heater2 -> tap2.hot",
        prv="bypass: true",
        prv2="bypass: true",
    )
    assert with_it(layout, "heater1") == [True, True, False]
    assert with_it(layout, "street") == [True, False, False]


def test_shut_valve_parts_what_settles_together() -> None:
    layout = drawn(SERIES.replace("cv2", "cv2 -> valve"), valve="state: shut")
    assert with_it(layout, "heater1") == [False, True, False]


def test_reducer_at_its_set_lets_nothing_through() -> None:
    layout = drawn("street -> cv1 -> heater1 -> prv -> heater2 -> tap.hot", prv="set: 50 psi")
    assert with_it(layout, "heater1") == [False, True, False]
    layout = drawn("street -> cv1 -> heater1 -> prv -> heater2 -> tap.hot", prv="set: 70 psi")
    assert with_it(layout, "heater1") == [False, True, True]


def test_zone_open_to_the_street_is_held_and_one_with_a_vent_high_above_is_not() -> None:
    layout = drawn("street -> tee -> cv -> heater -> tap.hot\nheater.relief -> vent", vent="elevation: 300 ft")
    assert is_held(layout.network, layout.zone("street"))
    assert not is_held(layout.network, layout.zone("heater"))
    layout = drawn("street -> cv -> heater -> tap.hot\nheater.relief -> vent", vent="elevation: 10 ft")
    assert is_held(layout.network, layout.zone("heater"))


def lift(layout: Drawn, *places: str) -> list[float]:
    zones, crossings = coupled_zones(layout.network, layout.zone(places[0]))
    found = coupled_heights(layout.network, zones, crossings).lifts_pa
    return [found[layout.zone(place)] / PSI for place in places]


def test_checks_that_open_at_once_lift_nothing() -> None:
    assert lift(drawn(SERIES), "heater1", "heater2") == [0.0, 0.0]


def test_check_that_takes_a_difference_to_open_lifts_what_lies_beyond() -> None:
    near, far = lift(drawn(SERIES, cv2="opens: 5 psi"), "heater1", "heater2")
    assert far - near == pytest.approx(5.0)
    far, near = lift(drawn(SERIES, cv2="opens: 5 psi"), "heater2", "heater1")
    assert far - near == pytest.approx(5.0)


def test_of_two_checks_side_by_side_the_lighter_opens() -> None:
    runs = "street -> cv1 -> tee1 -> cv2 -> tee2 -> heater -> tap.hot\ntee1 -> cv3 -> tee2"
    near, far = lift(drawn(runs, cv2="opens: 5 psi", cv3="opens: 2 psi"), "tee1", "tee2")
    assert far - near == pytest.approx(2.0)


def test_of_ways_that_lose_different_pressures_those_that_lose_least_or_come_first_are_fitted() -> None:
    # tee1 >2 psi> tee2 >2 psi> tee3, and tee1 >3 psi> tee3: no heights fit both
    runs = "street -> cv1 -> tee1 -> cv2 -> tee2 -> cv3 -> tee3 -> heater -> tap.hot\ntee1 -> cv4 -> tee3"
    layout = drawn(runs, cv2="opens: 2 psi", cv3="opens: 2 psi", cv4="opens: 3 psi")
    one, two, three = (layout.zone(place) for place in ("tee1", "tee2", "tee3"))
    zones, crossings = coupled_zones(layout.network, one)
    found = coupled_heights(layout.network, zones, crossings)
    (left_out,) = found.left_out
    assert left_out.pair == (one, three)
    assert left_out.higher_pa / PSI == pytest.approx(3.0)
    assert [found.lifts_pa[zone] / PSI for zone in (one, two, three)] == pytest.approx([0.0, 2.0, 4.0])
    found = coupled_heights(layout.network, zones, crossings, first=[(one, three)])
    assert [step.pair for step in found.left_out] == [(two, three)]
    assert [found.lifts_pa[zone] / PSI for zone in (one, two, three)] == pytest.approx([0.0, 2.0, 3.0])


def test_water_comes_to_a_zone_from_those_before_its_gates() -> None:
    # 1 > 2 > 3, 4 > 3
    into = {2: [1], 3: [2, 4]}
    assert pushing(2, {1, 2, 3, 4}.__contains__, into) == {1, 2}
    assert pushing(3, {1, 2, 3, 4}.__contains__, into) == {1, 2, 3, 4}
    assert pushing(3, {1, 3, 4}.__contains__, into) == {3, 4}


def test_water_that_can_go_round_comes_to_a_zone_once() -> None:
    # 1 > 2 > 1, as in a loop between two checks
    into = {1: [2], 2: [1]}
    assert pushing(1, {1, 2}.__contains__, into) == pushing(2, {1, 2}.__contains__, into) == {1, 2}


def test_gate_leads_from_the_near_zone_to_the_far_shuts_at_the_set_and_opens_by_its_difference() -> None:
    layout = drawn(SERIES, cv2="opens: 5 psi")
    (crossing,) = coupled_zones(layout.network, layout.zone("heater1"))[1]
    gate = gate_of(layout.network, crossing)
    assert (gate.near, gate.far, gate.below_abs_pa) == (layout.zone("heater1"), layout.zone("heater2"), math.inf)
    assert gate.opens_pa == pytest.approx(5 * PSI)
    layout = drawn("street -> cv1 -> heater1 -> prv -> heater2 -> tap.hot", prv="set: 70 psi")
    (crossing,) = coupled_zones(layout.network, layout.zone("heater1"))[1]
    gate = gate_of(layout.network, crossing, 1000.0)
    assert gate.below_abs_pa == pytest.approx(70 * PSI + ATMOSPHERE_PA + 1000.0)
    assert gate.opens_pa == 0.0


def test_reducer_shuts_at_its_set_to_the_pascal_unless_the_zone_beyond_is_lifted() -> None:
    layout = drawn("street -> cv1 -> heater1 -> prv -> heater2 -> tap.hot", prv="set: 500000 Pa")
    (crossing,) = coupled_zones(layout.network, layout.zone("heater1"))[1]
    assert gate_of(layout.network, crossing).below_abs_pa == pytest.approx(500000.0 + ATMOSPHERE_PA, abs=0.1)
    assert gate_of(layout.network, crossing, 7000.0).below_abs_pa == pytest.approx(507000.0 + ATMOSPHERE_PA, abs=0.1)
