from pathlib import Path

import pytest
from campus import campus, school
from drafting import crossing_count, faults
from drawing_board import Sketch, sketch
from hypothesis import HealthCheck, given, settings
from oracles.random_layouts import Layout, layouts

import plumbnet
from plumbnet.drawing.routing.arrangement import arrangement_of
from plumbnet.report.schematic.schematic_items import diagram_of

SYSTEMS = sorted((Path(__file__).parents[3] / "systems").glob("*.yaml"))
CROSSINGS = {
    "boiler-loop-with-indirect-heater": 2,
    "farmhouse-solar-loop": 1,
    "mixing-valve-with-checks": 1,
    "mixing-valve-without-checks": 1,
    "pottery-boiler-set-too-hot": 1,
    "tower-low-zone-return": 1,  # two returns to one heater
}
"""Crossings at most; in a layout that is not named, none."""


@pytest.mark.parametrize("path", SYSTEMS, ids=lambda path: path.stem)
def test_drawing_of_a_showcase_layout_is_one_to_sign(path: Path) -> None:
    house = Sketch(plumbnet.read(path))
    assert faults(house.diagram, house.arrangement) == []
    assert crossing_count(house.arrangement) <= CROSSINGS.get(path.stem, 0)


@pytest.mark.parametrize("text", [campus(60), school(12, 5, 3)], ids=["campus", "school"])
def test_drawing_of_a_large_layout_is_one_to_sign(text: str) -> None:
    large = Sketch(plumbnet.read_bytes(text.encode()))
    assert faults(large.diagram, large.arrangement) == []


@settings(max_examples=25, suppress_health_check=[HealthCheck.too_slow])
@given(layouts(most=8))
def test_drawing_of_any_layout_is_one_to_sign(layout: Layout) -> None:
    system = layout.system
    names = {name: (name,) for name in system.parts}
    diagram = diagram_of(system, names, ringed=sorted(system.parts)[::3])
    assert faults(diagram, arrangement_of(diagram)) == []


@pytest.mark.parametrize(
    "runs",
    [
        "street -> heater -> relief",
        "street -> heater -> tap.hot\nheater.relief -> heater.return",
        "street -> tee1 -> tee2 -> heater -> tap.hot\ntee1 -> tee2\ntee1 -> tee2",
        "street -> tee -> heater -> tap.hot\ncv -> tee\ncv.in -> valve -> tee",
        "street -> tap1.cold\nstreet -> heater -> tap1.hot\nstreet -> tap2.cold",
        "street1 -> heater1 -> tap1.hot\nstreet2 -> heater2 -> tap2.hot",
        "street -> tee -> heater -> tap.hot\ntee -> tank1\ntee -> tank2\ntee -> tank3\ntee -> tank4\ntee -> tank5",
        "street -> heater -> pump -> heater.return",
        "street -> tee1 -> heater -> tee2 -> tap.hot\ntee2 -> cv -> pump -> tee1\ntee1 -> tank1\ntee2 -> vent",
    ],
)
def test_awkward_layouts_are_drawn_rightly(runs: str) -> None:
    house = sketch(runs)
    assert faults(house.diagram, house.arrangement) == []


STUB = """
plumbnet: 1
units: metric
parts:
  tee0: tee
  tee1: tee
  tee2: tee
  tee3: tee
  street: {kind: main, pressure: 200, elevation: 0}
  heater: {kind: storage_heater, elevation: 0, setpoint: 60, volume: 100, relief: {pressure: 700}}
  pump: circulator
runs:
  - tee0 -> street.out
  - tee3 -> heater.cold
  - tee2 -> heater.hot
  - tee1 -> heater.return
  - tee2 -> pump.in
  - tee3 -> pump.out
"""


#   tee3 --+-- heater.cold     the upright of a tee at which nothing arrives
#          |                   begins at its first branch
#          +-- pump.out
def test_tee_at_which_all_pipes_leave_to_one_side_is_no_dead_stub() -> None:
    house = Sketch(plumbnet.read_bytes(STUB.encode()))
    for name in ("tee2", "tee3"):
        routes = [route for route in house.arrangement.routes if route.link and route.link.start.part == name]
        points = [point for route in routes for point in route.whole]
        x, _ = house.joint(name).dots[0]
        on = sorted(y for at, y in points if abs(at - x) < 0.1)
        away = [y for at, y in points if abs(at - x) >= 0.1]
        assert any(abs(on[0] - y) < 0.1 for y in away)
        assert any(abs(on[-1] - y) < 0.1 for y in away)


def test_supply_is_drawn_to_the_left_of_heat_and_heat_to_the_left_of_use() -> None:
    house = sketch("street -> cv -> tee -> heater -> tap.hot\ntee -> tap.cold")
    assert (
        house.placement("street").x < house.placement("cv").x < house.placement("heater").x < house.placement("tap").x
    )


def test_check_points_the_way_water_passes() -> None:
    house = sketch("street -> cv1 -> tee1 -> heater -> tee2 -> tap.hot\ntee2 -> cv2 -> tee1")
    for name, start, end in (("cv1", "street", "tee1"), ("cv2", "tee2", "tee1")):
        inlet, outlet = house.route(start, name).points[-1], house.route(name, end).points[0]
        tip = house.placement(name).at((8.0, 0.0))
        assert abs(tip[0] - outlet[0]) < abs(tip[0] - inlet[0])


def test_two_pipes_of_one_main_part_at_a_dot() -> None:
    house = sketch("street -> tap1.cold\nstreet -> heater -> tap1.hot")
    assert len(house.arrangement.forks) == 1
