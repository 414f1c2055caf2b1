"""Check valves and backflow preventers: forward, and never back."""

from collections.abc import Iterator
from typing import Annotated, ClassVar, Literal

from plumbnet.layout.model.backflow_protection import BackflowProtection
from plumbnet.layout.model.part import IN, OUT, Free, OneWay, Part, Passage, kind
from plumbnet.layout.units import standing_pressure

CrackingPressure = Annotated[float, standing_pressure(3e3, 83e3)]


class Backflow(Part):
    """What all check valves and backflow preventers have in common: forward, and never back."""

    is_check: ClassVar[bool] = True
    failures: ClassVar = {"stuck_open": {"state": "stuck_open"}}

    opens_pa: CrackingPressure = 0.0
    """Pressure difference that opens it; 0 when left out."""
    state: Literal["sound", "stuck_open"] = "sound"
    """A check that is stuck open lets water pass both ways."""

    def passages(self) -> Iterator[Passage]:
        """One way, or both ways where it has failed open."""
        yield Free(IN, OUT) if self.state == "stuck_open" else OneWay(IN, OUT, self.opens_pa)


@kind("check_valve")
class CheckValve(Backflow):
    """A check (non-return) valve: water passes from inlet to outlet and never back."""

    symbol: ClassVar[str] = "check_valve"
    protects: ClassVar[BackflowProtection] = BackflowProtection.SINGLE_CHECK


@kind("dual_check")
class DualCheck(Backflow):
    """Two independent checks in one body (ASSE 1024), usual behind a residential meter: never back."""

    symbol: ClassVar[str] = "dual_check"
    protects: ClassVar[BackflowProtection] = BackflowProtection.DUAL_CHECK


@kind("double_check")
class DoubleCheck(Backflow):
    """A double check valve assembly (ASSE 1015): two tight checks with test cocks, no vent: never back."""

    symbol: ClassVar[str] = "double_check"
    protects: ClassVar[BackflowProtection] = BackflowProtection.DOUBLE_CHECK


@kind("reduced_pressure_assembly")
class ReducedPressureAssembly(Backflow):
    """A reduced-pressure backflow preventer (ASSE 1013): two checks with a relief port between them.

    With tight checks the relief port stays shut under backpressure, so it is no outlet for expansion.
    """

    symbol: ClassVar[str] = "reduced_pressure_assembly"
    protects: ClassVar[BackflowProtection] = BackflowProtection.REDUCED_PRESSURE


@kind("vented_dual_check")
class VentedDualCheck(Backflow):
    """Two checks with a vent to the air between them (ASSE 1012, CSA B64.3; EN 14367 CA), usual in a boiler's fill.

    The vent drips where a check leaks or the supply falls. With tight checks it stays shut under backpressure, so it is
    no outlet for expansion.
    """

    symbol: ClassVar[str] = "vented_dual_check"
    protects: ClassVar[BackflowProtection] = BackflowProtection.VENTED_DUAL_CHECK


@kind("vacuum_breaker")
class VacuumBreaker(Backflow):
    """A pressure vacuum breaker (ASSE 1020): a check with an air inlet against back-siphonage.

    The air inlet opens when the supply falls; it never relieves overpressure.
    """

    symbol: ClassVar[str] = "vacuum_breaker"
    protects: ClassVar[BackflowProtection] = BackflowProtection.VACUUM_BREAKER
