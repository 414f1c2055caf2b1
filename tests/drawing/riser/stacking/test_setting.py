from tall_buildings import altered, tall, tower

from plumbnet.drawing.riser.stacking.setting import with_plants_below
from plumbnet.drawing.riser.stacking.shaft_places import put_side_by_side

ODD = altered(
    tower(storeys=6), ("h3a -> flat3a.hot", "h3a -> own-stop -> flat3a.hot"), ("runs:\n", "  own-stop: valve\nruns:\n")
)


def test_what_is_folded_is_a_box_with_one_detail_and_what_is_odd_is_drawn_on_its_level() -> None:
    building = tall(ODD)
    setting = building.setting
    odd = building.component("flat3a").number
    assert setting.stops[odd].arrangement is not None
    assert all(stop.arrangement is None for number, stop in setting.stops.items() if number != odd)
    assert list(setting.details) == [building.component("flat1a").number]


def test_ends_of_risers_stand_at_headers_and_at_stops() -> None:
    building = tall(ODD)
    setting = building.setting
    chain = next(c for riser in building.structure.risers for c in riser.chains if c.high.part == "h1a")
    assert setting.end_y(chain, chain.low) in {y for _, y in setting.bands.header.values()}
    assert setting.bands.floor[2] < setting.end_y(chain, chain.high) < setting.bands.floor[1]
    for riser in building.structure.risers:
        top, foot = setting.span(riser)
        assert top < foot


def test_plants_on_the_ground_may_lie_below_all_shafts_with_their_headers_above_them() -> None:
    below = with_plants_below(tall(ODD).setting)
    assert below is not None
    put_side_by_side(below)
    for number, plant in below.plants.items():
        x, y = below.bands.corner[number]
        levels = {key: below.bands.header[number, key] for key in plant.ways}
        assert all(level < y - plant.height for _, level in levels.values())
        assert all(upright > x + plant.width for upright, _ in levels.values())
    assert max(below.x.values()) < below.bands.width


def test_a_plant_on_the_roof_stays_beside_the_shafts() -> None:
    lines = tower(storeys=6).splitlines()
    sky = [line.replace("heater: {kind", "heater: {elevation: 90 ft, kind") for line in lines]
    roof = "\n".join(line.replace("  hot: tee", "  hot: {kind: tee, elevation: 90 ft}") for line in sky)
    building = tall(roof)
    assert any(plant.level for plant in building.structure.plants)
    assert with_plants_below(building.setting) is None
