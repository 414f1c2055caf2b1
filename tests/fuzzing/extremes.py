"""A quantity to values at the edges of what its declaration allows, just beyond them, and far beyond anything."""

import math
from collections.abc import Iterator, Mapping
from random import Random
from typing import Final

from pydantic.fields import FieldInfo

from plumbnet.layout.model.base_model import Declared
from plumbnet.layout.model.validation_messages import declared_in
from plumbnet.layout.units.quantity import Quantity, quantity_of

BEYOND: Final = (
    *("1e-320", "-1e-320", "1e-310", "5e-324", "2.2e-308", "1e308", "-1e308", "1.8e308", "1e400", "-1e400", "1e-400"),
    *("-0.0", "-0", ".inf", "-.inf", "+.Inf", ".INF", "inf", "-inf", "Infinity", ".nan", "9" * 30, "1" + "0" * 308),
    *("-" + "9" * 40, "1" + "0" * 999, "1/3", "1" + "0" * 90 + "/7", "0x10"),
)
"""Numbers as nobody writes them; behind them stands a unit, or none."""
_SLIGHTLY = 1e-9


def at_edges(quantity: Quantity) -> tuple[float, ...]:
    """Values in SI that lie on a bound, or next to it on either side, or next to nothing."""
    finest = quantity.dimension.finest
    beside = [one for bound in (quantity.lowest, quantity.highest) for one in _beside(bound)]
    small = [sign * finest * share for sign in (1, -1) for share in (0.5, 1.0, 1.001, 10.0)]
    return (0.0, *beside, *small)


def _beside(bound: float) -> Iterator[float]:
    yield bound
    for sign in (1, -1):
        yield math.nextafter(bound, sign * math.inf)
        yield bound + sign * _SLIGHTLY * (abs(bound) or 1.0)


def allowed_edges(quantity: Quantity) -> tuple[float, ...]:
    """Those that can be read."""
    return tuple(value for value in at_edges(quantity) if _is_read(quantity, value))


def _is_read(quantity: Quantity, value: float) -> bool:
    try:
        quantity.read(value, None)
    except ValueError:
        return False
    return True


def drawn_extreme(random: Random, quantity: Quantity) -> float:
    """One of them, most of them such as can be read."""
    return random.choice(allowed_edges(quantity) if random.random() < 0.9 else at_edges(quantity))


def quantities_in(declared: type[Declared]) -> Mapping[str, Quantity]:
    """Every quantity that something declared holds, by its path, those of declarations inside it included."""
    return dict(_quantities(declared, ""))


def _quantities(declared: type[Declared], before: str) -> Iterator[tuple[str, Quantity]]:
    for name, info in declared.model_fields.items():
        path = f"{before}{info.alias or name}"
        found = quantity_of(info) or _in_a_list(info)
        if found is not None:
            yield path, found
        for inner in declared_in(info.annotation):
            yield from _quantities(inner, f"{path}.")


def _in_a_list(info: FieldInfo) -> Quantity | None:
    """The quantity of which a field holds several."""
    found: list[Quantity] = []
    left: list[object] = [info.annotation]
    while left:
        one = left.pop()
        found += [mark for mark in getattr(one, "__metadata__", ()) if isinstance(mark, Quantity)]
        left += [*getattr(one, "__args__", ())]
    return found[0] if found else None
