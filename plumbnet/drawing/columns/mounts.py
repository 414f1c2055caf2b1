"""What stands on a host: tanks, relief valves and vents, and how much room they take with their words."""

from dataclasses import dataclass
from typing import NamedTuple

from plumbnet.drawing.items import Diagram, Item, Stack
from plumbnet.drawing.lettering import size_of
from plumbnet.drawing.symbols import Point

MARGIN = 3.0
"""Between a symbol and its words."""
RING = 5.0
"""Between a symbol and the ring round it."""
FRAME = 4.0
"""Between a symbol, or the ring round it, and its frame."""
_BETWEEN = 10.0
"""Pipe between two that stand on each other."""


class Room(NamedTuple):
    """How far something reaches from its middle."""

    left: float
    top: float
    right: float
    bottom: float


@dataclass(frozen=True, slots=True)
class Mount:
    """A stack on its host: the offset of its foot from the host's middle, and whether it rises."""

    stack: Stack
    foot: Point
    rises: bool


class Accessory(NamedTuple):
    """An item of a stack: its middle, and by how many quarter turns to the left it is drawn."""

    name: str
    middle: Point
    quarters: int


def surround(item: Item) -> float:
    """The room that ring and frame take on each side of a symbol."""
    return RING * (item.is_ringed or item.keeps_ring_room) + FRAME * item.is_framed


def accessories(diagram: Diagram, mount: Mount) -> tuple[Accessory, ...]:
    """The items of a stack, their middles counted from the host's middle."""
    x, y = mount.foot
    upward = -1.0 if mount.rises else 1.0
    y += upward * diagram.items[mount.stack.names[-1]].symbol.stem
    found: list[Accessory] = []
    before = 0.0
    for name, link in zip(mount.stack.names, mount.stack.links, strict=True):
        symbol = diagram.items[name].symbol
        extent = symbol.height if symbol.hangs else symbol.width
        over = _words_over(diagram.items[name], extent)
        y += upward * max(0.0, before + over)
        before = over
        if symbol.hangs:
            found.append(Accessory(name, (x, y + upward * extent / 2), 0 if mount.rises else 2))
            continue
        enters = symbol.sockets[link.near(name).port][0] < 0.0
        quarters = (1 if mount.rises else 3) if enters else (3 if mount.rises else 1)
        found.append(Accessory(name, (x, y + upward * extent / 2), quarters))
        y += upward * (extent + _BETWEEN)
    return tuple(found)


def _words_over(item: Item, extent: float) -> float:
    """How far the words beside an item reach beyond it, at either end; a little is no matter."""
    return max(0.0, (size_of(item.lines, item.letter_size)[1] - extent) / 2 - _BETWEEN / 2)


def mount_room(diagram: Diagram, mount: Mount) -> Room:
    """How far a stack reaches from its host's middle, its words included."""
    left = right = top = bottom = 0.0
    for each in accessories(diagram, mount):
        item = diagram.items[each.name]
        symbol = item.symbol
        wide, high = (symbol.height, symbol.width) if each.quarters % 2 else (symbol.width, symbol.height)
        words, lines = size_of(item.lines, item.letter_size)
        x, y = each.middle
        beside = max(0.0, max(symbol.reach) - wide / 2) if each.quarters % 2 else 0.0
        left = max(left, wide / 2 + beside - x)
        right = max(right, x + wide / 2 + beside + MARGIN + surround(item) + words)
        top = max(top, max(high, lines) / 2 - y)
        bottom = max(bottom, y + max(high, lines) / 2)
    return Room(left, top, right, bottom)
