from campus import campus
from drafting import faults
from drawing_board import Sketch, sketch

import plumbnet
from plumbnet.drawing.items.branches import MOST_ITEMS, abridged
from plumbnet.drawing.routing.arrangement import arrangement_of

HOUSE = """
street -> cv -> tee1 -> heater -> tee2 -> tap1.hot
tee2 -> tee3 -> tap2.hot
tee3 -> tap3.hot
tee1 -> tap1.cold
tee1 -> valve -> tap4.cold
"""


def test_dead_ends_are_folded_with_their_count() -> None:
    house = sketch(HOUSE)
    small = abridged(house.diagram)
    assert list(small.items) == ["street", "cv", "tee1", "heater", "tee2+4", "valve", "tap4"]
    assert small.items["tee2+4"].lines == ("5 parts, folded",)
    assert len(small.links) == 7


def test_single_quiet_end_is_drawn_for_itself() -> None:
    house = sketch("street -> cv -> heater -> tap1.hot")
    assert abridged(house.diagram) is house.diagram


def test_fixture_that_joins_hot_and_cold_is_no_dead_end() -> None:
    house = sketch("street -> cv -> tee1 -> heater -> tee2 -> tap1.hot\ntee1 -> tap1.cold", tap1="crossover: true")
    assert abridged(house.diagram) is house.diagram


def test_folded_drawing_is_one_to_sign() -> None:
    house = sketch(HOUSE)
    small = abridged(house.diagram)
    assert faults(small, arrangement_of(small)) == []


def test_what_is_to_be_kept_is_kept() -> None:
    house = sketch(HOUSE)
    assert "tee3" in abridged(house.diagram, keep={"tee3"}).items


def test_port_of_a_fold_remembers_the_port_behind_it() -> None:
    house = sketch(HOUSE)
    small = abridged(house.diagram)
    behind = {small.origin(end) for link in small.links for end in link.ends}
    assert behind <= {end for link in house.diagram.links for end in link.ends}


def test_every_part_is_counted_once_in_a_large_layout() -> None:
    large = Sketch(plumbnet.read_bytes(campus(MOST_ITEMS + 20).encode()))
    small = abridged(large.diagram)
    counted = sum(int(item.lines[0].split()[0]) if "+" in name else 1 for name, item in small.items.items())
    assert counted == len(large.system.parts)
    assert len(small.items) < len(large.system.parts)


def test_layout_of_more_than_300_parts_is_folded_and_a_smaller_one_is_not() -> None:
    assert any("+" in name for name in Sketch(plumbnet.read_bytes(campus(320).encode())).composition.diagram.items)
    assert not any("+" in name for name in Sketch(plumbnet.read_bytes(campus(60).encode())).composition.diagram.items)
