"""Layers, heights and tracks to coordinates: the x of every column and upright, and the spots where joints are met."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from plumbnet.drawing.columns import BASE, ArcGraph, Layers, Tip, foot
from plumbnet.drawing.routing.channels import Channel
from plumbnet.drawing.symbols import Point

TRACK = 8.0
"""Between two uprights side by side."""
_EDGE = 7.0
"""Between an upright and the columns on its sides."""
_NARROWEST = 13.0
"""Between two columns, at least."""


@dataclass(slots=True)
class Coordinates:
    """Everything that has been decided of a drawing, and where on paper that puts it.

    `middles` are those of the columns, `starts` the left edges of the channels, `spots` the places on the run of
    each joint at which pipes come up or down to it.
    """

    layers: Layers
    height: Mapping[int, float]
    between: Sequence[Channel]
    middles: list[float] = field(default_factory=list)
    starts: list[float] = field(default_factory=list)
    spots: dict[int, list[float]] = field(default_factory=lambda: defaultdict(list))

    def __post_init__(self) -> None:
        self._spread()
        for station in self.graph.stations:
            for mount in self.layers.footprints[station.number].mounts if station.is_joint else ():
                self.spots[station.number].append(self.x(station.number) + mount.foot[0])
        self._find_uprights()

    @property
    def graph(self) -> ArcGraph:
        """The stations and arcs."""
        return self.layers.grid.graph

    def _spread(self) -> None:
        stations = len(self.graph.stations)
        x = 0.0
        for number, channel in enumerate(self.between):
            self.starts.append(x)
            count = channel.track_count
            if count or 0 < number < len(self.between) - 1:
                x += max(_NARROWEST, 2 * _EDGE + (count - 1) * TRACK)
            if number < len(self.layers.columns):
                rooms = [self.layers.footprints[node].room for node in self.layers.columns[number] if node < stations]
                x += max((room.left for room in rooms), default=0.0)
                self.middles.append(x)
                x += max((room.right for room in rooms), default=0.0)

    def _find_uprights(self) -> None:
        """Spots of uprights that a joint's pipes share, and of those that come down on its run from another's."""
        uprights = [
            (self.track_x(number, at), net)
            for number, channel in enumerate(self.between)
            for at, net in enumerate(channel.nets)
        ]
        for x, net in uprights:
            if net.home is not None:
                self.spots[net.home.node].append(x)
        for x, net in uprights:
            for strand in net.strands if not net.is_straight else ():
                spots = self.spots.get(strand.end.node)
                if strand.end != net.home and spots and x > min(spots) and self.is_joint(strand.end.node):
                    spots.append(x)

    def x(self, station: int) -> float:
        """The middle of a station's column."""
        return self.middles[self.layers.grid.column_of[station]]

    def track_x(self, channel: int, net: int) -> float:
        """The upright of a net."""
        return self.starts[channel] + _EDGE + TRACK * self.between[channel].tracks.get(net, 0)

    def is_joint(self, node: int) -> bool:
        """Whether any number of pipes meets in a node's middle."""
        return not self.layers.grid.is_waypoint(node) and self.graph.stations[node].is_joint

    def name(self, station: int) -> str:
        """The part that a station stands for; none for a bend."""
        item = self.graph.stations[station].item
        return "" if item is None else item.name

    def run(self, station: int) -> tuple[float, float]:
        """Left and right end of a joint's run."""
        spots = self.spots[station] or [self.x(station)]
        return min(spots), max(spots)

    def tip(self, station: int, tip: Tip, beyond: float) -> Point:
        """Where an arc that comes from `beyond` joins a station."""
        y = self.height[station]
        if not self.graph.stations[station].is_joint:
            x, dy = self.layers.footprints[station].tips[tip]
            return self.x(station) + x, y + dy
        left, right = self.run(station)
        if not tip.is_head:
            return right, y
        return (beyond if left < beyond <= right else left), y

    def inside(self, station: int) -> list[Point]:
        """The way from the foot of an accessory down to where its pipe comes in from the side."""
        item = self.graph.stations[station].item
        if item is None or not item.symbol.hangs:
            return []
        x, y = self.x(station), self.height[station]
        return [(x, y + foot(item.symbol)), (x, y + foot(item.symbol) + BASE)]
