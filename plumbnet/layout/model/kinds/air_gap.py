"""An air gap: the supply ends above a funnel or a break tank, and nothing passes back."""

from collections.abc import Iterator
from typing import ClassVar

from plumbnet.layout.model.backflow_protection import BackflowProtection
from plumbnet.layout.model.kinds.supplies import COLD_SUPPLY_K, Cold
from plumbnet.layout.model.part import OUT, Outlet, Part, Passage, Role, Source, kind


@kind("air_gap")
class AirGap(Part):
    """An air gap (EN 1717 type AA): the supply ends in open air above a break tank or funnel, by a tap or float valve.

    No pressure passes it, forward or back: the supply's valve is shut while nothing is filled, so that what comes in at
    `in` finds no way out here, and what hangs on `out` stands at the open surface, whose height is the elevation of the
    part, and can push water up into it. A pump behind it lifts what pressure is needed.
    """

    symbol: ClassVar[str] = "air_gap"
    shared: ClassVar[frozenset[str]] = frozenset({OUT})
    protects: ClassVar[BackflowProtection] = BackflowProtection.AIR_GAP
    assumed: ClassVar = {"temperature": "holds water at 10 °C (50 °F)"}

    temperature_k: Cold = COLD_SUPPLY_K
    """Temperature of the water below the gap."""

    def passages(self) -> Iterator[Passage]:
        """None: water falls through air."""
        yield from ()

    def source(self) -> Source:
        """Water at the pressure of the air, at the height of the surface."""
        return Source(OUT, 0.0, 0.0, self.temperature_k)

    def outlets(self) -> Iterator[Outlet]:
        """Water rises to the surface below the gap and spills there."""
        yield Outlet(OUT, Role.AIR, 0.0)
