"""The least value at which something holds, found by halving."""

from collections.abc import Callable

CLOSE = 1e-6
"""Share of it to which the value is sought."""


def least(holds: Callable[[float], bool], guess: float, *, floor: float) -> float:
    """The smallest value that holds, to a millionth, where some does and all above it do; not below the floor.

    >>> round(least(lambda x: x * x >= 2.0, 1.0, floor=1e-3), 5)
    1.41421
    """
    high = max(guess, floor)
    while not holds(high):
        high *= 2.0
    low = max(high / 2.0, floor)
    while holds(low):
        if low <= floor:
            return floor
        high, low = low, max(low / 2.0, floor)
    while high - low > CLOSE * high:
        middle = (low + high) / 2.0
        low, high = (low, middle) if holds(middle) else (middle, high)
    return high
