"""Words that look for a free spot: names of joints and the tags of zones."""

from collections.abc import Iterable, Iterator, Sequence

import numpy as np
from numpy.typing import NDArray

from plumbnet.report.drawing.lettering import extent
from plumbnet.report.drawing.places import Box, Placed
from plumbnet.report.drawing.symbol import Point

JOINT_SIZE = 6.0
"""Size of a joint's name, in points: it stands back behind the names of devices."""
TAG_SIZE = 7.0
_PIPE = 1.5
"""Half the width that words keep free of a pipe."""
_DOT = 3.0
_GAP = 1.2
_INSIDE = 0.3
"""What a tag pays for a square point of the area that it marks."""


class Free:
    """Remembers what is taken and finds the spot that covers least of it."""

    def __init__(self, taken: Iterable[Box]) -> None:
        self._boxes = list(taken)
        self._taken: NDArray[np.float64] | None = None

    def covered(self, spots: Sequence[Box]) -> NDArray[np.float64]:
        """How much of what is taken each spot covers, in square points."""
        if self._taken is None:
            self._taken = np.array(self._boxes or [(0.0, 0.0, 0.0, 0.0)])
        at = np.array(spots)[:, None, :]
        wide = np.minimum(at[..., 2], self._taken[:, 2]) - np.maximum(at[..., 0], self._taken[:, 0])
        high = np.minimum(at[..., 3], self._taken[:, 3]) - np.maximum(at[..., 1], self._taken[:, 1])
        areas: NDArray[np.float64] = (np.clip(wide, 0.0, None) * np.clip(high, 0.0, None)).sum(axis=1)
        return areas

    def best(self, spots: Sequence[Box], worth: Sequence[float] = ()) -> tuple[Box, float]:
        """The spot that covers least, the first of several, with what it covers; `worth` is added to each."""
        covered = self.covered(spots) + (np.array(worth) if worth else 0.0)
        at = int(np.argmin(covered))
        return spots[at], float(covered[at])

    def take(self, box: Box) -> None:
        """Keep a spot free of what comes later."""
        self._boxes.append(box)
        self._taken = None


def taken(placed: Placed) -> Iterator[Box]:
    """All that words should not cover: symbols, their words, pipes, dots."""
    for body in placed.bodies:
        left, top, right, bottom = body.outer_box
        yield left - 1.0, top - 1.0, right + 1.0, bottom + 1.0
        if body.item.words:
            left, top, right, bottom = body.words_box
            yield left - 1.0, top - 1.0, right + 1.0, bottom + 1.0
    for _, a, b in placed.segments:
        yield (
            min(a[0], b[0]) - _PIPE,
            min(a[1], b[1]) - _PIPE,
            max(a[0], b[0]) + _PIPE,
            max(a[1], b[1]) + _PIPE,
        )
    for joint in placed.joints:
        for x, y in joint.dots:
            yield x - _DOT, y - _DOT, x + _DOT, y + _DOT
    for x, y in placed.forks:
        yield x - _DOT, y - _DOT, x + _DOT, y + _DOT


def joint_names(placed: Placed, free: Free) -> Iterator[tuple[str, Box]]:
    """Where the name of each joint stands; left out where it would cover anything."""
    for joint in placed.joints:
        lines = joint.item.lines
        if not lines:
            continue
        spots = [spot for dot in joint.dots for spot in _round(dot, extent(lines, JOINT_SIZE))]
        box, covered = free.best(spots)
        if covered <= 0.0:
            free.take(box)
            yield joint.item.name, box


def _round(dot: Point, size: tuple[float, float]) -> Iterator[Box]:
    """Spots round a dot, the nearest first."""
    x, y = dot
    wide, high = size
    for gap in (2.5, 6.0):
        for left, top in (
            (x + gap, y - gap - high),
            (x + gap, y + gap),
            (x - gap - wide, y - gap - high),
            (x - gap - wide, y + gap),
            (x - wide / 2, y - gap - 1.5 - high),
            (x - wide / 2, y + gap + 1.5),
        ):
            yield left, top, left + wide, top + high


def tag_spot(words: str, boxes: Sequence[Box], free: Free) -> Box:
    """Where the tag of an area of boxes stands: at its edge, over as little as may be."""
    wide, high = extent((words,), TAG_SIZE, bold=True)
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
    inside = Free(boxes).covered(spots)
    worth = [at * 0.05 + float(covered) * _INSIDE for at, covered in enumerate(inside)]
    box, _ = free.best(spots, worth)
    free.take(box)
    return box
