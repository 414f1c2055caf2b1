import pytest
from conftest import PSI, Drawn, drawn

from plumbnet.layout.model.system import End


def test_every_answer_is_kept_for_the_next_to_ask() -> None:
    network = drawn("street -> cv -> heater").network
    assert network.ladder(0) is network.ladder(0)


def test_bounds_on_two_sides_of_a_threshold_have_two_answers() -> None:
    # the bypass opens at 90, beside a valve to a main at 60
    d = drawn(
        "street1 -> prv -> tee1 -> heater\ntee1 -> valve -> street2", street1="pressure: 90 psi", prv="bypass: true"
    )
    assert [d.closings("heater", bound) for bound in (80, 95, 80)] == [(("valve",),), (), (("valve",),)]


def test_bound_that_opens_a_check_beside_an_open_valve_has_its_own_answer() -> None:
    # the check out needs 70: 60 and 10 to crack it
    d = drawn("street -> tee1 -> valve -> tee2 -> heater\ntee2 -> cv -> tee1", cv="opens: 10 psi")
    assert [d.closings("heater", bound) for bound in (65, 75, 65)] == [(("valve",),), (), (("valve",),)]


def test_heaters_are_found_in_every_zone_that_holds_their_water() -> None:
    # street -> cv1 -> tee1 - boiler -> cv2 -> emitter - pump -> cv3 -> tee1: two zones in one loop
    d = drawn("street -> cv1 -> tee1 -> boiler -> cv2 -> emitter -> pump -> cv3 -> tee1")
    assert set(d.network.heated_in) == {d.zone("boiler"), d.zone("emitter")}


def test_zones_that_a_heater_warms_begin_with_its_own() -> None:
    # the emitter's zone comes first in the file
    d = drawn("emitter -> pump -> cv3 -> tee1\nstreet -> cv1 -> tee1 -> boiler -> cv2 -> emitter")
    (boiler,) = d.network.heated
    assert d.network.zones_of(boiler) == (d.zone("boiler"), d.zone("emitter"))


def test_idle_heater_is_in_no_zone() -> None:
    assert drawn("street -> tankless -> tap.hot").network.heated_in == {}


def test_pressure_that_fills_a_zone_is_that_of_its_highest_port() -> None:
    d = drawn("street -> heater -> tap.hot", tap="elevation: 30 ft")
    assert d.network.tops_pa[d.zone("heater")] / PSI == pytest.approx(13.0, abs=0.05)


BYPASSED = "street -> prv -> tee1 -> heater"


def bypasses(d: Drawn, bound: float) -> tuple[str, ...]:
    return d.network.bypasses(d.zone("heater"), bound * PSI)


def test_bypass_that_is_the_only_way_out_is_named() -> None:
    assert bypasses(drawn(BYPASSED, prv="bypass: true"), 80) == ("prv",)
    assert bypasses(drawn(BYPASSED), 80) == ()


def test_bypass_that_opens_above_the_bound_is_no_way_out() -> None:
    assert bypasses(drawn(BYPASSED, street="pressure: 90 psi", prv="bypass: true"), 80) == ()


def test_bypass_that_opens_at_the_very_bound_is_a_way_out() -> None:
    d = drawn(BYPASSED, prv="bypass: true")
    assert d.network.bypasses(d.zone("heater"), d.network.standing.at(d.zone("street"))) == ("prv",)


def test_bypass_beside_another_way_out_is_not_counted_upon() -> None:
    # the vent lets the water out at its rim, 40 ft up, which is below the 60 psi of the bypass
    assert bypasses(drawn(f"{BYPASSED}\ntee1 -> vent", prv="bypass: true"), 80) == ()
    # a second main, whose way opens later than the bypass but below the bound
    two = drawn(
        "street1 -> prv -> tee1 -> heater\ntee1 -> cv -> street2", street2="pressure: 70 psi", prv="bypass: true"
    )
    assert bypasses(two, 65) == ("prv",)
    assert bypasses(two, 80) == ()


def test_bypasses_in_a_row_are_named_as_the_water_meets_them() -> None:
    d = drawn("street -> prv1 -> prv2 -> heater", prv1="bypass: true, set: 55 psi", prv2="bypass: true, set: 50 psi")
    assert bypasses(d, 80) == ("prv2", "prv1")


