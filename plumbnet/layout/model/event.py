"""What may happen to a part by itself, as its kind declares it."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal


@dataclass(frozen=True, slots=True)
class Extremes:
    """How far things may climb.

    `limit_pa` is the highest pressure where people draw water, `relief_k` the highest temperature at which a safety
    relief valve may open.
    """

    limit_pa: float
    relief_k: float


@dataclass(frozen=True, slots=True)
class Event:
    """A single credible event, and the change that makes it.

    `words` follow the part's name, as in "stop: shut". `values` are those of the change, beside the part: fields by
    their names in code, in SI, None for what holds where nothing is said; of a failure its name as `how`.
    """

    words: str
    action: Literal["close", "open", "fail", "set"]
    values: Mapping[str, object] = field(default_factory=dict)
