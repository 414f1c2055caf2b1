import pytest
from conftest import PSI, drawn

from plumbnet.analysis.equilibrium.limits import Limits, limits
from plumbnet.rules.circuit_rules import ruled_by
from plumbnet.rules.facts.limit_facts import Limit
from plumbnet.rules.rule_profile import profile

GENERAL = ruled_by(profile("general"))
METRE_PA = 9806.65  # of water, as the layout reads heights
HOUSE = "street -> tee -> heater -> tap.hot\nheater.relief -> relief"


def limit(runs: str, place: str, **parts: str) -> Limit:
    """The limit at a part, gauge at datum."""
    network = drawn(runs, **parts).network
    node = next(network.piping.nodes_of(place))
    return Limits(network, GENERAL).at(node)


def psi(runs: str, place: str = "heater", **parts: str) -> float:
    return round(limit(runs, place, **parts).pressure_pa / PSI, 3)


def test_people_drawing_water_set_the_limit_of_the_code() -> None:
    found = limit(HOUSE, "heater")
    assert (found.by, found.part, found.basis) == ("fixture tap", "tap", "fixture")
    assert found.pressure_pa == found.own_pa == pytest.approx(80 * PSI)


def test_nine_tenths_of_the_relief_set_where_nobody_draws() -> None:
    runs = "street -> tee -> heater\nheater.relief -> relief"
    assert psi(runs) == 135.0
    assert limit(runs, "heater").by == "margin below relief"


# Growth pushes forward: a tap beyond a check in the hot pipe, or beyond a mixing valve, holds the heater too.


def test_tap_beyond_a_check_in_the_hot_pipe_sets_the_limit() -> None:
    found = limit("street -> tee -> heater -> cv -> tap.hot\nheater.relief -> relief", "heater")
    assert (found.by, found.part, found.way) == ("fixture tap", "tap", ("cv",))
    assert found.pressure_pa == pytest.approx(80 * PSI)


def test_what_the_checks_on_the_way_need_to_open_is_added() -> None:
    # heater >| 5 psi >| 3 psi > tap 10 m up
    runs = "street -> tee -> heater -> cv -> cv2 -> tap.hot\nheater.relief -> relief"
    found = limit(runs, "heater", cv="opens: 5 psi", cv2="opens: 3 psi", tap="elevation: 10 m")
    assert found.pressure_pa == pytest.approx(88 * PSI + 10 * METRE_PA)
    assert found.own_pa == pytest.approx(80 * PSI)
    assert found.way == ("cv", "cv2")


def test_of_two_ways_to_a_tap_that_of_the_check_that_opens_first_counts() -> None:
    runs = "street -> tee -> heater -> cv -> tee2 -> tap.hot\ntee -> cv2 -> tee2\nheater.relief -> relief"
    assert psi(runs, cv="opens: 9 psi", cv2="opens: 4 psi") == 84.0


def test_reducer_holds_a_tap_behind_it_below_its_limit_whatever_the_heater_does() -> None:
    runs = "street -> tee -> heater -> prv -> tap.hot\nheater.relief -> relief"
    assert psi(runs) == 135.0
    assert psi(runs, prv="set: 85 psi") == 80.0


def test_piece_of_pipe_between_two_checks_invents_no_limit() -> None:
    # heater >| tee2 |< : nothing between the two checks sets a limit of its own
    runs = "street -> cv1 -> tee -> heater -> cv2 -> tee2\nstreet -> cv3 -> tee2\nheater.relief -> relief"
    assert psi(runs) == 135.0
    assert psi(runs, "tee2") == 80.0
    assert limit(runs, "tee2").basis == "profile"


def test_lowest_limit_beyond_an_open_street_holds_whoever_pushes_there() -> None:
    # heater >| street, from which a neighbour's tap hangs behind a check of its own
    runs = "street -> tee -> cv -> tap.cold\nheater -> cv2 -> tee\nheater.relief -> relief"
    found = limit(runs, "heater")
    assert (found.part, found.way) == ("tap", ("cv2", "cv"))


def test_heating_circuit_with_a_relief_valve_of_30_psi_ends_at_27() -> None:
    assert psi("street -> prv -> tee -> boiler\nboiler.relief -> relief", "boiler", relief="pressure: 30 psi") == 27.0


