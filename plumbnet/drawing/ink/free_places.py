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
        """The upper left corner of the topmost place of that size, the leftmost of several; None where there is none."""
        across, down = int(wide / _CELL) + 1, int(high / _CELL) + 1
        rows, columns = self._free.shape
        if down > rows or across > columns:
            return None
        sums = np.pad(np.cumsum(np.cumsum(self._free, 0), 1), ((1, 0), (1, 0)))
        inside = sums[down:, across:] - sums[:-down, across:] - sums[down:, :-across] + sums[:-down, :-across]
        spots = np.argwhere(inside == across * down)
        if not len(spots):
            return None
        row, column = spots[0]
        return self._left + float(column) * _CELL, self._top + float(row) * _CELL
