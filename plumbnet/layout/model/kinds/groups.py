"""Groups written as one part that opens into several: valves for the cold inlet of a heater, tees of a primary."""

from typing import Annotated, ClassVar

from plumbnet.layout.model.inside import Inner, Inside
from plumbnet.layout.model.kinds.control import SetPressure
from plumbnet.layout.model.part import IN, OUT, RETURN, SUPPLY, Part, kind
from plumbnet.layout.units import Power, set_pressure


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

    set_pa: Annotated[float, set_pressure(200e3, 350e3)]
    """Outlet pressure its reducer is set to."""
    expansion_relief_pa: Annotated[float, set_pressure(450e3, 650e3)]
    """Pressure at which its expansion valve opens."""


@kind("closely_spaced_tees")
class CloselySpacedTees(Part):
    """Two tees close together in a primary circuit, from which a secondary circuit is fed: each pump drives its own.

    It opens into the tees `take-off` and `return` with the short pipe between them, by which the primary flows from
    `in` to `out`. The secondary leaves at `supply` and comes back at `return`. No more than about four pipe diameters
    lie between the tees, so that neither pump moves the other's water (common practice); both circuits share their
    water and its pressure all the same, and what heats the one heats the other.
    """

    ports: ClassVar[tuple[str, ...]] = (IN, OUT, SUPPLY, RETURN)
    opens_into: ClassVar[Inside] = Inside(
        parts={"take-off": Inner("tee"), "return": Inner("tee")},
        runs=("take-off -> return",),
        ports={IN: "take-off", OUT: "return", SUPPLY: "take-off", RETURN: "return"},
    )
