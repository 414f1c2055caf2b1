"""Words that look for a free spot: names of joints and the tags of zones."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence

from plumbnet.drawing.items import Item, Shading
from plumbnet.drawing.lettering import LABEL_SIZE, size_of
from plumbnet.drawing.routing import Arrangement, Box
from plumbnet.drawing.symbols import Point

_JOINT_SIZE = 6.0
"""Size of a joint's name, in points, where the names of devices have theirs: it stands back behind them."""
_PIPE = 1.5
"""Half the width that words keep free of a pipe."""
_DOT = 3.0
_SQUARE = 64.0
_NEAR, _FAR = (2.5, 6.0), (10.0, 15.0)
"""From a dot to its name; farther only where it has to be named."""
_GAP = 1.2
_INSIDE = 0.3
"""What a tag pays for a square point of the area that it marks."""


class Occupancy:
    """Remembers what is taken, square by square, and finds the spot that covers least of it."""

    def __init__(self, taken: Iterable[Box]) -> None:
        self._squares: dict[tuple[int, int], list[int]] = defaultdict(list)
        self._boxes: list[Box] = []
        for box in taken:
            self.take(box)

    def take(self, box: Box) -> None:
        """Keep a spot free of what comes later."""
        for square in _squares(box):
            self._squares[square].append(len(self._boxes))
        self._boxes.append(box)

    def covered(self, spot: Box) -> float:
        """How much of what is taken a spot covers, in square points."""
        near = {number for square in _squares(spot) for number in self._squares.get(square, ())}
        return sum(_shared(spot, self._boxes[number]) for number in sorted(near))

    def best(self, spots: Sequence[Box], worth: Sequence[float] = ()) -> tuple[Box, float]:
        """The spot that covers least, the first of several, with what it covers; `worth` is added to each."""
        costs = [self.covered(spot) for spot in spots]
        if worth:
            costs = [cost + more for cost, more in zip(costs, worth, strict=True)]
        least = min(costs)
        return spots[costs.index(least)], least


def _squares(box: Box) -> Iterator[tuple[int, int]]:
    left, top, right, bottom = (int(edge // _SQUARE) for edge in box)
    for x in range(left, right + 1):
        for y in range(top, bottom + 1):
            yield x, y


def _shared(one: Box, other: Box) -> float:
    """The area that two boxes have in common."""
    wide = min(one[2], other[2]) - max(one[0], other[0])
    high = min(one[3], other[3]) - max(one[1], other[1])
    return wide * high if wide > 0.0 and high > 0.0 else 0.0


def taken(arrangement: Arrangement) -> Iterator[Box]:
    """All that words should not cover: symbols, their words, pipes, dots."""
    for placement in arrangement.placements:
        left, top, right, bottom = placement.outer_box
        yield left - 1.0, top - 1.0, right + 1.0, bottom + 1.0
        if placement.item.lines:
            left, top, right, bottom = placement.words_box
            yield left - 1.0, top - 1.0, right + 1.0, bottom + 1.0
    for _, a, b in arrangement.segments:
        yield (min(a[0], b[0]) - _PIPE, min(a[1], b[1]) - _PIPE, max(a[0], b[0]) + _PIPE, max(a[1], b[1]) + _PIPE)
    for joint in arrangement.junctions:
        for x, y in joint.dots:
            yield x - _DOT, y - _DOT, x + _DOT, y + _DOT
    for x, y in arrangement.forks:
        yield x - _DOT, y - _DOT, x + _DOT, y + _DOT


def joint_names(arrangement: Arrangement, occupancy: Occupancy) -> Iterator[tuple[str, Box]]:
    """Where the name of each joint stands; left out where it would cover anything."""
    for joint in arrangement.junctions:
        lines = joint.item.lines
        if not lines:
            continue
        gaps = (*_NEAR, *_FAR) if joint.item.is_named else _NEAR
        size = size_of(lines, joint_size(joint.item))
        box, covered = occupancy.best([spot for dot in joint.dots for spot in _round(dot, size, gaps)])
        if covered <= 0.0 or joint.item.is_named:
            occupancy.take(box)
            yield joint.item.name, box


def joint_size(item: Item) -> float:
    """Size of the name of a joint, in points."""
    return _JOINT_SIZE * item.letter_size / LABEL_SIZE


def _round(dot: Point, size: tuple[float, float], gaps: Sequence[float]) -> Iterator[Box]:
    """Spots round a dot, the nearest first."""
    x, y = dot
    wide, high = size
    for gap in gaps:
        for left, top in (
            (x + gap, y - gap - high),
            (x + gap, y + gap),
            (x - gap - wide, y - gap - high),
            (x - gap - wide, y + gap),
            (x - wide / 2, y - gap - 1.5 - high),
            (x - wide / 2, y + gap + 1.5),
        ):
            yield left, top, left + wide, top + high


def tag_spot(shading: Shading, boxes: Sequence[Box], occupancy: Occupancy) -> Box:
    """Where the tag of an area of boxes stands: at its edge, over as little as may be."""
    wide, high = size_of((shading.tag,), shading.letter_size, bold=True)
    wide, high = wide + 8.0, high + 4.0
    spots: list[Box] = []
    for left, top, right, bottom in sorted(boxes, key=lambda box: (box[1], box[0])):
        middle = (left + right - wide) / 2
        for x, y in (
            (left, top - high),
            (middle, top - high),
            (right - wide, top - high),
            (left, bottom),
            (middle, bottom),
        ):
            spots.append((x, y, x + wide, y + high))
    area = Occupancy(boxes)
    worth = [at * 0.05 + area.covered(spot) * _INSIDE for at, spot in enumerate(spots)]
    box, _ = occupancy.best(spots, worth)
    occupancy.take(box)
    return box
