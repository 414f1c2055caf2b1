"""Supplies and open ends: main, well, open tank, filling loop, vent."""

from collections.abc import Iterator
from typing import Annotated, ClassVar, Literal, Self

from pydantic import model_validator

from plumbnet.layout.model.backflow_protection import BackflowProtection
from plumbnet.layout.model.event import Event, Extremes, Sort
from plumbnet.layout.model.part import IN, OUT, OneWay, Outlet, Part, Passage, Role, Source, Stray, kind
from plumbnet.layout.units import COLDEST_FILL_K, FREEZES_K, HOTTEST_K, TEMPERATURE, Quantity, Volume, standing_pressure

COLD_SUPPLY_K = 283.15
"""Cold water where the author gives no temperature: 10 degC, 50 degF (common practice)."""

Cold = Annotated[float, Quantity(TEMPERATURE, at_least=FREEZES_K, at_most=HOTTEST_K, usual=(278.15, 288.15))]
Filled = Annotated[float, Quantity(TEMPERATURE, at_least=COLDEST_FILL_K, at_most=HOTTEST_K, usual=(278.15, 288.15))]
"""Of water that may have antifreeze in it."""


@kind("main")
class Main(Part):
    """The street main: gives water at its pressure and takes back any amount at that same pressure.

    Few mains are steady: the pressure climbs at night, when nobody draws, and falls in the morning. What must hold is
    judged at the highest, and what comes to the taps at the lowest.
    """

    symbol: ClassVar[str] = "main"
    ports: ClassVar[tuple[str, ...]] = (OUT,)
    shared: ClassVar[frozenset[str]] = frozenset({OUT})
    inlet: ClassVar[str | None] = OUT
    through: ClassVar[tuple[tuple[str, str], ...]] = ()
    assumed: ClassVar = {
        "temperature": "delivers water at 10 °C (50 °F)",
        "highest": "stands no higher at night",
        "lowest": "falls no lower by day",
    }
    chosen: ClassVar[tuple[str, ...]] = ("pressure_pa", "highest_pa", "lowest_pa")

    pressure_pa: Annotated[float, standing_pressure(200e3, 600e3)]
    """Static pressure in the main, as it usually is."""
    highest_pa: Annotated[float, standing_pressure(400e3, 800e3)] | None = None
    """Highest static pressure in the main, as at night; the usual pressure when left out."""
    lowest_pa: Annotated[float, standing_pressure(50e3, 250e3)] | None = None
    """Lowest static pressure in the main, as in the morning; the usual pressure when left out."""
    temperature_k: Cold = COLD_SUPPLY_K
    """Temperature of the water it delivers."""

    @model_validator(mode="after")
    def _usual_pressure_lies_between(self) -> Self:
        if self.highest_pa is not None and self.highest_pa < self.pressure_pa:
            raise ValueError("the highest pressure must not lie below the usual one")
        if self.lowest_pa is not None and self.lowest_pa > self.pressure_pa:
            raise ValueError("the lowest pressure must not lie above the usual one")
        return self

    def strays(self) -> Iterator[Stray]:
        """The pressure that all is judged with, and the lowest where that is given."""
        yield Stray("pressure_pa" if self.highest_pa is None else "highest_pa")
        if self.lowest_pa is not None:
            yield Stray("lowest_pa")

    @property
    def works_at_pa(self) -> float:
        """The highest pressure that stands in it, gauge, which counts for all that must hold."""
        return self.pressure_pa if self.highest_pa is None else self.highest_pa

    def unsaid(self) -> Iterator[str]:
        """Neither of its extremes said, it is taken as steady, which is told once."""
        left = list(super().unsaid())
        yield from (field for field in left if field != "lowest" or "highest" not in left)

    def taken(self, field: str) -> str:
        """What a field that is left out means."""
        if field == "highest" and self.lowest_pa is None:
            return "is steady, by night and by day"
        return super().taken(field)

    def source(self) -> Source:
        """Water at the main's highest pressure, its usual and its lowest beside it."""
        highest_pa, least_pa = self.works_at_pa, self.pressure_pa if self.lowest_pa is None else self.lowest_pa
        return Source(OUT, highest_pa, highest_pa, self.temperature_k, usual_pa=self.pressure_pa, least_pa=least_pa)

    def events(self, extremes: Extremes) -> Iterator[Event]:
        """Its pressure may climb to the highest that is allowed where people draw water."""
        yield from super().events(extremes)
        if self.works_at_pa < extremes.limit_pa:
            field = "pressure_pa" if self.highest_pa is None else "highest_pa"
            yield Event("pressure up to the limit", "set", {field: extremes.limit_pa}, Sort.NUMBER)

    def outlets(self) -> Iterator[Outlet]:
        """The main takes water back at its own pressure."""
        yield Outlet(OUT, Role.STREET, self.works_at_pa)


