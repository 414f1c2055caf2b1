"""A value as written to the one that each instance gets: the same for all, one of a list, or counted on by steps."""

from dataclasses import dataclass
from functools import lru_cache
from typing import get_origin

from pydantic.fields import FieldInfo

from plumbnet.layout.assemblies.wrong import Wrong, meant
from plumbnet.layout.model import KINDS, Declared, Path, declared_in, types_of
from plumbnet.layout.units import LENGTH, VOLUME, Dimension, QuantityError, Units, quantity_of, stepped
from plumbnet.layout.yaml import Plain

_FIRST, _STEP = "first", "step"


@dataclass(frozen=True, slots=True)
class Sharing:
    """What a value is for: words for a message, its quantity, the fields inside it, whether it is a list by nature."""

    what: str
    dimension: Dimension | None = None
    inside: type[Declared] | None = None
    is_list: bool = False

    def inner(self, field: str) -> "Sharing":
        """The same of a field inside."""
        return _of_model(self.inside, field, f"{self.what} {field}")


OF_RUN = {"length": Sharing("length", LENGTH), "volume": Sharing("volume", VOLUME)}
"""What of a run is a quantity."""
ELEVATION = Sharing("elevation", LENGTH)


def taking_of(kind: str, field: str) -> Sharing:
    """What a field of a kind is for; nothing is known of one that the kind does not have. All have an elevation."""
    return ELEVATION if field == "elevation" else _of_model(KINDS.get(kind), field, field)


@lru_cache(maxsize=4096)
def _of_model(model: type[Declared] | None, field: str, what: str) -> Sharing:
    fields = {} if model is None else model.model_fields
    info = next((info for name, info in fields.items() if (info.alias or name) == field), None)
    if info is None:
        return Sharing(what)
    quantity = quantity_of(info)
    inside = next(declared_in(info.annotation), None)
    return Sharing(what, None if quantity is None else quantity.dimension, inside, _is_list(info))


def _is_list(info: FieldInfo) -> bool:
    return any(get_origin(choice) in {tuple, list} for choice in types_of(info.annotation))


def differs(value: Plain, taking: Sharing) -> bool:
    """Whether a value is not the same for all."""
    if isinstance(value, list):
        return not taking.is_list
    if isinstance(value, dict):
        return _steps(value) or any(differs(own, taking.inner(key)) for key, own in value.items())
    return False


def _steps(value: dict[str, Plain]) -> bool:
    return _FIRST in value or _STEP in value


def refuse_uneven(value: Plain, count: int | None, taking: Sharing, units: Units) -> None:
    """Raises Wrong where a value cannot be shared out to so many; None is one part without a number."""
    if isinstance(value, list) and not taking.is_list:
        has = f"{taking.what} has {len(value)} value{'s' if len(value) != 1 else ''}"
        if count is None:
            raise Wrong(f"{has}, but there is only one part to take them")
        if len(value) != count:
            raise Wrong(f"{has} for {count} instances; give one to each")
    elif isinstance(value, dict) and _steps(value):
        _refuse_bad_step(value, count, taking, units)
    elif isinstance(value, dict):
        for key, own in value.items():
            try:
                refuse_uneven(own, count, taking.inner(key), units)
            except Wrong as wrong:
                raise Wrong(wrong.text, (key, *wrong.path)) from None


def _refuse_bad_step(value: dict[str, Plain], count: int | None, taking: Sharing, units: Units) -> None:
    what = taking.what
    odd = next((key for key in value if key not in {_FIRST, _STEP}), None)
    if odd is not None:
        raise Wrong(f"{what} counts on by first and step, and {odd} is neither{meant(odd, (_FIRST, _STEP))}", (odd,))
    if len(value) != len((_FIRST, _STEP)):
        raise Wrong(f"{what} needs both first and step")
    if count is None:
        raise Wrong(f"{what} steps, but there is only one; write one value")
    if taking.dimension is None:
        raise Wrong(f"{what} is no quantity that could step; write a list, with one for each")
    for key, tried in ((_FIRST, (value[_FIRST], 0)), (_STEP, (0, value[_STEP]))):
        try:
            stepped(*_as_written(tried), 1, taking.dimension, units)
        except QuantityError as error:
            raise Wrong(f"{what}: {error}", (key,)) from None


def _as_written(pair: tuple[Plain, Plain]) -> tuple[str | float, str | float]:
    """Two values as quantities. Raises QuantityError for what is no text and no number."""
    for value in pair:
        if isinstance(value, bool) or not isinstance(value, str | int | float):
            raise QuantityError("a quantity is wanted here, with its unit")
    return pair  # type: ignore[return-value]  # just looked at


def one_of(value: Plain, k: int, taking: Sharing, units: Units) -> tuple[Plain, Path]:
    """What the instance at place `k` gets, and where in the value that stands."""
    if isinstance(value, list) and not taking.is_list:
        return value[k], (k,)
    if isinstance(value, dict) and _steps(value) and taking.dimension is not None:
        first, step = _as_written((value[_FIRST], value[_STEP]))
        return stepped(first, step, k, taking.dimension, units), (_FIRST,)
    if isinstance(value, dict):
        return {key: one_of(own, k, taking.inner(key), units)[0] for key, own in value.items()}, ()
    return value, ()
