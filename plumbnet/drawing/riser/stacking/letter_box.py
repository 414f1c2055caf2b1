"""A branch that is drawn out elsewhere as a box with its letter, and the item that this is."""

from plumbnet.drawing.items import Item
from plumbnet.drawing.riser.stacking.door_block import Stand
from plumbnet.drawing.riser.stacking.doors import DoorKey, doors_of
from plumbnet.drawing.riser.structure import Component, Structure
from plumbnet.drawing.symbols import Letter, Point, Stroke, Symbol

_WIDE = 16.0
_APART = 9.0
"""Between two pipes on one side."""
_EDGE = 6.5
_SIZE = 8.0


def letter_box(structure: Structure, component: Component, on_right: frozenset[DoorKey]) -> Stand:
    """The stop of a branch in a box, its doors from the top down on each side."""
    doors = doors_of(structure, component)
    sides = {key: 1 if key in on_right else -1 for key in doors}
    most = max(list(sides.values()).count(side) for side in (-1, 1))
    high = 2 * _EDGE + _APART * (most - 1)
    ways: dict[DoorKey, tuple[Point, ...]] = {}
    for side, x in ((-1, 0.0), (1, _WIDE)):
        own = [key for key in doors if sides[key] == side]
        top = -high + _EDGE + _APART * (most - len(own)) / 2
        ways |= {key: ((x, top + _APART * at),) for at, key in enumerate(own)}
    services = {key: ends[0].chain.service for key, ends in doors.items()}
    return Stand(component, _WIDE, high, ways, sides, services)


def letter_item(stop: Stand, letter: str, said: str) -> Item:
    """The item of a branch in a box: its ports are named by the places of its doors."""
    x, y = stop.width / 2, stop.height / 2
    outline = Stroke(((-x, -y), (x, -y), (x, y), (-x, y)), is_closed=True, fill="ground")
    sockets = {port_of(stop, key): (way[0][0] - x, way[0][1] + y) for key, way in stop.ways.items()}
    marks = (outline, Letter(0.0, 0.0, letter, _SIZE))
    symbol = Symbol(f"fold-{letter}", stop.width, stop.height, marks, sockets, said=said)
    return Item(box_name(stop, letter), symbol, tuple(sockets))


def box_name(stop: Stand, letter: str) -> str:
    """A name that no part can have."""
    return f"{letter}\x01{stop.component.members[0]}"


def port_of(stop: Stand, key: DoorKey) -> str:
    """The port of a box at one of its doors."""
    return f"door {list(stop.ways).index(key)}"