def test_lowest_fixture_of_a_zone_comes_first() -> None:
    runs = """street -> tee -> valve -> tee2 -> heater -> tap.hot
              tee2 -> tap.cold
              tee -> heater2 -> tap2.hot
              tee -> tap3.cold
              tee -> tap4.cold
              tee -> tap5.cold"""
    network = drawn(runs, tap="elevation: 9 ft", tap2="elevation: -9 ft").network
    (zone,) = network.draws.values()
    assert [name for _, name in zone] == ["tap2", "tap3", "tap4", "tap5", "tap", "tap"]


def test_first_way_out_of_a_zone_counts_and_a_relief_valve_is_none() -> None:
    # street at 60 beside a cistern at 43 psi, closed off by a check from the heater with its valves
    layout = drawn("street -> tee -> cv -> heater -> tap.hot\ntee -> cistern\nheater.relief -> relief")
    assert layout.network.way_out_pa[layout.zone("street")] == layout.network.standing.static_pa[layout.zone("cistern")]
    assert layout.zone("heater") not in layout.network.way_out_pa


def test_water_that_no_supply_reaches_starts_just_full_to_its_highest_port() -> None:
    d = drawn("heater -> tee -> tap.hot\nstreet -> cv -> heater2", tap="elevation: 10 ft")
    assert d.network.start_pa(d.zone("heater")) / PSI == pytest.approx(4.3353, rel=1e-4)
    assert d.network.start_pa(d.zone("heater2")) / PSI == pytest.approx(60.0)


def test_water_that_no_supply_reaches_stands_no_higher_than_where_it_would_run_out_through_a_gate() -> None:
    # tee, with a pipe up to 150 ft > cv1 > tee2 at 145 ft > cv2 > heater, fed at 60 psi
    runs = "top -> tee -> cv1 -> tee2 -> cv2 -> heater\nstreet -> cv3 -> heater.hot"
    high = {"top": "kind: tee, elevation: 150 ft", "tee2": "elevation: 145 ft"}
    for opens, starts in (("2 psi", [62.0, 60.0, 60.0]), ("9 psi", [65.03, 60.0, 60.0])):
        d = drawn(runs, **high, cv1=f"opens: {opens}")
        assert [d.network.start_pa(d.zone(place)) / PSI for place in ("tee", "tee2", "heater")] == pytest.approx(
            starts, abs=0.01
        )
    d = drawn(runs.replace("cv2", "prv"), **high, prv="set: 55 psi")  # it shuts before
    assert d.network.start_pa(d.zone("tee")) / PSI == pytest.approx(145 * 0.43353, abs=0.01)


def test_supplies_of_a_zone_are_those_whose_water_comes_or_once_came_to_it() -> None:
    # street - tee >| tee1 - heater, and street2 comes to tee1 by a shut valve; tee1 >| tee2 - heater2, on a well
    runs = "street -> tee -> cv -> tee1 -> heater -> tap.hot\nstreet2 -> valve -> tee1"
    d = drawn(f"{runs}\nwell -> tee2 -> heater2\ntee1 -> cv2 -> tee2", valve="state: shut")
    assert d.network.supplies(d.zone("heater")) == ("street", "street2")
    assert d.network.supplies(d.zone("heater2")) == ("street", "street2", "well")
    assert d.network.supplies(d.zone("tee")) == ("street",)


@pytest.mark.parametrize(
    ("runs", "parts", "is_fed"),
    [
        ("street -> cv -> heater", {}, True),
        ("street -> valve -> heater", {"valve": "state: shut"}, False),
        ("heater -> cv -> street", {}, False),
        ("street -> loop -> boiler", {}, False),
        ("street -> loop -> boiler", {"loop": "state: open"}, True),
        ("well -> heater", {}, True),
    ],
)
def test_zone_is_fed_by_a_supply_that_goes_on_through_no_shut_valve(
    runs: str, parts: dict[str, str], *, is_fed: bool
) -> None:
    d = drawn(runs, **parts)
    heater = "boiler" if "boiler" in runs else "heater"
    assert (d.zone(heater) in d.network.fed) is is_fed


def test_connections_are_known_by_their_pipes_and_by_the_gates_that_water_there_comes_to() -> None:
    network = drawn("street -> cv -> heater -> tap.hot").network
    assert network.piped[End("cv", "out")] == [End("heater", "cold")]
    assert network.piped[End("heater", "cold")] == [End("cv", "out")]
    (forward,), (backward,) = network.gates_at[End("cv", "in")], network.gates_at[End("cv", "out")]
    assert (forward.way is None, backward.way is None) == (False, True)
