"""Parts that take up or let off expanding water: expansion tanks and relief valves."""

from collections.abc import Iterator
from typing import Annotated, ClassVar, Literal, Self

from pydantic import GetJsonSchemaHandler, model_validator
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema

from plumbnet.layout.model.base_model import Declared
from plumbnet.layout.model.event import Event, Extremes
from plumbnet.layout.model.part import IN, Cushion, Outlet, Part, Role, Stray, kind
from plumbnet.layout.units import (
    FREEZES_K,
    HOTTEST_OPENING_K,
    TEMPERATURE,
    Power,
    Quantity,
    set_pressure,
    standing_pressure,
    vessel_volume,
    water_inside,
)

SetPressure = Annotated[float, set_pressure(600e3, 1000e3)]
OpensAt = Annotated[float, Quantity(TEMPERATURE, above=FREEZES_K, at_most=HOTTEST_OPENING_K, usual=(363.15, 372.15))]


class Ending(Part):
    """A part with a single connection, at which a run ends."""

    ports: ClassVar[tuple[str, ...]] = (IN,)
    outlet: ClassVar[str | None] = None
    through: ClassVar[tuple[tuple[str, str], ...]] = ()


@kind("expansion_tank")
class ExpansionTank(Ending):
    """A closed tank with a cushion of air behind a membrane: water enters as the pressure climbs.

    `precharge` is the pressure of the air with no water behind it, at the tank. A waterlogged tank has lost
    its air and takes nothing.
    """

    symbol: ClassVar[str] = "expansion_tank"
    failures: ClassVar = {"waterlogged": {"state": "waterlogged"}}
    assumed: ClassVar = {"state": "is sound"}
    chosen: ClassVar[tuple[str, ...]] = ("precharge_pa", "volume_m3")

    volume_m3: Annotated[float, vessel_volume(0.008, 0.048)]
    """Whole volume of the tank, air and water."""
    precharge_pa: Annotated[float, standing_pressure(150e3, 550e3)]
    """Air pressure with no water in the tank."""
    acceptance_m3: Annotated[float, water_inside(0.004, 0.02)] | None = None
    """Most water the membrane lets in, where it is less than the whole volume."""
    state: Literal["sound", "waterlogged"] = "sound"
    """Whether the membrane and the charge are sound."""

    @model_validator(mode="after")
    def _accepts_no_more_than_it_holds(self) -> Self:
        if self.acceptance_m3 is not None and self.acceptance_m3 > self.volume_m3:
            raise ValueError("the acceptance cannot be more than the volume")
        return self

    def drawn_as(self) -> str:
        """Crossed out once it is full of water."""
        return self.symbol if self.state == "sound" else "waterlogged_tank"

    def strays(self) -> Iterator[Stray]:
        """Its charge, which seeps away, its volume, and its height."""
        yield Stray("precharge_pa")
        yield Stray("volume_m3")
        yield Stray("elevation_m", together=True)

    def outlets(self) -> Iterator[Outlet]:
        """Water enters a sound tank above its charge."""
        if self.state == "sound":
            yield Outlet(IN, Role.TANK, self.precharge_pa)

    def events(self, extremes: Extremes) -> Iterator[Event]:
        """It may fill with water, or lose its charge."""
        yield from super().events(extremes)
        if self.state == "sound" and self.precharge_pa > 0.0:
            yield Event("charge lost", "set", {"precharge_pa": 0.0})

    def cushion(self) -> Cushion:
        """Its volume, charge and acceptance."""
        return Cushion(self.volume_m3, self.precharge_pa, self.acceptance_m3, self.state == "sound")


