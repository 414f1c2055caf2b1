"""Groups of valves for the cold inlet of a water heater, written as one part, which opens into its valves."""

from typing import Annotated, ClassVar

from plumbnet.layout.model.inside import Inner, Inside
from plumbnet.layout.model.kinds.control import SetPressure
from plumbnet.layout.model.part import IN, OUT, Part, kind
from plumbnet.layout.units import PRESSURE, Power, Quantity


@kind("safety_group")
class SafetyGroup(Part):
    """A hydraulic safety group (EN 1487) for the cold inlet of a storage heater: valve, check and relief valve in one.

    It opens into the parts `valve`, `check`, `branch` and `relief`, which a change or a message names as `group/valve`.
    The relief valve is the heater's safety valve for pressure and lets its growth off to the drain at each heat-up, as
    it is made to. It controls no temperature: the heater's energy cut-out does.
    """

    opens_into: ClassVar[Inside] = Inside(
        parts={
            "valve": Inner("valve"),
            "check": Inner("check_valve"),
            "branch": Inner("tee"),
            "relief": Inner(
                "relief_valve", takes={"pressure": "set", "capacity": "capacity"}, always={"lets_off_growth": True}
            ),
        },
        runs=("valve -> check -> branch -> relief",),
        ports={IN: "valve.in", OUT: "branch"},
    )

    set_pa: SetPressure
    """Pressure at which its relief valve opens."""
    capacity_w: Power | None = None
    """Heat its relief valve can carry off as rated by its maker."""


@kind("inlet_group")
class InletGroup(Part):
    """A cold inlet group for an unvented cylinder (British practice): strainer, reducer, check, expansion valve in one.

    It opens into the parts `strainer`, `reducer`, `take-off`, `check`, `branch` and `expansion-relief`, which a change
    or a message names as `group/reducer`. At the port `cold`, between reducer and check, cold water of the same
    pressure is taken off for the taps; at `vessel`, behind the check, an expansion vessel may hang. The expansion valve
    (EN 1491) stands behind the vessel for the day that this or the reducer fails.
    """

    ports: ClassVar[tuple[str, ...]] = (IN, OUT, "cold", "vessel")
    opens_into: ClassVar[Inside] = Inside(
        parts={
            "strainer": Inner("filter"),
            "reducer": Inner("pressure_reducer", takes={"set": "set"}),
            "take-off": Inner("tee"),
            "check": Inner("check_valve"),
            "branch": Inner("tee"),
            "expansion-relief": Inner("expansion_relief", takes={"pressure": "expansion_relief"}),
        },
        runs=("strainer -> reducer -> take-off -> check -> branch -> expansion-relief",),
        ports={IN: "strainer.in", OUT: "branch", "cold": "take-off", "vessel": "branch"},
    )

    set_pa: Annotated[float, Quantity(PRESSURE, above=0.0, usual=(200e3, 350e3))]
    """Outlet pressure its reducer is set to."""
    expansion_relief_pa: Annotated[float, Quantity(PRESSURE, above=0.0, usual=(450e3, 650e3))]
    """Pressure at which its expansion valve opens."""
