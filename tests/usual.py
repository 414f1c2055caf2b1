"""A part of any kind with nothing but the fields it requires."""

from plumbnet.layout.build import make_part
from plumbnet.layout.part import KINDS, Part

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
"""A value for every field that some kind requires."""


def field_names(kind: str) -> list[str]:
    """Names of the fields of a kind, as the file writes them."""
    return [field.alias or name for name, field in KINDS[kind].model_fields.items()]


def required(kind: str) -> dict[str, object]:
    """The fields a kind requires, with values."""
    fields = KINDS[kind].model_fields.items()
    return {key: ENOUGH[key] for key in (field.alias or name for name, field in fields if field.is_required())}


def usual(kind: str, **more: object) -> Part:
    """A part with what its kind requires and with more, as the file writes it."""
    return make_part(kind, {**required(kind), **more}, "us")
