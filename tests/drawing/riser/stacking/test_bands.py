from itertools import pairwise

from tall_buildings import tall, tower

from plumbnet.drawing.riser.stacking.bands import devices_by_level, devices_length, way_out

BUILDING = tall(tower(storeys=6, shafts=2))


def test_levels_rise_and_everything_stands_on_its_floor() -> None:
    bands = BUILDING.setting.bands
    assert bands.floor == sorted(bands.floor, reverse=True)
    for floor, foot, base in zip(bands.floor, bands.foot, bands.base, strict=True):
        assert floor > foot >= base
    for number, stop in BUILDING.setting.stops.items():
        level = BUILDING.structure.components[number].level
        if level + 1 < len(bands.floor):
            assert bands.base[level] - stop.height > bands.floor[level + 1]


def test_headers_lie_above_the_floor_in_the_order_in_which_they_come_out() -> None:
    bands, (plant,) = BUILDING.setting.bands, BUILDING.setting.plants.values()
    number = plant.component.number
    doors = sorted(plant.ways, key=lambda key: way_out(bands, plant, key)[-1][1])
    levels = [bands.header[number, key][1] for key in doors]
    uprights = [bands.header[number, key][0] for key in doors]
    assert levels == sorted(levels)
    assert uprights == sorted(uprights, reverse=True)
    assert all(later - earlier >= 9.0 for earlier, later in pairwise(levels))
    assert levels[-1] < bands.floor[0]


def test_devices_at_the_foot_of_a_riser_have_room_there() -> None:
    structure, bands = BUILDING.structure, BUILDING.setting.bands
    back = next(c for riser in structure.risers for c in riser.chains if c.devices)
    assert devices_by_level(structure, back) == {0: list(back.devices)}
    assert bands.foot[0] - bands.base[0] >= devices_length(structure, back.devices) > 0.0
    assert devices_length(structure, []) == 0.0
