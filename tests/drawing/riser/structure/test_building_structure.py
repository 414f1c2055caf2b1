import pytest
from tall_buildings import altered, tall, tower


def test_levels_are_where_risers_end_from_the_ground_up() -> None:
    structure = tall(tower(storeys=5)).structure
    assert structure.floors == pytest.approx([0.0, 3.048, 6.096, 9.144, 12.192, 15.24])
    assert structure.level_at(9.2) == 3
    assert structure.level_at(-5.0) == 0
    assert [plant.level for plant in structure.plants] == [0]


def test_a_tower_wants_a_riser_diagram_and_a_low_or_small_building_does_not() -> None:
    assert tall(tower(storeys=8)).structure.is_tall
    assert not tall(tower(storeys=2, shafts=8)).structure.is_tall
    assert not tall(tower(storeys=4, shafts=1)).structure.is_tall  # fewer than 60 parts
    assert tall(tower(storeys=4, shafts=1)).structure.is_stacked


def test_names_say_nothing() -> None:
    plain, named = tower(), tower()
    for storey in range(1, 7):
        for shaft in "ab":
            named = altered(named, (f"flat{storey}{shaft}", f"x{ord(shaft)}q{9 - storey}"))
    one, other = tall(plain).structure, tall(named).structure
    assert [c.level for c in one.components] == [c.level for c in other.components]
    assert one.floors == other.floors


def test_links_in_risers_are_known() -> None:
    building = tall(tower(storeys=4, shafts=1))
    assert len(building.structure.upright) == 4 + 4 + 3
