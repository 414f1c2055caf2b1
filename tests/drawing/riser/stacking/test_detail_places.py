from tall_buildings import tall, tower

from plumbnet.drawing.riser.stacking.detail_places import place_details
from plumbnet.drawing.riser.stacking.shaft_places import put_side_by_side


def test_details_stand_clear_of_plants_and_shafts() -> None:
    setting = tall(tower(storeys=9, shafts=2)).setting
    places = put_side_by_side(setting)
    place_details(setting, places)
    boxes = []
    for number, plant in setting.plants.items():
        x, y = setting.bands.corner[number]
        boxes.append((x, y - plant.height, x + plant.width, y))
    boxes += [(place.left, setting.bands.top, place.right, 0.0) for place in places]
    assert setting.details
    for number, detail in setting.details.items():
        x, y = setting.detail_corner[number]
        for left, top, right, foot in boxes:
            assert x + detail.width < left or right < x or y < top or foot < y - detail.height
