from tall_buildings import tall, tower

from plumbnet.drawing.palette import Service
from plumbnet.drawing.riser.stacking.shaft_places import count_words, put_side_by_side


def test_shafts_stand_side_by_side_with_flats_between_hot_and_cold() -> None:
    building = tall(tower(storeys=6, shafts=2))
    setting = building.setting
    first, second = put_side_by_side(setting)
    assert setting.bands.right < first.left < first.right < second.left
    for shaft in building.folding.shafts:
        x = {riser.service: setting.x[riser.number] for riser in shaft.risers}
        for number in shaft.branches:
            left = setting.corner[number][0]
            right = left + setting.stops[number].width
            assert x[Service.RETURN] < x[Service.HOT] < left < right < x[Service.COLD]


def test_a_folded_shaft_says_for_how_many_it_stands() -> None:
    (shaft,) = tall(tower(storeys=6, shafts=4)).folding.shafts
    assert count_words(shaft) == "× 4 shafts alike"
