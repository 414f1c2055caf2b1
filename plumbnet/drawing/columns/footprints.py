"""An ordered grid to the footprint of each station: how it faces, where pipes join it, how much room it takes."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import NamedTuple

from plumbnet.drawing.columns.arcs import Station
from plumbnet.drawing.columns.grid import Grid
from plumbnet.drawing.columns.mounts import MARGIN, Mount, Room, mount_room, surround
from plumbnet.drawing.items import Diagram, Item, Stack
from plumbnet.drawing.lettering import size_of
from plumbnet.drawing.symbols import Point, Symbol

_SPREAD = 11.0
"""Between ports that have no place of their own."""
_DOT = 3.5
BASE = 7.0
"""Below the foot of an accessory that is joined from the side."""


class Tip(NamedTuple):
    """An end of an arc."""

    arc: int
    is_head: bool


@dataclass(frozen=True, slots=True)
class Footprint:
    """How a station stands.

    `tips` are the offsets at which its arcs join it; `backward` those on the side away from where their arc goes.
    `is_mirrored` and `is_turned` say how its symbol is drawn, `stretch` by how much it is drawn out in height.
    """

    room: Room
    tips: Mapping[Tip, Point]
    backward: frozenset[Tip] = frozenset()
    is_mirrored: bool = False
    is_turned: bool = False
    stretch: float = 1.0
    mounts: tuple[Mount, ...] = ()
    words_at_side: int = 0
    """-1: words to the left of the symbol, 1: to the right, 0: below."""


@dataclass(slots=True)
class Footprints:
    """Decides for each station of a grid whose columns are in order."""

    grid: Grid
    columns: Sequence[Sequence[int]]
    diagram: Diagram
    stacks: Sequence[Stack]
    _place: dict[int, float] = field(default_factory=dict)
    _stacks_on: dict[str, list[Stack]] = field(default_factory=lambda: defaultdict(list))
    _tips_at: dict[int, list[Tip]] = field(default_factory=lambda: defaultdict(list))

    def __post_init__(self) -> None:
        for column in self.columns:
            self._place.update({node: (at + 0.5) / len(column) for at, node in enumerate(column)})
        for stack in self.stacks:
            self._stacks_on[stack.host.part].append(stack)
        for number, arc in enumerate(self.grid.graph.arcs):
            self._tips_at[arc.tail].append(Tip(number, is_head=False))
            self._tips_at[arc.head].append(Tip(number, is_head=True))

    def all(self) -> tuple[Footprint, ...]:
        """The footprint of every station."""
        return tuple(self._footprint(station) for station in self.grid.graph.stations)

    def _footprint(self, station: Station) -> Footprint:
        tips = self._tips_at[station.number]
        if station.item is None:
            return Footprint(Room(0.0, 0.0, 0.0, 0.0), dict.fromkeys(tips, (0.0, 0.0)))
        if station.is_joint:
            return self._joint(station, station.item, tips)
        if not station.item.symbol.sockets:
            return self._spread(station.item, tips)
        if station.item.symbol.hangs:
            return self._accessory(station.item, tips)
        return self._device(station.item, tips)

    def _joint(self, station: Station, item: Item, tips: Sequence[Tip]) -> Footprint:
        first = self.grid.graph.pieces[item.name][0] == station.number
        mounts = self._mounts_on_joint(item, self._place[station.number]) if first else ()
        room = Room(_DOT, _DOT, _DOT, _DOT)
        for each in mounts:
            room = _widened(room, mount_room(self.diagram, each))
        return Footprint(room, dict.fromkeys(tips, (0.0, 0.0)), mounts=mounts)

    def _mounts_on_joint(self, item: Item, place: float) -> tuple[Mount, ...]:
        """Stacks beside each other, above the run or below it."""
        ends = {True: 0.0, False: 0.0}
        mounts: list[Mount] = []
        for stack in self._stacks_on[item.name]:
            may_hang = self.diagram.items[stack.names[-1]].symbol.hangs == "both"
            rises = not may_hang or (place <= 0.5 if not mounts else not mounts[-1].rises)  # noqa: PLR2004  # the middle
            room = mount_room(self.diagram, Mount(stack, (0.0, 0.0), rises))
            x = ends[rises] + room.left if ends[rises] else 0.0
            mounts.append(Mount(stack, (x, 0.0), rises))
            ends[rises] = x + room.right + 8.0
        return tuple(mounts)

    def _spread(self, item: Item, tips: Sequence[Tip]) -> Footprint:
        """A box whose ports are spread over its sides in the order of what they lead to."""
        sides: dict[bool, list[Tip]] = {True: [], False: []}
        for tip in sorted(tips, key=self._beyond):
            sides[tip.is_head].append(tip)
        symbol = item.symbol
        most = max(len(side) for side in sides.values())
        stretch = max(1.0, (most * _SPREAD + 4.0) / symbol.height)
        places = {
            tip: ((-1.0 if is_left else 1.0) * symbol.width / 2, (at - (len(side) - 1) / 2) * _SPREAD)
            for is_left, side in sides.items()
            for at, tip in enumerate(side)
        }
        return self._worded(item, Footprint(_symbol_room(symbol, stretch), places, stretch=stretch))

    def _accessory(self, item: Item, tips: Sequence[Tip]) -> Footprint:
        """A tank or relief valve at the end of a run: it stands upright, its pipe comes in below its foot."""
        symbol = item.symbol
        half = symbol.width / 2 + 2.0
        level = foot(symbol) + BASE
        places = {tip: (-half if tip.is_head else half, level) for tip in tips}
        room = _symbol_room(symbol)._replace(bottom=level + 2.0)
        return self._worded(item, Footprint(room, places))

    def _device(self, item: Item, tips: Sequence[Tip]) -> Footprint:
        symbol = item.symbol
        is_mirrored = not symbol.is_two_sided and self._faces_left(symbol, tips)
        places = {tip: self._socket(symbol, tip, is_mirrored=is_mirrored) for tip in tips}
        if symbol.one_side and len(tips) > 1 and len({tip.is_head for tip in tips}) == 1:
            half = symbol.width / 2
            places = {tip: (-half if tip.is_head else half, symbol.one_side[self._port(tip)]) for tip in tips}
        backward = frozenset(tip for tip, (x, _) in places.items() if (x < 0.0) != tip.is_head)
        is_turned = bool(symbol.turns or symbol.one_side) and self._is_crossed(places)
        if is_turned:
            places = {tip: (x, -y) for tip, (x, y) in places.items()}
        mounts = self._mounts_on_device(item)
        turned_whole = is_turned and symbol.turns == "whole"
        room = _symbol_room(symbol, is_turned=turned_whole)
        for each in mounts:
            room = _widened(room, mount_room(self.diagram, each))
        footprint = Footprint(room, places, backward, is_mirrored, turned_whole, mounts=mounts)
        return self._worded(item, footprint)

    def _faces_left(self, symbol: Symbol, tips: Sequence[Tip]) -> bool:
        wrong = [(symbol.sockets[self._port(tip)][0] < 0.0) != tip.is_head for tip in tips]
        return sum(wrong) * 2 > len(wrong)

    def _socket(self, symbol: Symbol, tip: Tip, *, is_mirrored: bool) -> Point:
        x, y = symbol.sockets[self._port(tip)]
        if symbol.is_two_sided:
            return (-abs(x) if tip.is_head else abs(x)), y
        return (-x if is_mirrored else x), y

    def _port(self, tip: Tip) -> str:
        arc = self.grid.graph.arcs[tip.arc]
        return arc.head_port if tip.is_head else arc.tail_port

    def _beyond(self, tip: Tip) -> float:
        """Where in its column stands what a tip leads to next."""
        chain = self.grid.chains[tip.arc]
        return self._place[chain[-2] if tip.is_head else chain[1]]

    def _is_crossed(self, places: Mapping[Tip, Point]) -> bool:
        """Whether pipes that join one side of a symbol would cross, and would not if it stood on its head."""
        crossed = 0
        tips = list(places)
        for at, one in enumerate(tips):
            for other in tips[at + 1 :]:
                if one.is_head == other.is_head:
                    order = (self._beyond(one) - self._beyond(other)) * (places[one][1] - places[other][1])
                    crossed += (order < 0.0) - (order > 0.0)
        return crossed > 0

    def _mounts_on_device(self, item: Item) -> tuple[Mount, ...]:
        crown = (0.0, -item.symbol.height / 2)
        return tuple(Mount(stack, crown, rises=True) for stack in self._stacks_on[item.name])

    def _worded(self, item: Item, footprint: Footprint) -> Footprint:
        """The footprint with room for the item's words: beside an end, below anything else."""
        if not item.lines:
            return footprint
        wide, high = size_of(item.lines, item.letter_size)
        sides = {x > 0.0 for x, _ in footprint.tips.values()}
        room = Room(*(reach + surround(item) for reach in footprint.room))
        side = 0
        if len(sides) == 1:
            side = -1 if True in sides else 1
            at_left, at_right = (wide + MARGIN, 0.0) if side < 0 else (0.0, wide + MARGIN)
            beside = Room(
                room.left + at_left, max(room.top, high / 2), room.right + at_right, max(room.bottom, high / 2)
            )
        else:
            beside = Room(max(room.left, wide / 2), room.top, max(room.right, wide / 2), room.bottom + MARGIN + high)
        return replace(footprint, room=beside, words_at_side=side)


def _symbol_room(symbol: Symbol, stretch: float = 1.0, *, is_turned: bool = False) -> Room:
    top, bottom = (reach * stretch for reach in symbol.reach)
    if is_turned:
        top, bottom = bottom, top
    return Room(symbol.width / 2, top, symbol.width / 2, bottom)


def foot(symbol: Symbol) -> float:
    """How far below its middle an accessory's pipe joins it."""
    return max(y for _, y in symbol.sockets.values())


def _widened(room: Room, other: Room) -> Room:
    return Room(*(max(one, two) for one, two in zip(room, other, strict=True)))
