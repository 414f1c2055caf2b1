from tall_buildings import altered, tall, tower

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
