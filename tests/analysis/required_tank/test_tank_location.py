"""Where the tank of a heater connects; where the rules want it inside the valve is in test_header_place."""

from conftest import drawn

from plumbnet.analysis.required_tank.tank_location import tank_place
from plumbnet.rules.circuit_rules import ruled_by
from plumbnet.rules.rule_profile import profile

HEATING = {
    "boiler": "kind: boiler, volume: 10 gal, setpoint: 180 degF, relief: {pressure: 30 psi}",
    "emitter": "kind: emitter, volume: 10 gal",
}


def place(runs: str, heater: str = "heater", **parts: str) -> tuple[str, str]:
    """Where the tank of a heater connects, and the part that gives its height."""
    network = drawn(runs, **parts).network
    heated = next(one for one in network.heated if one.name == heater)
    found = tank_place(network, heated, ruled_by(profile("general")))
    return found.name, network.piping.ports[found.node].part


def test_tank_connects_at_the_tee_in_the_cold_pipe() -> None:
    assert place("street -> cv -> tee1 -> tee2 -> heater -> tap.hot") == ("tee2", "tee2")


def test_tank_connects_before_the_valve_with_which_the_heater_is_shut_off() -> None:
    assert place("street -> cv -> tee -> valve -> heater -> tap.hot") == ("tee", "tee")


def test_check_is_not_passed_either() -> None:
    assert place("street -> tee -> cv -> heater -> tap.hot") == ("cv -> heater", "heater")


def test_filter_may_stand_between() -> None:
    assert place("street -> cv -> tee -> filter -> heater -> tap.hot", filter="kind: filter") == ("tee", "tee")


def test_tee_on_the_hot_side_is_not_found_through_the_heater() -> None:
    assert place("street -> cv -> heater -> tee -> tap.hot") == ("cv -> heater", "heater")


def test_tees_of_a_driven_loop_are_left_out() -> None:
    # tee1 is where the loop comes back: warm water; tee lies before it
    runs = "street -> cv -> tee -> tee1 -> heater -> tee2 -> tap.hot\ntee2 -> pump -> tee1"
    assert place(runs) == ("tee", "tee")


def test_loop_that_comes_back_behind_the_check_leaves_the_pipe_before_its_tee() -> None:
    runs = "street -> cv -> tee1 -> heater -> tee2 -> tap.hot\ntee2 -> pump -> tee1"
    assert place(runs) == ("cv -> tee1", "tee1")


def test_tee_before_a_valve_is_the_place_even_if_the_heater_itself_leads_round_the_valve() -> None:
    # tee1 > valve > filter > heater, and from its other port back to tee1, driven by no pump
    runs = "street -> cv -> tee1 -> valve -> filter -> heater -> tap.hot\nheater.return -> tee1"
    assert place(runs, filter="kind: filter") == ("tee1", "tee1")


def test_heater_without_a_pipe_is_named_itself() -> None:
    # only its hot side is joined
    assert place("heater -> tap.hot\nstreet -> tap.cold") == ("heater", "heater")


def test_of_two_ways_into_a_store_the_tee_before_both_is_taken_whatever_the_order_of_the_file() -> None:
    # tee1 leads into the store itself and by way of tee2
    runs = ["street -> cv -> tee1 -> store.in", "tee1 -> tee2 -> store.return", "store.out -> heater -> tap.hot"]
    assert place("\n".join(runs)) == place("\n".join(reversed(runs))) == ("tee1", "tee1")
    again = [run.translate(str.maketrans("12", "21")) for run in runs]
    assert place("\n".join(again)) == place("\n".join(reversed(again))) == ("tee2", "tee2")


def test_of_two_tees_beyond_the_one_of_a_loop_that_before_it_is_taken() -> None:
    # tee, at which the loop comes back, leads on to tee1 and comes from tee2
    runs = [
        "street -> cv -> tee2 -> tee -> heater -> tee3 -> tap.hot",
        "tee3 -> pump -> tee",
        "tee -> tee1 -> tap2.cold",
    ]
    assert place("\n".join(runs)) == place("\n".join(reversed(runs))) == ("tee2", "tee2")


def test_of_two_tees_equally_near_one_is_taken_where_no_water_comes_in() -> None:
    # the heater is fed by nothing; tee1 and tee2 both lead to the store before it
    runs = ["street -> tap.cold", "tee1 -> store.in", "tee2 -> store.return", "store.out -> heater -> tap2.hot"]
    assert place("\n".join(runs)) == place("\n".join(reversed(runs))) == ("tee1", "tee1")


def test_boiler_has_its_tank_where_the_pump_draws() -> None:
    runs = "street -> cv -> tee1 -> boiler -> emitter -> tee2 -> pump -> tee1"
    assert place(runs, "boiler", **HEATING) == ("tee2", "tee2")
