"""What is taken on a sheet to free places on it: rectangles that cover nothing, the topmost first."""

from collections.abc import Iterable

import numpy as np
from numpy.typing import NDArray

from plumbnet.drawing.routing import Box
from plumbnet.drawing.symbols import Point

_CELL = 6.0
_CLEAR = 12.0


class FreePlaces:
    """A sheet in squares of 6 points; 12 points round everything are kept free."""

    def __init__(self, sheet: Box, taken: Iterable[Box]) -> None:
        self._left, self._top, right, foot = sheet
        shape = (max(1, int((foot - self._top) / _CELL)), max(1, int((right - self._left) / _CELL)))
        self._free: NDArray[np.bool_] = np.ones(shape, dtype=bool)
        for box in taken:
            self.take(box)

    def take(self, box: Box) -> None:
        """Keep a box, and what is close to it, free of what comes later."""
        left, top = (box[0] - _CLEAR - self._left) / _CELL, (box[1] - _CLEAR - self._top) / _CELL
        right, foot = (box[2] + _CLEAR - self._left) / _CELL, (box[3] + _CLEAR - self._top) / _CELL
        rows, columns = slice(max(0, int(top)), max(0, int(foot) + 1)), slice(max(0, int(left)), max(0, int(right) + 1))
        self._free[rows, columns] = False

    def first(self, wide: float, high: float) -> Point | None:
        """The upper left corner of the topmost place of that size, the leftmost of several; None where none is."""
        spots = self._spots(wide, high)
        return self._at(spots[0]) if len(spots) else None

    def least_beyond(self, wide: float, high: float, edge: float) -> Point | None:
        """The same of the place that reaches least beyond an edge at the right; of several the lowest, rightmost."""
        spots = self._spots(wide, high)
        if not len(spots):
            return None
        beyond = np.maximum(0.0, self._left + spots[:, 1] * _CELL + wide - edge)
        return self._at(spots[np.flatnonzero(beyond == beyond.min())[-1]])

    def _at(self, spot: NDArray[np.intp]) -> Point:
        return self._left + float(spot[1]) * _CELL, self._top + float(spot[0]) * _CELL

    def _spots(self, wide: float, high: float) -> NDArray[np.intp]:
        """Row and column of every place of that size, row by row."""
        across, down = int(wide / _CELL) + 1, int(high / _CELL) + 1
        rows, columns = self._free.shape
        if down > rows or across > columns:
            return np.zeros((0, 2), dtype=np.intp)
        sums = np.pad(np.cumsum(np.cumsum(self._free, 0), 1), ((1, 0), (1, 0)))
        inside = sums[down:, across:] - sums[:-down, across:] - sums[down:, :-across] + sums[:-down, :-across]
        return np.argwhere(inside == across * down)
