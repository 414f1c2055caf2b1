from conftest import Drawn, drawn


def ways(d: Drawn, place: str) -> dict[str, tuple[str, ...]]:
    """The way to every rung, by the outlet's name."""
    network = d.network
    return {rung.site.part: network.way(d.node(place), rung) for rung in network.ladder(d.zone(place))}


def test_way_to_the_street_names_every_part_on_it() -> None:
    d = drawn("street -> meter -> valve -> heater")
    assert ways(d, "heater") == {"street": ("heater", "valve", "meter", "street")}


def test_way_to_its_own_relief_valve_is_short() -> None:
    d = drawn("street -> cv -> heater", heater="relief: {pressure: 150 psi}")
    assert ways(d, "heater") == {"heater/relief": ("heater", "heater/relief")}


def test_way_leads_over_gates() -> None:
    d = drawn("well -> heater -> tee1 -> cv1 -> tee2 -> cv2 -> street", street="pressure: 70 psi")
    assert ways(d, "heater") == {"street": ("heater", "tee1", "cv1", "tee2", "cv2", "street")}


def test_shortest_way_is_named() -> None:
    # by the meter, or round by two tees
    d = drawn("street -> tee1 -> meter -> tee2 -> heater\ntee1 -> tee3 -> valve -> tee4 -> tee2")
    assert ways(d, "heater")["street"] == ("heater", "tee2", "meter", "tee1", "street")


def test_way_to_a_far_tank_asked_by_many_is_the_same_as_asked_by_one() -> None:
    houses = "\n".join(f"tee{n} -> valve{n} -> tee{n + 1}\ntee{n} -> heater{n}" for n in range(20))
    d = drawn(f"well -> tee0\n{houses}\ntee20 -> valve20 -> tank")
    network = d.network
    for n in range(20):
        (rung,) = network.ladder(d.zone(f"heater{n}"))
        between = [name for k in range(n, 20) for name in (f"tee{k}", f"valve{k}")]
        assert network.way(d.node(f"heater{n}"), rung) == (f"heater{n}", *between, "tee20", "valve20", "tank")


def test_of_two_ways_of_one_length_the_name_decides_and_not_the_order_of_the_file() -> None:
    #          +- tee3 -+
    # street - +        + - tee1 - tee4 - heater
    #          +- tee2 -+
    d = drawn("street -> tee3 -> tee1 -> tee4 -> heater\nstreet -> tee2 -> tee1")
    assert ways(d, "tee1")["street"] == ("tee1", "tee2", "street")
    assert ways(d, "heater")["street"] == ("heater", "tee4", "tee1", "tee2", "street")


def test_way_from_an_outlet_to_itself_leads_nowhere_else() -> None:
    assert ways(drawn("street -> meter -> heater"), "street")["street"] == ("street",)
