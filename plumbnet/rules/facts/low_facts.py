"""Places that water must come to, and the least pressure there."""

from dataclasses import dataclass
from enum import StrEnum

from plumbnet.network.pressure import Feed
from plumbnet.rules.facts.limit_facts import ROUNDING_PA


class Use(StrEnum):
    """What water must come to a place for."""

    TAP = "tap"
    EMITTER = "emitter"
    HEATER = "heater"


@dataclass(frozen=True, slots=True)
class LowFacts:
    """A place that water must come to, and the least pressure that stands there, gauge at its height.

    Of a tap or an emitter `at` is itself; of a heater it is the highest place of what it warms. `static_pa` stands
    there with every supply at its highest. `is_driven` says that a pump drives its water round, `is_vented` that it
    stands open to the air. Plain water there comes to `hot_k`, stays liquid `vapour_pa` above the air, and boils at
    `boils_k` under the least pressure (None: no plain water is heated, or it stands under none).
    """

    name: str
    use: Use
    at: str
    elevation_m: float
    static_pa: float
    least_pa: float
    feed: Feed | None
    is_driven: bool = False
    is_vented: bool = False
    hot_k: float | None = None
    vapour_pa: float = 0.0
    boils_k: float | None = None

    @property
    def parts(self) -> tuple[str, ...]:
        """The place itself, and the part whose place it is where that is another."""
        return tuple(dict.fromkeys((self.at, self.name)))

    @property
    def is_dry(self) -> bool:
        """Whether water does not come so high, or no higher."""
        return self.least_pa < ROUNDING_PA

    @property
    def at_lowest(self) -> bool:
        """Whether its least pressure is that of a supply at its lowest, and higher otherwise."""
        return self.least_pa < self.static_pa - ROUNDING_PA
