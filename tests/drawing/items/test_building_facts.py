from tall_buildings import tall, tower


def test_facts_tell_parts_apart_by_all_but_name_and_height() -> None:
    building = tall(tower()).schematic.building
    assert building is not None
    assert building.parts["h1a"].likeness == building.parts["h2a"].likeness == building.parts["h2b"].likeness
    assert building.parts["h1a"].likeness != building.parts["flat1a"].likeness
    assert len(building.pipes) == len(tall(tower()).system.pipes)
