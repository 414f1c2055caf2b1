"""Parts of heating and solar circuits: boilers, collectors, emitters."""

from collections.abc import Iterator
from typing import Annotated, ClassVar

from plumbnet.layout.model.kinds.heat import Heater
from plumbnet.layout.model.part import IN, OUT, RELIEF, RETURN, SUPPLY, Part, Stray, kind
from plumbnet.layout.units import water_inside


@kind("boiler")
class Boiler(Heater):
    """A hot-water boiler: entered at `return`, left at `supply`; heats its own water and the loops it drives."""

    symbol: ClassVar[str] = "boiler"
    ports: ClassVar[tuple[str, ...]] = (RETURN, SUPPLY, RELIEF)
    inlet: ClassVar[str | None] = RETURN
    outlet: ClassVar[str | None] = SUPPLY
    through: ClassVar[tuple[tuple[str, str], ...]] = ((RETURN, SUPPLY),)

    def carries_heat_at(self) -> tuple[str, ...]:
        """Its own water."""
        return self.store()


@kind("emitter")
class Emitter(Part):
    """A radiator, convector or floor circuit: holds water of the heating loop and gives its heat away."""

    symbol: ClassVar[str] = "emitter"
    cools: ClassVar[bool] = True
    chosen: ClassVar[tuple[str, ...]] = ("volume_m3",)

    volume_m3: Annotated[float, water_inside(0.005, 0.02)]
    """Water it holds."""

    def strays(self) -> Iterator[Stray]:
        """The water in it, and its height."""
        yield Stray("volume_m3", together=True)
        yield Stray("elevation_m", together=True)

    def contents(self) -> Iterator[tuple[str, float]]:
        """Its water."""
        yield (IN, self.volume_m3)


@kind("solar_collector")
class SolarCollector(Heater):
    """A solar collector: heats its water whenever the sun shines; its setpoint is the highest it reaches."""

    symbol: ClassVar[str] = "solar_collector"
    ports: ClassVar[tuple[str, ...]] = (IN, OUT, RELIEF)

    def carries_heat_at(self) -> tuple[str, ...]:
        """Its own water."""
        return self.store()