@kind("well")
class Well(Part):
    """A well pump with its check: starts at the cut-in, stops at the cut-out, and takes nothing back.

    The pressure tank is a part of its own. A tank on a well is filled up to the cut-out, so that is where
    its room for expansion starts.
    """

    symbol: ClassVar[str] = "well"
    ports: ClassVar[tuple[str, ...]] = (OUT,)
    inlet: ClassVar[str | None] = None
    through: ClassVar[tuple[tuple[str, str], ...]] = ()
    assumed: ClassVar = {"temperature": "delivers water at 10 °C (50 °F)"}
    chosen: ClassVar[tuple[str, ...]] = ("cut_in_pa", "cut_out_pa")

    cut_in_pa: Annotated[float, standing_pressure(150e3, 350e3)]
    """Pressure at which the pump starts."""
    cut_out_pa: Annotated[float, standing_pressure(300e3, 500e3)]
    """Pressure at which the pump stops."""
    temperature_k: Cold = COLD_SUPPLY_K
    """Temperature of the water it delivers."""

    @model_validator(mode="after")
    def _cut_in_lies_below_cut_out(self) -> Self:
        if self.cut_in_pa >= self.cut_out_pa:
            raise ValueError("the cut-in must lie below the cut-out")
        return self

    def strays(self) -> Iterator[Stray]:
        """Where its switch starts the pump and stops it."""
        yield Stray("cut_out_pa")
        yield Stray("cut_in_pa")

    def events(self, extremes: Extremes) -> Iterator[Event]:
        """Its switch may stop the pump no sooner than at the highest that is allowed where people draw water."""
        yield from super().events(extremes)
        if self.cut_out_pa < extremes.limit_pa:
            yield Event("cut-out up to the limit", "set", {"cut_out_pa": extremes.limit_pa}, Sort.NUMBER)

    def source(self) -> Source:
        """Water between cut-in and cut-out; the highest counts."""
        return Source(OUT, self.cut_out_pa, self.cut_in_pa, self.temperature_k)


@kind("open_tank")
class OpenTank(Part):
    """A tank open to the air, its free surface at its elevation: a cistern, a feed or a roof tank.

    It is filled at `in` through a float valve above the water, an air gap that nothing passes back. What
    hangs on `out` stands under the surface's head and can push water up into the tank.
    """

    symbol: ClassVar[str] = "open_tank"
    protects: ClassVar[BackflowProtection] = BackflowProtection.AIR_GAP
    shared: ClassVar[frozenset[str]] = frozenset({OUT})
    through: ClassVar[tuple[tuple[str, str], ...]] = ((IN, OUT),)
    assumed: ClassVar = {"temperature": "holds water at 10 °C (50 °F)"}
    chosen: ClassVar[tuple[str, ...]] = ("elevation_m",)

    volume_m3: Volume | None = None
    """Water it holds."""
    temperature_k: Filled = COLD_SUPPLY_K
    """Temperature of the water it holds."""

    def strays(self) -> Iterator[Stray]:
        """The height of its surface."""
        yield Stray("elevation_m")

    def passages(self) -> Iterator[Passage]:
        """None: the float valve fills through air."""
        yield from ()

    def source(self) -> Source:
        """Water at the pressure of the air, at the height of the surface."""
        return Source(OUT, 0.0, 0.0, self.temperature_k)

    def outlets(self) -> Iterator[Outlet]:
        """Water rises into the tank."""
        yield Outlet(OUT, Role.AIR, 0.0)


@kind("filling_loop")
class FillingLoop(Part):
    """A hose with a check, by which a circuit is filled from the cold pipe by hand and then shut off or parted.

    Shut, it passes nothing, and what lies behind it stands at the pressure to which it was filled, until heat or
    another supply raises it. Left open, it lets the pressure of the cold pipe in, and nothing back. Some codes want it
    parted after each filling (UK Water Fittings Regulations 1999, Schedule 2, paragraph 24; from memory).
    """

    symbol: ClassVar[str] = "filling_loop"
    protects: ClassVar[BackflowProtection] = BackflowProtection.SINGLE_CHECK
    assumed: ClassVar = {
        "temperature": "fills with water at 10 °C (50 °F)",
        "state": "is shut off once the circuit is filled",
    }
    chosen: ClassVar[tuple[str, ...]] = ("fill_pa",)

    fill_pa: Annotated[float, standing_pressure(100e3, 250e3)]
    """Pressure to which the circuit is filled, cold, as a gauge at the loop reads it."""
    temperature_k: Filled = COLD_SUPPLY_K
    """Temperature of the water it fills with."""
    state: Literal["shut", "open"] = "shut"
    """Whether it is shut off or parted, or was left open."""

    def strays(self) -> Iterator[Stray]:
        """The pressure to which a hand fills, while that counts."""
        if self.state == "shut":
            yield Stray("fill_pa")

    def drawn_as(self) -> str:
        """Its stops filled where they are shut."""
        return self.symbol if self.state == "shut" else "open_filling_loop"

    def events(self, extremes: Extremes) -> Iterator[Event]:
        """It may be left open, or shut off."""
        yield from super().events(extremes)
        if self.state == "shut":
            yield Event("left open", "set", {"state": "open"}, Sort.TURNED)
        else:
            yield Event("shut off", "set", {"state": "shut"}, Sort.TURNED)

    def passages(self) -> Iterator[Passage]:
        """Forward while it is open."""
        if self.state == "open":
            yield OneWay(IN, OUT)

    def source(self) -> Source | None:
        """Water at the pressure of the fill, once it is shut."""
        if self.state == "open":
            return None
        return Source(OUT, self.fill_pa, self.fill_pa, self.temperature_k, is_filled_by_hand=True, feeds_on=False)


@kind("vent")
class Vent(Part):
    """An open pipe that ends in the air, its rim at its elevation; water spills once it stands that high."""

    symbol: ClassVar[str] = "vent"
    chosen: ClassVar[tuple[str, ...]] = ("elevation_m",)
    ports: ClassVar[tuple[str, ...]] = (IN,)
    outlet: ClassVar[str | None] = None
    through: ClassVar[tuple[tuple[str, str], ...]] = ()

    def outlets(self) -> Iterator[Outlet]:
        """Water rises to the rim."""
        yield Outlet(IN, Role.AIR, 0.0)
