"""A function and two values in, where between them it passes zero out."""

from collections.abc import Callable
from importlib import import_module


def root(excess: Callable[[float], float], low: float, high: float, **close: float) -> float:
    """Where a function is zero, to what `close` says, which is the library's `xtol` or `rtol`.

    Raises ValueError where it has the same sign at both values. The library is loaded at the first call: that takes
    longer than the check of a house, which asks for none. Source: Brent's method, scipy.optimize.brentq.

    >>> round(root(lambda x: x * x - 2.0, 0.0, 2.0, xtol=1e-9), 6)
    1.414214
    """
    return float(import_module("scipy.optimize").brentq(excess, low, high, **close))
