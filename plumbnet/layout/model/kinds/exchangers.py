"""Heaters that another circuit heats, through a wall: they exchange heat with it but no water."""

from collections.abc import Iterator
from typing import Annotated, ClassVar

from plumbnet.layout.model.kinds.heat import Heater, InPassing
from plumbnet.layout.model.kinds.store import Store
from plumbnet.layout.model.part import COLD, HOT, RELIEF, RETURN, Free, Passage, kind
from plumbnet.layout.units import water_inside

COIL_IN, COIL_OUT = "coil_in", "coil_out"
PRIMARY_IN, PRIMARY_OUT = "primary_in", "primary_out"
InCoil = Annotated[float, water_inside(0.001, 0.01)]


@kind("indirect_heater")
class IndirectHeater(Store, Heater):
    """A tank of tap water with a coil in it that a boiler heats; tank and coil exchange heat but no water.

    The tank side is `cold`, `hot`, `return` and `relief`; the coil side `coil_in` and `coil_out`.
    """

    symbol: ClassVar[str] = "indirect_heater"
    keeps_hot: ClassVar[bool] = True
    ports: ClassVar[tuple[str, ...]] = (COLD, HOT, RETURN, RELIEF, COIL_IN, COIL_OUT)
    inlet: ClassVar[str | None] = COLD
    outlet: ClassVar[str | None] = HOT
    through: ClassVar[tuple[tuple[str, str], ...]] = ((COLD, HOT), (COIL_IN, COIL_OUT))
    tappings: ClassVar[tuple[str, ...]] = (RETURN, RELIEF)
    assumed: ClassVar = {"coil_volume": "has a coil of 5 L (1.3 gal)"}

    coil_volume_m3: InCoil = 0.005
    """Water in the coil; 5 L when left out (common practice)."""

    def passages(self) -> Iterator[Passage]:
        """Free on each side, and none between them."""
        yield from super().passages()
        yield Free(COIL_IN, COIL_OUT)

    def carries_heat_at(self) -> tuple[str, ...]:
        """Its coil."""
        return (*super().carries_heat_at(), COIL_IN, COIL_OUT)

    def contents(self) -> Iterator[tuple[str, float]]:
        """The store, and the water in the coil."""
        yield from super().contents()
        yield (COIL_IN, self.coil_volume_m3)


@kind("heat_exchanger")
class HeatExchanger(Heater):
    """A plate or shell exchanger that heats tap water while it flows; its sides exchange heat but no water.

    The heated side is `cold` and `hot`, the heating side `primary_in` and `primary_out`.
    """

    symbol: ClassVar[str] = "heat_exchanger"
    ports: ClassVar[tuple[str, ...]] = (COLD, HOT, RELIEF, PRIMARY_IN, PRIMARY_OUT)
    inlet: ClassVar[str | None] = COLD
    outlet: ClassVar[str | None] = HOT
    through: ClassVar[tuple[tuple[str, str], ...]] = ((COLD, HOT), (PRIMARY_IN, PRIMARY_OUT))
    on_flow: ClassVar[bool] = True
    assumed: ClassVar = {
        "volume": "holds 1 L of water (0.26 gal) on the heated side",
        "primary_volume": "holds 1 L of water (0.26 gal) on the heating side",
    }

    volume_m3: InPassing = 0.001
    """Water on the heated side; 1 L when left out (common practice)."""
    primary_volume_m3: InCoil = 0.001
    """Water on the heating side; 1 L when left out (common practice)."""

    def passages(self) -> Iterator[Passage]:
        """Free on each side, and none between them."""
        yield from super().passages()
        yield Free(PRIMARY_IN, PRIMARY_OUT)

    def carries_heat_at(self) -> tuple[str, ...]:
        """Its heating side."""
        return (*super().carries_heat_at(), PRIMARY_IN, PRIMARY_OUT)

    def contents(self) -> Iterator[tuple[str, float]]:
        """The water on both sides."""
        yield from super().contents()
        yield (PRIMARY_IN, self.primary_volume_m3)
