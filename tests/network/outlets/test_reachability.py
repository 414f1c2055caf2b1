from conftest import PSI, Drawn, drawn

from plumbnet.network.outlets.reachability import reach


def reached(d: Drawn, place: str, bound: float) -> list[str]:
    """Names of parts in the zones that water at a place can push into."""
    zones = d.network.reach((d.zone(place),), bound * PSI)
    return sorted(name for name in d.system.parts if d.zone(name) in zones)


def test_water_reaches_its_own_zone() -> None:
    assert reached(drawn("street -> cv -> heater"), "heater", 80) == ["heater"]


def test_water_reaches_what_lies_beyond_a_check_in_its_direction() -> None:
    d = drawn("street -> cv1 -> heater -> cv2 -> store")
    assert reached(d, "heater", 80) == ["cv2", "heater", "store"]
    assert reached(d, "store", 80) == ["store"]


def test_water_does_not_reach_beyond_a_gate_that_opens_above_the_bound() -> None:
    d = drawn("well -> heater -> cv -> store -> street", street="pressure: 70 psi")
    assert "store" not in reached(d, "heater", 65)
    assert "store" in reached(d, "heater", 75)


def test_water_does_not_reach_beyond_a_reducer_that_holds_its_set() -> None:
    d = drawn("street -> cv -> heater -> prv -> store")
    assert reached(d, "heater", 80) == ["heater", "prv"]


def test_zones_asked_for_come_first() -> None:
    d = drawn("street -> cv1 -> heater -> cv2 -> store")
    zone = d.zone("heater")
    assert d.network.reach((zone,), 80 * PSI)[0] == zone


def test_crossing_that_is_thought_closed_is_not_passed() -> None:
    d = drawn("street -> cv1 -> heater -> cv2 -> store")
    found = reach(
        d.network.zoning,
        d.network.standing,
        (d.zone("heater"),),
        80 * PSI,
        without=lambda crossing: crossing.part == "cv2",
    )
    assert found == (d.zone("heater"),)


def test_water_reaches_beyond_a_gate_that_opens_at_the_very_bound() -> None:
    d = drawn("well -> heater -> cv -> store -> street", street="pressure: 70 psi")
    assert d.zone("store") in d.network.reach((d.zone("heater"),), d.network.standing.at(d.zone("street")))
