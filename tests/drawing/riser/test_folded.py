from dataclasses import replace

from tall_buildings import tall, tower

from plumbnet.drawing.riser.folded import folds_of, stacked


def test_a_riser_diagram_is_made_where_it_shows_a_building_best_or_is_wanted_and_can_be_made() -> None:
    high, low, flat = (tall(tower(storeys=n, shafts=s)).schematic for n, s in ((8, 2), (4, 1), (1, 2)))
    for said, wishes in ((high, (True, True, False)), (low, (False, True, False)), (flat, (False, False, False))):
        assert said.building is not None
        made = [stacked(said.diagram, replace(said.building, is_wanted=wish)) for wish in (None, True, False)]
        assert tuple(each is not None for each in made) == wishes
    assert stacked(high.diagram, None) is None


def test_folds_are_those_of_the_drawing() -> None:
    building = tall(tower(storeys=8, shafts=3))
    assert folds_of(building.structure) == building.drawn.folds
