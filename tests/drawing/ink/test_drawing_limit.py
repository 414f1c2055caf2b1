from dataclasses import replace

import pytest
from tall_buildings import Tall, tall, tower

from plumbnet.drawing.ink import drawing_limit
from plumbnet.drawing.ink.drawing_limit import TooDense, is_dense_riser, refuse_dense_riser
from plumbnet.drawing.ink.sheet_composition import composition
from plumbnet.drawing.items.schematic import Schematic
from plumbnet.drawing.riser import drawn_count

LARGE = tall(tower(storeys=14, shafts=8))


def in_layers(building: Tall) -> Schematic:
    facts = building.schematic.building
    assert facts is not None
    return replace(building.schematic, building=replace(facts, is_wanted=False))


def test_what_nobody_could_read_is_not_drawn_and_the_riser_diagram_is_offered(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(drawing_limit, "MOST_PARTS_DRAWN", 60)
    with pytest.raises(TooDense) as refused:
        composition(in_layers(LARGE))
    count = drawn_count(LARGE.structure)
    assert refused.value.as_riser == count < 60
    words = str(refused.value)
    assert words.startswith(
        "no drawing is made of more than 60 parts or 4,000 pipes; folded as far as can be, this one has "
    )
    assert words.endswith(f" pipes; as a riser diagram it has {count} parts")


def test_where_that_is_too_much_as_well_none_is_offered(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(drawing_limit, "MOST_PARTS_DRAWN", 5)
    assert is_dense_riser(LARGE.structure, 3)
    with pytest.raises(TooDense, match=r"this one has \d+ parts$"):
        refuse_dense_riser(LARGE.structure, 3)
    with pytest.raises(TooDense, match=r" pipes$"):
        composition(in_layers(LARGE))


def test_a_large_building_is_drawn() -> None:
    assert not is_dense_riser(LARGE.structure, 3)
    assert len(composition(LARGE.schematic).diagram.items) <= 100
    assert len(composition(LARGE.schematic).diagram.items) == drawn_count(LARGE.structure) + 2  # ends of risers