class Relief(Declared):
    """A relief valve as written inside a heater: for pressure, and with `temperature` for that too.

    A pressure alone is one that opens at it and at no temperature.
    """

    called: ClassVar[str] = "relief"

    pressure_pa: SetPressure
    """Pressure at which it opens."""
    temperature_k: OpensAt | None = None
    """Temperature at which it opens, of a combined valve; it relieves pressure only when left out."""
    capacity_w: Power | None = None
    """Heat it can carry off as rated by its maker."""

    @model_validator(mode="before")
    @classmethod
    def _pressure_alone(cls, written: object) -> object:
        is_quantity = isinstance(written, str | int | float) and not isinstance(written, bool)
        return {"pressure": written} if is_quantity else written

    @classmethod
    def __get_pydantic_json_schema__(cls, core: CoreSchema, handler: GetJsonSchemaHandler, /) -> JsonSchemaValue:
        """A mapping, or its pressure alone."""
        schema = super().__get_pydantic_json_schema__(core, handler)
        whole = handler.resolve_ref_schema(schema)
        alone = whole["properties"]["pressure"]["anyOf"]
        mapping = dict(whole)
        whole.clear()
        whole |= {"title": mapping.pop("title"), "description": mapping.pop("description"), "anyOf": [mapping, *alone]}
        return schema


@kind("relief_valve")
class ReliefValve(Ending):
    """A safety relief valve: the last safety device, never a control of expansion.

    With `temperature` it is a combined temperature and pressure relief valve, without it relieves pressure only, as one
    of a boiler does. It belongs on the heater's own tapping with nothing between. It is never plugged, capped or
    removed. That of a safety group (EN 1487), and it alone, lets growth off at each heat-up besides.
    """

    symbol: ClassVar[str] = "relief_valve"
    failures: ClassVar = {"plugged": {"state": "plugged"}}
    assumed: ClassVar = {"temperature": "relieves pressure only"}

    pressure_pa: SetPressure
    """Pressure at which it opens."""
    temperature_k: OpensAt | None = None
    """Temperature at which it opens, of a combined valve."""
    capacity_w: Power | None = None
    """Heat it can carry off as rated by its maker."""
    lets_off_growth: bool = False
    """Whether it is made to let growth off to a drain at each heat-up, as that of a safety group is."""
    state: Literal["sound", "plugged"] = "sound"
    """A plugged relief valve opens at no pressure: a danger to be put right at once."""

    def drawn_as(self) -> str:
        """Closed off where it is plugged, and without a T where it relieves pressure only."""
        if self.state == "plugged":
            return "plugged_relief"
        return self.symbol if self.temperature_k is not None else "pressure_relief"

    def outlets(self) -> Iterator[Outlet]:
        """Water leaves above the set pressure."""
        if self.state == "sound":
            role = Role.EXPANSION_RELIEF if self.lets_off_growth else Role.SAFETY_RELIEF
            yield Outlet(IN, role, self.pressure_pa, self.temperature_k, self.capacity_w, guards=self.lets_off_growth)

    def safety_sets(self) -> Iterator[tuple[str, float]]:
        """Its set, plugged or not."""
        yield IN, self.pressure_pa

    def opens_daily(self) -> bool:
        """That of a safety group does."""
        return self.lets_off_growth

    def unsaid(self) -> Iterator[str]:
        """Of that of a safety group everybody knows that no temperature opens it."""
        yield from (field for field in super().unsaid() if field != "temperature" or not self.lets_off_growth)


@kind("expansion_relief")
class ExpansionRelief(Ending):
    """An expansion relief valve: lets expanding water off to a drain at each heat-up, below the safety relief.

    Not every code accepts one as the control.
    """

    symbol: ClassVar[str] = "expansion_relief"
    failures: ClassVar = {"plugged": {"state": "plugged"}}
    chosen: ClassVar[tuple[str, ...]] = ("pressure_pa",)

    pressure_pa: Annotated[float, set_pressure(450e3, 650e3)]
    """Pressure at which it opens."""
    state: Literal["sound", "plugged"] = "sound"
    """Whether it can open."""

    def drawn_as(self) -> str:
        """Closed off where it is plugged."""
        return self.symbol if self.state == "sound" else "plugged_relief"

    def outlets(self) -> Iterator[Outlet]:
        """Water leaves above the set pressure."""
        if self.state == "sound":
            yield Outlet(IN, Role.EXPANSION_RELIEF, self.pressure_pa)
