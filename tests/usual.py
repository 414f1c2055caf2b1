"""A part of any kind with nothing but the fields it requires."""

from typing import get_args

from pydantic.fields import FieldInfo

from plumbnet.layout.model.build import make_part
from plumbnet.layout.model.part import KINDS, Part
from plumbnet.layout.units.quantity import quantity_of

ENOUGH: dict[str, object] = {
    "volume": "5 gal",
    "setpoint": "140 degF",
    "pressure": "60 psi",
    "precharge": "60 psi",
    "set": "50 psi",
    "rise": "40 psi",
    "fill": "12 psi",
    "cut_in": "30 psi",
    "cut_out": "50 psi",
    "ports": ["in", "out"],
    "passages": [{"free": ["in", "out"]}],
}
"""Values for fields that kinds require, where more is wanted of them than that they can be read."""


def field_names(kind: str) -> list[str]:
    """Names of the fields of a kind, as the file writes them."""
    return [field.alias or name for name, field in KINDS[kind].model_fields.items()]


def required(kind: str) -> dict[str, object]:
    """The fields a kind requires, with values."""
    fields = KINDS[kind].model_fields.items()
    return {field.alias or name: _enough(field.alias or name, field) for name, field in fields if field.is_required()}


def _enough(name: str, field: FieldInfo) -> object:
    """A value for a required field: for one that nobody foresaw, an example of its dimension or its first choice."""
    quantity = quantity_of(field)
    if name in ENOUGH:
        return ENOUGH[name]
    if quantity is not None:
        return quantity.dimension.examples[0]
    return field.examples[0] if field.examples else (*get_args(field.annotation), False)[0]


def usual(kind: str, **more: object) -> Part:
    """A part with what its kind requires and with more, as the file writes it."""
    return make_part(kind, {**required(kind), **more}, "us")
