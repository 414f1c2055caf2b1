"""What else a part may be, and of that what may happen to it by itself, as its kind declares both."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from typing import Literal


class Sort(StrEnum):
    """Of what sort an alternative is: turned by a hand, another device fitted, a number altered, or a fault."""

    TURNED = "turned"
    OTHER_DEVICE = "other device"
    NUMBER = "number"
    FAULT = "fault"


@dataclass(frozen=True, slots=True)
class Extremes:
    """How far things may climb.

    `limit_pa` is the highest pressure where people draw water, `relief_k` the highest temperature at which a safety
    relief valve may open.
    """

    limit_pa: float
    relief_k: float


@dataclass(frozen=True, slots=True)
class Alternative:
    """What else a part may be, and the change that makes it so; a fault is never a cure.

    `words` follow the part's name, as in "stop: shut"; of a number they are its name, as in "street: pressure".
    `values` are those of the change, beside the part: fields by their names in code, in SI, None for what holds where
    nothing is said; of a failure its name as `how`; of a number the field with what it is now.
    """

    words: str
    action: Literal["close", "open", "fail", "set", "draw"]
    values: Mapping[str, object] = field(default_factory=dict)
    sort: Sort = Sort.FAULT


@dataclass(frozen=True, slots=True)
class Event(Alternative):
    """A single credible event: an alternative that comes about by itself, or by somebody who thinks nothing of it."""
