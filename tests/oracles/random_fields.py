"""Values for the fields of any kind of part, drawn from what its class declares of them."""

from typing import Final, Literal, get_args, get_origin

from fuzzing.fields import USUAL
from hypothesis import strategies as st
from pydantic import ValidationError
from pydantic.fields import FieldInfo

from plumbnet.layout.model.base_model import Declared
from plumbnet.layout.model.kinds.heat import Heater
from plumbnet.layout.model.part import KINDS, Part
from plumbnet.layout.model.validation_messages import declared_in
from plumbnet.layout.units.measure import to
from plumbnet.layout.units.quantity import Quantity, quantity_of

Values = dict[str, object]
Strategy = st.SearchStrategy[object]

SAID: Final = st.sampled_from([False, False, True])
"""Whether a field is written that may be left out: one in three, since devices are mostly what they usually are."""
STEPS: Final = 4
"""Into so many a usual range is cut: with few values between, many parts lie exactly alike, which makes hard cases."""
DRAWN_ELSEWHERE: Final = {
    *Part.model_fields,  # heights by `layouts`, ratings by the families of buildings
    "antifreeze",  # by the families of buildings, in measure: another library answers for it
    "sizing",  # likewise: each method has its own formula
    "outlet_k",  # of mixing valves: by the tests of tempered water, which the slow answers do not know
    "lets_off_growth",  # by the safety group, whose relief valve it is said of
}
PASSAGES: Final = [
    [{"free": ["a", "b"]}, {"one_way": ["b", "c"], "opens": 30}],
    [{"one_way": ["a", "b"]}, {"one_way": ["a", "c"]}],
    [{"reducing": ["a", "b"], "set": 300, "bypass": True}, {"free": ["b", "c"]}],
    [{"shut": ["a", "b"]}, {"free": ["a", "c"]}],
]
WRITTEN_OUT: Final[dict[str, Strategy]] = {"ports": st.just(["a", "b", "c"]), "passages": st.sampled_from(PASSAGES)}
"""What no declaration tells, since its author makes the part with it."""


@st.composite
def values_of(draw: st.DrawFn, declared: type[Declared]) -> Values:
    """What a file may write for something declared, in metric units."""
    values: Values = {}
    for name, info in declared.model_fields.items():
        if not is_drawn_elsewhere(declared, name) and (info.is_required() or draw(SAID)):
            alias = info.alias or name
            values[alias] = draw(WRITTEN_OUT[alias] if alias in WRITTEN_OUT else _field(info))
    return values


def is_drawn_elsewhere(declared: type[Declared], name: str) -> bool:
    """Whether a field has tests of its own; so has a heater out of service, which leaves nothing to ask of."""
    return name in DRAWN_ELSEWHERE or (name == "state" and issubclass(declared, Heater))


def fields(kind: str) -> st.SearchStrategy[Values]:
    """The fields of a part of a kind, so that it takes them all together."""
    declared = KINDS[kind]
    return values_of(declared).filter(lambda values: _allows(declared, values))


def choices(quantity: Quantity) -> list[float]:
    """Values of a quantity in metric units: evenly over what is usual, or for its dimension, within its bounds."""
    dimension = quantity.dimension
    low, high = quantity.usual or USUAL.get(dimension, (0.0, 100.0))
    steps = (low + (high - low) * step / STEPS for step in range(STEPS + 1))
    return [round(to(value, dimension.metric, dimension), 6) for value in steps if _is_within(value, quantity)]


def _is_within(value: float, quantity: Quantity) -> bool:
    above = quantity.above is None or value > quantity.above
    return above and (quantity.at_least or value) <= value <= (quantity.at_most or value)


def _field(info: FieldInfo) -> Strategy:
    quantity = quantity_of(info)
    if quantity is not None:
        return st.sampled_from(choices(quantity))
    if info.annotation in {bool, bool | None}:
        return st.booleans()
    if get_origin(info.annotation) is Literal:
        return st.sampled_from(get_args(info.annotation))
    inner = next(declared_in(info.annotation), None)
    if inner is None:
        raise TypeError(f"say in WRITTEN_OUT what stands in a field of {info.annotation}")
    return values_of(inner)


def _allows(declared: type[Declared], values: Values) -> bool:
    try:
        declared.model_validate(values, context={"units": "metric"})
    except ValidationError:
        return False
    return True
