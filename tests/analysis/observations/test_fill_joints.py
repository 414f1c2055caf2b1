from itertools import product

from conftest import system

import plumbnet
from plumbnet.analysis.observations.fill_joints import fills
from plumbnet.network.network import network_of
from plumbnet.rules.facts.fill_facts import FillFacts

CIRCUIT = "boiler -> pump -> emitter -> tee9 -> boiler"
BEST = "kind: reduced_pressure_assembly"
DOUBLE = "kind: double_check"


def found(runs: str, **parts: str) -> tuple[FillFacts, ...]:
    return tuple(fills(network_of(system(f"{runs}\n{CIRCUIT}", **parts))))


def test_nothing_is_looked_for_where_no_part_carries_heat() -> None:
    assert list(fills(network_of(system("street -> cv -> heater -> tap.hot")))) == []


def test_circuit_that_no_water_comes_to_has_no_joint() -> None:
    assert found("vent -> tee9") == ()


def test_check_in_the_fill_is_the_joint_and_leads() -> None:
    assert found("street -> tee -> tap.cold\ntee -> cv -> prv -> tee9") == (
        FillFacts("cv", "boiler", "cv", (("cv",),)),
    )


def test_reducer_belongs_to_the_circuit_and_the_part_before_it_leads() -> None:
    assert found("street -> tee -> tap.cold\ntee -> valve -> prv -> tee9") == (
        FillFacts("prv", "boiler", "valve", ((),)),
    )


def test_devices_are_told_as_water_that_comes_back_meets_them() -> None:
    (joint,) = found("street -> cv1 -> valve -> cv2 -> prv -> tee9", cv1=BEST, cv2=DOUBLE)
    assert joint.ways == (("cv2", "cv1"),)


def test_branch_to_a_tap_is_a_way_of_its_own_and_the_one_with_more_is_left_out() -> None:
    (joint,) = found("street -> cv1 -> tee -> cv2 -> tee9\ntee -> tap.cold", cv1=BEST)
    assert joint.ways == (("cv2",),)


def test_ways_with_different_sorts_are_both_told() -> None:
    runs = "street1 -> cv1 -> tee -> cv3 -> tee9\nstreet2 -> cv2 -> tee"
    (joint,) = found(runs, cv1=BEST, cv2=DOUBLE)
    assert joint.ways == (("cv3", "cv1"), ("cv3", "cv2"))


def test_cold_side_of_a_water_heater_is_drinking_water() -> None:
    (joint,) = found("street -> cv1 -> tee -> cv2 -> tee9\ntee -> heater", cv1=BEST)
    assert joint.ways == (("cv2",),)


def test_device_with_no_sort_of_its_own_and_one_that_is_stuck_open_keep_nothing_out() -> None:
    device = "kind: device, ports: [in, out], passages: [{one_way: [in, out]}]"
    for stands in (device, f"{BEST}, state: stuck_open", "kind: meter, check: true"):
        (joint,) = found("street -> tee -> tap.cold\ntee -> cv -> tee9", cv=stands)
        assert (joint.name, joint.ways) == ("cv", ((),))


def test_shut_valve_between_two_devices_hides_neither() -> None:
    (joint,) = found("street -> cv1 -> valve -> cv2 -> tee9", cv1=BEST, valve="state: shut")
    assert joint.ways == (("cv2", "cv1"),)


def test_glycol_of_any_heater_is_in_the_whole_circuit_and_not_in_the_next() -> None:
    runs = "street -> cv1 -> tee9\nstreet -> cv2 -> tee8\nboiler2 -> pump2 -> emitter2 -> tee8 -> boiler2"
    joints = found(runs, boiler2="antifreeze: {glycol: propylene, share: 0.3}")
    assert [(one.name, one.circuit, one.antifreeze) for one in joints] == [
        ("cv1", "boiler", False),
        ("cv2", "boiler2", True),
    ]


def test_heating_side_that_has_no_heater_goes_by_its_first_part() -> None:
    drawn = system("street -> tee -> tap.cold\ntee -> cv -> emitter")
    assert [one.circuit for one in fills(network_of(drawn))] == ["cv"]


def test_ladder_of_preventers_of_every_sort_takes_no_time() -> None:
    sorts = ("check_valve", "dual_check", "double_check", "vented_dual_check", "reduced_pressure_assembly")
    rungs = [f"tee{step} -> cv{step}{one} -> tee{step + 1}" for step, one in product(range(10, 30), range(len(sorts)))]
    parts = {f"cv{step}{one}": f"kind: {sorts[one]}" for step, one in product(range(10, 30), range(len(sorts)))}
    (joint, *_) = found("\n".join(["street -> tee10", *rungs, "tee30 -> cv -> prv -> tee9"]), **parts)
    assert len(joint.ways) == 1


def test_facts_hold_the_joints_in_the_order_of_the_file() -> None:
    drawn = system(f"street -> cv2 -> tee9\nstreet -> cv1 -> tee9\n{CIRCUIT}")
    assert [one.name for one in plumbnet.check(drawn).facts.fills] == ["cv2", "cv1"]


def test_circuit_of_several_heaters_goes_by_the_first_in_the_alphabet() -> None:
    drawn = system("street -> cv -> tee -> boiler2 -> pump -> emitter -> tee\ntee -> boiler1")
    assert [one.circuit for one in fills(network_of(drawn))] == ["boiler1"]