def test_lowest_rating_in_the_zone_counts() -> None:
    found = limit(f"{HOUSE}\ntee -> tank", "heater", tank="rating: 70 psi", heater="rating: 150 psi")
    assert (found.by, found.part, found.basis) == ("rating of tank", "tank", "rating")
    assert found.pressure_pa == pytest.approx(70 * PSI)


def test_rating_beyond_a_check_does_not_count() -> None:
    assert psi("street -> filter -> cv -> heater -> tap.hot", filter="kind: filter, rating: 30 psi") == 80.0


def test_each_bound_counts_at_its_own_height() -> None:
    # tap 10 m up: 80 psi there is more at datum; tap2 5 m down: less
    found = limit(HOUSE + "\ntee -> tap2.cold", "heater", tap="elevation: 10 m", tap2="elevation: -5 m")
    assert found.by == "fixture tap2"
    assert found.pressure_pa == pytest.approx(80 * PSI - 5 * METRE_PA)
    assert found.own_pa == pytest.approx(80 * PSI)


def test_relief_valve_high_up_leaves_more_room_below_it() -> None:
    runs = "street -> cv -> heater\nheater.relief -> relief"
    assert limit(runs, "heater", relief="elevation: 10 m").pressure_pa == pytest.approx(135 * PSI + 10 * METRE_PA)


def test_expansion_relief_valve_sets_no_limit() -> None:
    assert psi("street -> tee -> heater\ntee -> spill", spill="pressure: 50 psi") == 80.0
    assert limit("street -> tee -> heater\ntee -> spill", "heater").basis == "profile"


def test_where_nothing_sets_one_it_is_the_profiles_own_at_that_height() -> None:
    found = limit("street -> heater -> tee", "heater", heater="elevation: 10 m")
    assert found == Limit(found.pressure_pa, "nothing in its reach sets one: the profile's own")
    assert found.pressure_pa == pytest.approx(80 * PSI + 10 * METRE_PA)


def test_hose_bibb_sets_no_limit_where_the_rules_exempt_it() -> None:
    house = "street -> tee -> heater -> tap.cold\nheater.relief -> relief"
    assert limit(house, "heater", tap="outdoor: true").by == "margin below relief"
    network = drawn(house, tap="outdoor: true").network
    node = next(network.piping.nodes_of("heater"))
    held = Limits(network, ruled_by(profile("upc-2024"))).at(node)
    assert held.by == "fixture tap"
    assert held.pressure_pa == pytest.approx(80 * PSI)


def test_of_equal_bounds_the_first_by_name_speaks_whatever_the_order_of_the_file() -> None:
    for runs in ("street -> tee -> tap2.cold\ntee -> tap1.cold", "street -> tee -> tap1.cold\ntee -> tap2.cold"):
        assert limit(runs, "tee").by == "fixture tap1"


def test_zone_without_a_bound_is_not_in_the_table() -> None:
    layout = drawn("street -> cv -> tap.cold")
    found = limits(layout.network, GENERAL)
    assert layout.zone("street") not in found
    assert found[layout.zone("tap.cold")].part == "tap"


def test_plugged_relief_valve_sets_the_limit_that_it_set_while_it_was_sound() -> None:
    runs = "street -> prv -> tee -> boiler\nboiler.relief -> relief"
    sound, plugged = (
        limit(runs, "boiler", relief=f"pressure: 30 psi, elevation: 10 m, state: {state}")
        for state in ("sound", "plugged")
    )
    assert sound == plugged
    assert sound.own_pa == pytest.approx(27 * PSI)


def test_limit_beyond_one_street_is_found_from_another_though_water_could_go_round_between_them() -> None:
    # street - tee >| cv1 > tee2 - street2, and back through cv2; the tap hangs beyond
    runs = "street -> tee -> cv1 -> tee2 -> tap.cold\ntee2 -> cv2 -> tee\nstreet2 -> tee2"
    found = limit(runs, "tee", street2="pressure: 60 psi")
    assert (found.part, found.way) == ("tap", ("cv1",))
    assert found.pressure_pa == pytest.approx(80 * PSI)


def test_tap_behind_a_reducer_that_stands_at_its_set_is_brought_no_higher_and_holds_nobody() -> None:
    """The street's 95 psi keep the tap at 85, above its 80; the reducer is shut, and the heater's 135 psi count."""
    runs = "street -> tee -> heater -> prv -> tap.hot\nheater.relief -> relief"
    assert psi(runs, street="pressure: 95 psi", prv="set: 85 psi") == 135.0
