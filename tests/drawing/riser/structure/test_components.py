from tall_buildings import altered, tall, tower


def test_a_plant_supplies_and_a_flat_is_a_branch() -> None:
    building = tall(tower())
    assert building.component("heater").is_plant
    assert building.component("heater") == building.component("street")
    assert not building.component("flat3b").is_plant
    assert building.component("flat3b").members == ("h3b", "c3b", "flat3b")


OWN = """
  own: {kind: storage_heater, elevation: 31 ft, volume: 40 gal, setpoint: 140 degF, input: 40000 Btu/h}
  own-tap: {kind: fixture, elevation: 33 ft}
"""


def test_a_flat_with_a_heater_of_its_own_stays_a_branch() -> None:
    runs = "c3a -> flat3a.cold\n  - c3a -> own -> own-tap.hot"
    building = tall(altered(tower(), ("c3a -> flat3a.cold", runs), ("runs:\n", f"{OWN.lstrip(chr(10))}runs:\n")))
    flat = building.component("own")
    assert not flat.is_plant
    assert "flat3a" in flat.members


def test_a_riser_ends_low_where_it_goes_up() -> None:
    ends = tall(tower()).component("h3a").ends
    assert sorted((each.chain.high.part, each.is_low) for each in ends) == [
        ("c3a", False), ("c4a", True), ("h3a", False), ("h4a", True),
    ]  # fmt: skip
