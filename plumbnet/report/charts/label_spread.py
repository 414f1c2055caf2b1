"""Labels that would like to stand somewhere along a line, set so that none lies over another."""

from collections.abc import Sequence

import numpy as np
from scipy.optimize import isotonic_regression


def spread_labels(wanted: Sequence[float], sizes: Sequence[float], *, low: float, high: float) -> list[float]:
    """Middles of labels of those sizes between `low` and `high`, as near to where they are wanted as there is room.

    Their order is kept; of two wanted in one place the first given stands lower. Where all of them together are
    longer than the line, they begin at `low` and pass `high`. Source: least squares under an order (isotonic
    regression), own derivation.

    >>> spread_labels([1.0, 1.0], [2.0, 2.0], low=-10.0, high=10.0)
    [0.0, 2.0]
    """
    if not wanted:
        return []
    order = sorted(range(len(wanted)), key=lambda index: (wanted[index], index))
    lengths = np.array([sizes[index] for index in order])
    below = np.concatenate([[0.0], np.cumsum(lengths)[:-1]]) + lengths / 2.0
    free = np.asarray(isotonic_regression(np.array([wanted[index] for index in order]) - below).x)
    middles = np.clip(free, low, max(low, high - float(lengths.sum()))) + below
    placed = dict(zip(order, middles.tolist(), strict=True))
    return [placed[index] for index in range(len(wanted))]
