from tall_buildings import altered, tall, tower

TEXT = tower(storeys=6, shafts=2)


def is_like(text: str, one: str, other: str) -> bool:
    building = tall(text)
    classes = building.likeness.branches
    return classes[building.component(one).number] == classes[building.component(other).number]


def test_flats_are_alike_on_every_storey_and_in_every_shaft() -> None:
    building = tall(TEXT)
    assert len(set(building.likeness.branches.values())) == 1  # whether a return leaves from it or not
    assert is_like(TEXT, "flat1a", "flat5b")
    assert building.likeness.shafts == (0, 0)
    assert len(building.likeness.branches_like(building.component("flat1a").number)) == 12


def test_what_differs_is_another_class() -> None:
    stop = altered(
        TEXT, ("h3a -> flat3a.hot", "h3a -> own-stop -> flat3a.hot"), ("runs:\n", "  own-stop: valve\nruns:\n")
    )
    higher = altered(TEXT, ("flat3a: {kind: fixture, elevation: 33 ft}", "flat3a: {kind: fixture, elevation: 34 ft}"))
    for text in (stop, higher):
        assert not is_like(text, "flat3a", "flat2a")
        assert is_like(text, "flat4a", "flat2a")
        assert len(set(tall(text).likeness.shafts)) == 2


def test_lengths_do_not_count_and_tubes_do() -> None:
    run = "  - h2a -> h3a -> flat3a.hot"
    long = altered(TEXT, (run, "  - {path: h2a -> h3a -> flat3a.hot, pipe: copper-L 1 in, length: 30 ft}"))
    short = altered(long, ("length: 30 ft", "length: 3 ft"))
    assert not is_like(long, "flat3a", "flat2a")
    one, other = (tall(text).likeness for text in (long, short))
    assert one == other


def test_zones_in_trouble_are_never_mixed() -> None:
    cut = altered(
        TEXT,
        ("  - hot -> h1b", "  - hot -> stuck -> h1b"),
        ("  - split -> c1b", "  - split -> stuck-too -> c1b"),
        ("runs:\n", "  stuck: check_valve\n  stuck-too: check_valve\nruns:\n"),
    )
    building = tall(cut)
    zones = [{end.part for end in shading.ports} for shading in building.schematic.shadings]
    for first in set(building.likeness.branches.values()):
        members = building.likeness.branches_like(first)
        met = {tuple(not zone.isdisjoint(building.structure.components[n].members) for zone in zones) for n in members}
        assert len(met) == 1
