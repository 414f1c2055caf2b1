"""The least value at which something holds, found by halving."""

from collections.abc import Callable

CLOSE = 1e-6
"""Share of it to which the value is sought."""


def least(holds: Callable[[float], bool], guess: float, *, floor: float) -> float:
    """The smallest value that holds, to a millionth, where some does and all above it do; not below the floor.

    >>> round(least(lambda x: x * x >= 2.0, 1.0, floor=1e-3), 5)
    1.41421
    """
    high = guess
    while not holds(high):
        high *= 2.0
    low = high / 2.0
    while low > floor and holds(low):
        high, low = low, low / 2.0
    while high - low > CLOSE * high:
        middle = (low + high) / 2.0
        low, high = (low, middle) if holds(middle) else (middle, high)
    return high
