import pytest
from tall_buildings import altered, tall, tower

from plumbnet.drawing.palette import Service
from plumbnet.drawing.riser.stacking.door_block import block_of, box_of, detail_of
from plumbnet.drawing.riser.stacking.doors import DoorKey

BUILDING = tall(tower(storeys=5, shafts=2))


def test_ways_out_of_a_plant_end_at_its_right_edge() -> None:
    plant = block_of(BUILDING.structure, BUILDING.component("heater"))
    assert set(plant.sides.values()) == {1}
    assert all(way[-1][0] == pytest.approx(plant.width) for way in plant.ways.values())
    assert plant.arrangement is not None
    left, top, right, foot = box_of(plant.arrangement, set())
    assert left >= -0.01
    assert foot <= 0.01
    assert right <= plant.width + 0.01
    assert -top <= plant.height + 0.01


def test_doors_of_a_branch_open_to_both_sides_and_its_pipes_keep_their_services() -> None:
    flat = BUILDING.component("flat2a")
    stop = block_of(BUILDING.structure, flat, frozenset([DoorKey("c2a")]))
    assert stop.sides == {DoorKey("h2a"): -1, DoorKey("c2a"): 1}
    assert stop.ways[DoorKey("h2a")][-1][0] == pytest.approx(0.0)
    assert stop.ways[DoorKey("c2a")][-1][0] == pytest.approx(stop.width)
    assert stop.arrangement is not None
    services = {route.link.end.port: route.service for route in stop.arrangement.routes if route.link is not None}
    assert services == {"hot": Service.HOT, "cold": Service.COLD}
    assert stop.way(DoorKey("h2a"), (100.0, 50.0))[-1][0] == pytest.approx(100.0)


LOFT = """
  sky: {kind: tee, elevation: 80 ft}
  loft: {kind: storage_heater, elevation: 80 ft, volume: 40 gal, setpoint: 140 degF, input: 40000 Btu/h,
    relief: {pressure: 150 psi, capacity: 50000 Btu/h}}
  den: {kind: tee, elevation: 90 ft}
  den-tap: {kind: fixture, elevation: 93 ft}
"""


def test_supply_comes_into_a_plant_above_at_its_left() -> None:
    runs = "  - split -> sky -> loft -> den -> den-tap.hot\n  - hot -> h1a"
    building = tall(altered(tower(storeys=6), ("runs:\n", f"{LOFT.lstrip(chr(10))}runs:\n"), ("  - hot -> h1a", runs)))
    plant = building.component("loft")
    assert plant.is_plant
    stop = block_of(building.structure, plant)
    assert stop.sides[DoorKey("sky", "", Service.COLD)] == -1


def test_a_detail_shows_the_ends_of_its_risers() -> None:
    flat = BUILDING.component("flat2a")
    detail = detail_of(BUILDING.structure, flat, 1000, "flat2a")
    ends = [each.item for each in detail.arrangement.placements if each.item.symbol.name == "riser_end"]
    assert len(ends) == 2
    assert {behind.part for behind in detail.origins.values()} == {"h2a", "c2a"}
    assert {route.link.number for route in detail.arrangement.routes if route.link is not None} >= {1000, 1001}


def test_names_in_a_detail_are_those_within_its_instance() -> None:
    text = tower()
    building = tall(text)
    flat = building.component("flat2a")
    named = detail_of(building.structure, flat, 1000, "another")
    assert ["flat2a"] in [list(each.item.lines)[:1] for each in named.arrangement.placements]
