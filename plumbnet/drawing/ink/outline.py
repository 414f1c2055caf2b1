"""Boxes to the outline of the area they cover, small gaps closed and small holes filled, and to its hatch."""

from collections.abc import Iterator, Sequence
from itertools import pairwise

import contourpy
import numpy as np
from matplotlib.path import Path
from numpy.typing import NDArray

from plumbnet.drawing.palette import Hatch
from plumbnet.drawing.routing import Box

_CLOSE = 11
"""Half the widest gap that is closed, in points."""
_HOLE = 2600.0
"""Holes smaller than this are filled, in square points."""
_FINEST = 1.0
_STRAIGHT = 1e-9
_MOST_CELLS = 4_000_000
_SPACING = 7.0
"""Between two lines of a hatch."""
_SLOPES: dict[Hatch, tuple[int, ...]] = {"rising": (-1,), "falling": (1,), "crossed": (-1, 1), "level": (0,)}


def outline(boxes: Sequence[Box]) -> Path:
    """The outline of what the boxes cover, as one closed path with its holes; boxes must not be none.

    Drawn on a raster of a point, or coarser where that would take more than 4 million squares.
    """
    corners = np.array(boxes)
    margin = _CLOSE + 4.0
    origin = corners[:, :2].min(axis=0) - margin
    size = corners[:, 2:].max(axis=0) + margin - origin
    cell = max(_FINEST, float(np.sqrt(size[0] * size[1] / _MOST_CELLS)))
    wide, high = (size / cell).astype(int) + 2
    covered = np.zeros((high, wide), dtype=bool)
    for left, top, right, bottom in np.rint((corners - np.tile(origin, 2)) / cell).astype(int):
        covered[top : bottom + 1, left : right + 1] = True
    reach = max(1, round(_CLOSE / cell))
    closed = ~_grown(~_grown(covered, reach), reach) | covered
    vertices: list[tuple[float, float]] = []
    codes: list[np.uint8] = []
    for ring in _rings(closed, _HOLE / cell**2):
        points = ring * cell + origin
        vertices += [(float(x), float(y)) for x, y in points]
        codes += [Path.MOVETO, *[Path.LINETO] * (len(points) - 2), Path.CLOSEPOLY]
    return Path(vertices, codes)


def _grown(covered: NDArray[np.bool_], reach: int) -> NDArray[np.bool_]:
    """The area grown by `reach` squares to all sides, by running sums."""
    for axis in (0, 1):
        pad = [(reach + 1, reach) if number == axis else (0, 0) for number in (0, 1)]
        sums = np.cumsum(np.pad(covered.astype(np.int32), pad), axis=axis)
        count = covered.shape[axis]
        ends = np.take(sums, range(2 * reach + 1, 2 * reach + 1 + count), axis=axis)
        covered = ends - np.take(sums, range(count), axis=axis) > 0
    return covered


def _rings(covered: NDArray[np.bool_], least: float) -> Iterator[NDArray[np.float64]]:
    """Outer rings, and the rings of holes of at least so many squares, which go round the other way."""
    generator = contourpy.contour_generator(z=covered.astype(float), line_type=contourpy.LineType.Separate)
    rings = [ring for ring in generator.lines(0.5) if isinstance(ring, np.ndarray)]
    outward = max((_area(ring) for ring in rings), key=abs, default=0.0)
    for ring in rings:
        area = _area(ring)
        if area * outward > 0.0 or abs(area) >= least:
            yield _corners(ring)


def _corners(ring: NDArray[np.float64]) -> NDArray[np.float64]:
    """The points of a closed ring at which it changes its direction."""
    steps = np.diff(ring, axis=0)
    before = np.roll(steps, 1, axis=0)
    turns = np.abs(steps[:, 0] * before[:, 1] - steps[:, 1] * before[:, 0]) > _STRAIGHT
    kept: NDArray[np.float64] = ring[:-1][turns]
    return np.vstack([kept, kept[:1]])


def _area(ring: NDArray[np.float64]) -> float:
    """Area of a ring, its sign by the way it goes round."""
    x, y = ring[:, 0], ring[:, 1]
    return float(np.dot(x[:-1], y[1:]) - np.dot(x[1:], y[:-1])) / 2


def hatching(box: Box, hatch: Hatch) -> Path:
    """Lines over a box, to be clipped by an outline; none where the hatch has no lines."""
    left, top, right, bottom = box
    vertices: list[tuple[float, float]] = []
    for slope in _SLOPES.get(hatch, ()):
        rise = slope * (right - left)
        low = top - max(0.0, rise)
        for number in range(int((bottom - low + abs(rise)) / _SPACING) + 2):
            y = low + number * _SPACING - (low % _SPACING)
            vertices += [(left, y), (right, y + rise)]
    codes = [Path.MOVETO, Path.LINETO] * (len(vertices) // 2)
    return Path(np.array(vertices).reshape(-1, 2), codes)


def edges(path: Path) -> Iterator[Box]:
    """Thin boxes along an outline, for what should not be written across it."""
    for ring in path.to_polygons(closed_only=False):
        for (x1, y1), (x2, y2) in pairwise(np.asarray(ring, dtype=float).tolist()):
            yield min(x1, x2) - 1.0, min(y1, y2) - 1.0, max(x1, x2) + 1.0, max(y1, y2) + 1.0
