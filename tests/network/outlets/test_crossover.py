from conftest import PSI, Drawn, drawn

HOUSE = """street -> tee1 -> cv -> heater -> tee2 -> tap.hot
tee1 -> tap.cold"""
"""
street - tee1 -> cv -> heater - tee2 - hot [tap]
           +---------------------------cold
"""


def accidents(d: Drawn, place: str, bound: float = 80) -> tuple[str, ...]:
    return d.network.accidents(d.node(place), bound * PSI)


def test_heater_open_only_through_a_crossover_is_open_by_accident() -> None:
    d = drawn(HOUSE, tap="crossover: true")
    assert d.ladder("heater") == [("street", 60)]
    assert accidents(d, "heater") == ("tap",)


def test_tap_that_keeps_hot_and_cold_apart_is_no_accident() -> None:
    assert accidents(drawn(HOUSE), "heater") == ()


def test_heater_open_by_its_own_pipe_needs_no_accident() -> None:
    assert accidents(drawn(HOUSE, tap="crossover: true", cv="state: stuck_open"), "heater") == ()


def test_unchecked_mixing_valve_joins_hot_and_cold_by_accident() -> None:
    d = drawn(
        "street -> tee1 -> cv -> heater -> mixer.hot\ntee1 -> mixer.cold\nmixer.mixed -> tap.hot", mixer="checks: false"
    )
    assert accidents(d, "heater") == ("mixer",)


def test_two_crossovers_are_both_named() -> None:
    d = drawn(f"{HOUSE}\ntee2 -> tap2.hot\ntee1 -> tap2.cold", tap="crossover: true", tap2="crossover: true")
    assert accidents(d, "heater") == ("tap", "tap2")


def test_gate_that_leads_out_beside_the_crossover_is_no_accident() -> None:
    # a check from hot to cold, in parallel with the crossover, lets the water out by design
    d = drawn(f"{HOUSE}\ntee2 -> cv2 -> tee1", tap="crossover: true")
    assert accidents(d, "heater") == ()


def test_vent_on_the_hot_side_is_no_accident() -> None:
    d = drawn(f"{HOUSE}\nheater.return -> vent", tap="crossover: true", vent="elevation: 170 ft")
    assert accidents(d, "heater") == ()
    assert accidents(d, "heater", 70) == ("tap",)


def test_way_that_opens_at_the_very_limit_needs_no_accident() -> None:
    # both the check out and the main open at exactly what the main stands at
    d = drawn(f"{HOUSE}\ntee2 -> cv2 -> tee1", tap="crossover: true")
    node, main_pa = d.node("heater"), d.network.standing.at(d.zone("street"))
    assert d.network.accidents(node, main_pa) == ()


def test_valve_in_the_same_water_is_not_named_as_an_accident() -> None:
    d = drawn(HOUSE.replace("street ->", "street -> valve ->"), tap="crossover: true")
    assert accidents(d, "heater") == ("tap",)
