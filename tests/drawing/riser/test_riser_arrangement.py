from pathlib import Path

import pytest
from conftest import times
from drafting import crossing_count, faults
from hypothesis import given
from hypothesis import strategies as st
from tall_buildings import Tall, altered, names_of, random_tower, tall, tower

from plumbnet.drawing.ink.sheet_composition import composition
from plumbnet.drawing.riser.stacking.riser_marks import BreakMark, FloorMark


def floors_of(building: Tall) -> list[FloorMark]:
    return [mark for mark in building.drawn.marks if isinstance(mark, FloorMark)]


def untold(building: Tall) -> set[str]:
    """Parts that are neither drawn nor alike to one that is drawn out."""
    folding, structure = building.folding, building.structure
    told = set(names_of(building.drawn))
    for fold in folding.folds:
        told.update(name for number in fold.members for name in structure.components[number].members)
    for shaft in folding.shafts:
        for place in shaft.others:
            other = structure.shafts[place]
            told.update(name for number in other.branches for name in structure.components[number].members)
            told.update(name for riser in other.risers for chain in riser.chains for name in chain.devices)
    return structure.diagram.items.keys() - told


def audited(building: Tall) -> list[str]:
    """What is wrong with a riser diagram: its geometry, names on words, parts that nothing tells of, levels."""
    drawn = building.drawn
    found = faults(drawn.diagram, drawn.arrangement)
    found += [f"nothing tells of {name}" for name in sorted(untold(building))]
    floors = [mark.y for mark in floors_of(building)]
    found += ["levels out of order"] if floors != sorted(floors, reverse=True) else []
    return found


@times(0.12)
@given(st.integers(0, 10**6))
def test_riser_diagram_of_any_tall_building_is_one_to_sign(seed: int) -> None:
    building = tall(random_tower(seed))
    if building.structure.is_tall:
        assert audited(building) == []


@pytest.mark.parametrize("least", [2, 3])
def test_tower_is_drawn_with_few_crossings(least: int) -> None:
    building = tall(tower(storeys=9, shafts=3), least)
    assert audited(building) == []
    assert crossing_count(building.drawn.arrangement) <= 3 * 2


def test_floors_stand_as_high_as_they_are_and_say_so() -> None:
    assert [mark.words for mark in floors_of(tall(tower(storeys=6)))] == [f"{10 * storey} ft" for storey in range(7)]


def test_an_odd_flat_is_drawn_out_on_its_level_and_the_others_are_boxes() -> None:
    text = altered(
        tower(storeys=8),
        ("h3a -> flat3a.hot", "h3a -> own-stop -> flat3a.hot"),
        ("runs:\n", "  own-stop: valve\nruns:\n"),
    )
    building = tall(text)
    assert audited(building) == []
    names = set(names_of(building.drawn))
    assert {"flat3a", "own-stop", "flat1a"} <= names
    assert not {"flat2a", "flat2b"} & names
    boxes = [item for name, item in building.drawn.diagram.items.items() if name.startswith("A\x01")]
    assert len(boxes) == 15


def test_levels_left_out_are_marked_once_with_their_number() -> None:
    building = tall(tower(storeys=20, step_ft=6.5))
    assert audited(building) == []
    (mark,) = (mark for mark in building.drawn.marks if isinstance(mark, BreakMark))
    assert mark.lines[1] == "15 levels alike"
    assert len(mark.xs) == 6


def test_a_device_with_a_height_of_its_own_stands_on_its_level() -> None:
    text = altered(tower(storeys=8), ("balance-a: valve", "balance-a: {kind: valve, elevation: 41 ft}"))
    building = tall(text)
    assert audited(building) == []
    heights = {each.item.name: each.y for each in building.drawn.arrangement.placements}
    floors = [mark.y for mark in floors_of(building)]
    assert floors[5] < heights["balance-a"] < floors[4]
    assert floors[1] < heights["balance-b"] < floors[0]


def test_metric_heights_are_written_in_metres() -> None:
    marks = floors_of(tall(altered(tower(storeys=8), ("units: us", "units: metric"))))
    assert [mark.words for mark in marks][:3] == ["0.0 m", "3.0 m", "6.1 m"]


def test_words_of_a_riser_diagram_cover_nothing() -> None:
    building = tall(tower(storeys=8))
    drawn = composition(building.schematic)
    covered = [each.words_box for each in drawn.arrangement.placements if each.item.lines]
    for box in drawn.names.values():
        for other in covered:
            assert not (box[0] < other[2] and other[0] < box[2] and box[1] < other[3] and other[1] < box[3])


#   roof plant ---------- 94 ft
#      | valve, 94 ft      a device on the plant's own level stands below its headers
#   floor 9 ------------- 90 ft
def test_a_device_as_high_as_the_plant_above_stands_below_its_headers() -> None:
    roof = Path(__file__).parents[3] / "systems" / "tower-tank-on-the-roof.yaml"
    building = tall(roof.read_text(encoding="utf-8"))
    assert building.structure.is_stacked
    assert audited(building) == []
