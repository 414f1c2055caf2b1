from tall_buildings import tall, tower

from plumbnet.drawing.riser.stacking.doors import DoorKey
from plumbnet.drawing.riser.stacking.letter_box import box_name, letter_box, letter_item, port_of

BUILDING = tall(tower(storeys=5, shafts=2))


def test_a_box_has_its_doors_on_their_sides() -> None:
    flat = BUILDING.component("flat2a")
    both = letter_box(BUILDING.structure, flat, frozenset([DoorKey("c2a")]))
    left = letter_box(BUILDING.structure, flat, frozenset())
    assert both.ways[DoorKey("h2a")][0][0] == 0.0
    assert both.ways[DoorKey("c2a")][0][0] == both.width
    assert left.height > both.height
    ys = [way[0][1] for way in left.ways.values()]
    assert ys == sorted(ys)
    assert all(-left.height < y < 0.0 for y in ys)


def test_its_item_bears_the_letter_and_joins_where_its_doors_are() -> None:
    flat = BUILDING.component("flat2a")
    stop = letter_box(BUILDING.structure, flat, frozenset())
    item = letter_item(stop, "Q", "what Q is")
    assert item.name == box_name(stop, "Q") not in BUILDING.structure.diagram.items
    assert item.symbol.words == "what Q is"
    assert item.ports == (port_of(stop, DoorKey("h2a")), port_of(stop, DoorKey("c2a")))
