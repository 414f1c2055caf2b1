from conftest import system

import plumbnet
from plumbnet.analysis.water_walk.walk_search import water_walk
from plumbnet.analysis.water_walk.walk_steps import Conduct, Gated, Taking, WaterWalk

CLOSED = "street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief"


def walk(runs: str, name: str = "heater", **parts: str) -> WaterWalk:
    report = plumbnet.check(system(runs, **parts))
    return water_walk(report, next(one for one in report.heaters if one.name == name))


def order(found: WaterWalk) -> list[tuple[str, str, int | None, str]]:
    return [(step.part, step.port, step.came_from, step.by) for step in found.steps]


def test_water_goes_out_of_every_connection_of_the_heater_in_turn() -> None:
    found = walk(CLOSED)
    assert found.heater.name == "heater"
    assert order(found) == [
        ("tee", "joint", None, "cold"),
        ("cv", "out", 0, ""),
        ("tap", "hot", None, "hot"),
        ("relief", "in", None, "relief"),
    ]
    assert [step.kind for step in found.steps] == ["tee", "check_valve", "fixture", "relief_valve"]


def test_way_is_followed_to_its_end_before_the_next() -> None:
    found = walk(f"{CLOSED}\ntee -> valve -> tee2 -> tap2.cold\ntee2 -> tank")
    assert order(found)[:6] == [
        ("tee", "joint", None, "cold"),
        ("cv", "out", 0, ""),
        ("valve", "in", 0, ""),
        ("tee2", "joint", 2, ""),
        ("tap2", "cold", 3, ""),
        ("tank", "in", 3, ""),
    ]


def test_walk_ends_where_the_water_is_stopped() -> None:
    assert {step.part for step in walk(CLOSED).steps} == {"tee", "cv", "tap", "relief"}
    assert "street" in {step.part for step in walk(CLOSED.replace("cv", "valve")).steps}


def test_each_side_of_a_part_is_met_once() -> None:
    """A pump round a heater is met from both sides, since its check stops the water at one of them."""
    found = walk("street -> tee1 -> heater -> tee2 -> tap.hot\ntee2 -> pump -> tee1", pump="check: true")
    assert [step.port for step in found.steps if step.part == "pump"] == ["out", "in"]
    joined = walk("street -> tee1 -> heater -> tee2 -> tap.hot\ntee2 -> pump -> tee1")
    assert [step.part for step in joined.steps].count("pump") == 1


def test_what_each_part_does_is_told_by_its_sort() -> None:
    found = {step.part: step.met for step in walk(f"{CLOSED}\ntee -> valve -> tank").steps}
    assert (found["tee"], found["valve"], found["tap"]) == (Conduct.SPREADS, Conduct.LETS_THROUGH, Conduct.ENDS)
    assert isinstance(found["cv"], Gated)
    assert isinstance(found["tank"], Taking)


def test_gate_between_two_ways_that_meet_again_is_no_gate_inside() -> None:
    """Hot and cold come together at a mixing valve without checks: its three ports are one water."""
    runs = "street -> tee -> heater -> mixer.hot\ntee -> mixer.cold\nmixer.mixed -> tap.hot"
    found = walk(runs, mixer="checks: false")
    assert not any(isinstance(step.met, Gated) for step in found.steps)


def test_lost_outlet_is_told_before_what_it_lets_through() -> None:
    (tank,) = [step for step in walk(f"{CLOSED}\ntee -> tank", tank="state: waterlogged").steps if step.part == "tank"]
    assert tank.met is Conduct.IS_FULL
