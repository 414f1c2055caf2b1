"""What the water tries, and in which order, apart from any words."""

from conftest import system

import plumbnet
from plumbnet.analysis.water_walk.walk_search import water_walk
from plumbnet.analysis.water_walk.walk_steps import WaterWalk
from plumbnet.analysis.water_walk.walk_tries import tries


def walk(runs: str, **parts: str) -> WaterWalk:
    report = plumbnet.check(system(runs, **parts))
    return water_walk(report, report.heaters[0])


def test_way_back_comes_before_the_ends_these_before_a_tank_and_the_safety_valve_last() -> None:
    runs = "street -> cv -> tee -> tee2 -> heater -> tap.hot\nheater.relief -> relief\ntee -> tank\ntee2 -> spill"
    found = walk(runs, spill="pressure: 160 psi").tries
    assert [one.way[-1].part if one.way else one.shut[0] for one in found] == ["cv", "tap", "tank", "spill", "relief"]
    assert (found[0].by, found[0].start) == ("cold", "")
    assert (found[2].by, found[2].start) == ("", "tee")


def test_each_step_stands_in_one_way_at_most() -> None:
    runs = "street -> cv -> tee -> heater -> tee2 -> tap.hot\ntee2 -> pump -> tee\ntee -> tank\nheater.relief -> relief"
    walked = walk(runs)
    told = [id(step) for one in tries(walked.steps) for step in one.way]
    assert len(told) == len(set(told))
    assert set(told) <= set(map(id, walked.steps))


def test_end_beyond_a_gate_stands_apart_from_those_that_the_water_comes_to_freely() -> None:
    runs = "street -> cv -> tee -> heater -> tee2 -> tap.hot\ntee2 -> cv2 -> tap2.hot"
    ends = [one for one in walk(runs).tries if one.met is None]
    assert [(one.way[-1].part if one.way else "", one.shut) for one in ends] == [("", ("tap",)), ("cv2", ("tap2",))]


def test_valve_that_leads_only_round_leads_nowhere_new() -> None:
    runs = "street -> cv -> tee -> valve -> tee2 -> heater -> tap.hot\ntee -> valve2 -> tee2"
    (ends,) = [one for one in walk(runs).tries if one.met is None]
    assert ends.nowhere == ("valve2",)
    assert ends.shut == ("tap",)
