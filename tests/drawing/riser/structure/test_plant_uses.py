from tall_buildings import altered, tall, tower

GROUND = altered(
    tower(),
    ("  - back -> pump", "  - hot -> lobby.hot\n  - split -> lobby.cold\n  - back -> pump"),
    ("runs:\n", "  lobby: fixture\nruns:\n"),
)


def test_what_is_used_on_the_plants_own_level_is_a_branch() -> None:
    building = tall(GROUND)
    lobby = building.component("lobby")
    assert not lobby.is_plant
    assert lobby.level == 0
    assert sorted(each.chain.low.part for each in lobby.ends) == ["hot", "split"]
    assert "heater" in building.component("hot").members


def test_headers_and_equipment_stay_in_the_plant() -> None:
    plant = tall(GROUND).component("heater")
    assert {"hot", "split", "back", "pump", "tank", "tank-tee"} <= set(plant.members)
