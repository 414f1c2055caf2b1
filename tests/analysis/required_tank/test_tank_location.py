from conftest import drawn

from plumbnet.analysis.required_tank.tank_location import tank_place


def place(runs: str, heater: str = "heater", **parts: str) -> tuple[str, str]:
    """Where the tank of a heater connects, and the part that gives its height."""
    network = drawn(runs, **parts).network
    found = tank_place(network, next(one for one in network.heated if one.name == heater))
    return found.name, network.piping.ports[found.node].part


def test_tank_connects_at_the_tee_in_the_cold_pipe() -> None:
    assert place("street -> cv -> tee1 -> tee2 -> heater -> tap.hot") == ("tee2", "tee2")


def test_valve_is_not_passed_on_the_way_to_a_tee() -> None:
    # street > cv > tee > valve > heater: behind the valve there is but the pipe
    assert place("street -> cv -> tee -> valve -> heater -> tap.hot") == ("valve -> heater", "heater")


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


def test_loop_that_takes_up_the_whole_cold_pipe_leaves_the_pipe_at_the_heater() -> None:
    runs = "street -> cv -> tee1 -> heater -> tee2 -> tap.hot\ntee2 -> pump -> tee1"
    assert place(runs) == ("tee1 -> heater", "heater")


def test_tee_behind_a_valve_is_left_out_even_if_the_heater_itself_leads_round_the_valve() -> None:
    # tee1 > valve > tee2 > heater, and from its hot side back to tee1
    runs = "street -> cv -> tee1 -> valve -> filter -> heater -> tap.hot\nheater.return -> tee1"
    assert place(runs, filter="kind: filter") == ("filter -> heater", "heater")


def test_heater_without_a_pipe_is_named_itself() -> None:
    # only its hot side is joined
    assert place("heater -> tap.hot\nstreet -> tap.cold") == ("heater", "heater")


def test_of_two_tees_equally_near_one_is_taken_whatever_the_order_of_the_file() -> None:
    # tee1 and tee2 both lead into a store before the heater
    runs = ["street -> cv -> tee1 -> store.in", "tee1 -> tee2 -> store.return", "store.out -> heater -> tap.hot"]
    assert place("\n".join(runs)) == place("\n".join(reversed(runs))) == ("tee1", "tee1")
    again = [run.translate(str.maketrans("12", "21")) for run in runs]
    assert place("\n".join(again)) == place("\n".join(reversed(again))) == ("tee2", "tee2")


def test_of_two_tees_beyond_the_one_of_a_loop_the_first_by_name_is_taken() -> None:
    # tee, at which the loop comes back, leads to tee1 and to tee2
    runs = [
        "street -> cv -> tee2 -> tee -> heater -> tee3 -> tap.hot",
        "tee3 -> pump -> tee",
        "tee -> tee1 -> tap2.cold",
    ]
    assert place("\n".join(runs)) == place("\n".join(reversed(runs))) == ("tee1", "tee1")
