"""Water heaters and exchangers, and what every heater has in common."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Annotated, ClassVar, Literal

from plumbnet.layout.model.base_model import Declared
from plumbnet.layout.model.event import Alternative, Event, Extremes, Sort
from plumbnet.layout.model.kinds.control import Relief, ReliefValve
from plumbnet.layout.model.kinds.store import Store
from plumbnet.layout.model.part import COLD, HOT, RELIEF, RETURN, Free, HeatSource, Mixture, Part, Passage, Stray, kind
from plumbnet.layout.units import FREEZES_K, HOTTEST_K, POWER, TEMPERATURE, Fraction, Quantity, vessel_volume

Setpoint = Annotated[float, Quantity(TEMPERATURE, above=FREEZES_K, at_most=HOTTEST_K, usual=(323.15, 353.15))]
Held = Annotated[float, vessel_volume(0.04, 0.3)]
InPassing = Annotated[float, vessel_volume(0.0005, 0.005)]

USUAL_STORE_M3 = 0.1892706
"""Store of the tank heater that would replace a flow-through one: 50 gal (common practice)."""


SizingMethod = Literal[
    "membrane",
    "ashrae-diaphragm",
    "ashrae-air-water",
    "ashrae-open",
    "asme-iv",
    "en-12828",
    "din-4807-5",
    "uk-4-percent",
]


class Antifreeze(Declared):
    """Glycol in the water of a heating or solar circuit; tap water has none."""

    called: ClassVar[str] = "antifreeze"

    glycol: Literal["propylene", "ethylene"]
    """Which glycol."""
    share: Fraction
    """Share of glycol by volume."""


class Heater(Part):
    """What heaters have in common: a store between two ports, a setpoint, an input, perhaps a relief valve."""

    on_flow: ClassVar[bool] = False
    tappings: ClassVar[tuple[str, ...]] = (RELIEF,)
    is_vessel: ClassVar[bool] = True
    chosen: ClassVar[tuple[str, ...]] = ("setpoint_k", "volume_m3")

    volume_m3: Held
    """Water it heats and holds."""
    setpoint_k: Setpoint
    """Highest temperature it heats the water to."""
    input_w: Annotated[float, Quantity(POWER, usual=(2e3, 50e3))] | None = None
    """Rate at which it burns fuel or draws current."""
    relief: Relief | None = None
    """Its relief valve, fixed to its own tapping: pressure, temperature, capacity; or the pressure alone."""
    antifreeze: Antifreeze | None = None
    """Glycol in the water it heats: which, and its share by volume."""
    sizing: SizingMethod | None = None
    """Method by which its expansion tank is sized; that of the rule profile when left out."""
    state: Literal["in_service", "out_of_service"] = "in_service"
    """Whether it heats; out of service it stays cold, holds its water, and lets water pass."""

    def store(self) -> tuple[str, str]:
        """The ports between which the heated water stands."""
        return self.through[0]

    def passages(self) -> Iterator[Passage]:
        """Free through the store and to each tapping."""
        inlet, outlet = self.store()
        for port in (outlet, *self.tappings):
            yield Free(inlet, port)

    def contents(self) -> Iterator[tuple[str, float]]:
        """The heated water."""
        yield (self.store()[0], self.volume_m3)

    def strays(self) -> Iterator[Stray]:
        """Its thermostat and the water in it while it is in service, and its height where the author gave it one."""
        if not self.is_out_of_service():
            yield Stray("setpoint_k", together=True)
            yield Stray("volume_m3", together=True)
        if "elevation_m" in self.model_fields_set:
            yield Stray("elevation_m")

    def heat(self) -> HeatSource | None:
        """What this heater warms: nothing while it is out of service."""
        if self.is_out_of_service():
            return None
        inlet, outlet = self.store()
        mixture = None if self.antifreeze is None else Mixture(self.antifreeze.glycol, self.antifreeze.share)
        return HeatSource(
            inlet, outlet, self.volume_m3, self.setpoint_k, self.input_w, self.on_flow, mixture, self.sizing
        )

    def is_out_of_service(self) -> bool:
        """As its author says."""
        return self.state == "out_of_service"

    def carries_heat_at(self) -> tuple[str, ...]:
        """Its store, where there is antifreeze in it."""
        return self.store() if self.antifreeze is not None else ()

    def events(self, extremes: Extremes) -> Iterator[Event]:
        """Its thermostat may stick, and the water get as hot as its relief valve lets it, or as any might let it.

        One that is out of service may be put back.
        """
        yield from super().events(extremes)
        if self.is_out_of_service():
            yield Event("put back in service", "set", {"state": "in_service"}, Sort.TURNED)
            return
        own_k = None if self.relief is None else self.relief.temperature_k
        hottest_k = extremes.relief_k if own_k is None else own_k
        if self.setpoint_k < hottest_k:
            words = "as hot as a relief valve may let it" if own_k is None else "as hot as its relief valve lets it"
            yield Event(words, "set", {"setpoint_k": hottest_k})
        yield from self.exchanges()

    def instead(self) -> Iterator[Alternative]:
        """It may be put out of service."""
        yield from super().instead()
        if not self.is_out_of_service():
            yield Alternative("put out of service", "set", {"state": "out_of_service"}, Sort.TURNED)

    def exchanges(self) -> Iterator[Event]:
        """For which other sort of heater it may be exchanged."""
        yield from ()

    def fixed(self) -> Iterator[tuple[str, str, Part]]:
        """The relief valve that is written inside the heater."""
        if self.relief is not None:
            yield RELIEF, "relief", _relief_valve(self.relief, self.elevation_m)


def _relief_valve(relief: Relief, elevation_m: float) -> ReliefValve:
    values = {name: getattr(relief, name) for name in type(relief).model_fields}
    return ReliefValve.model_construct(
        _fields_set={"pressure_pa", "elevation_m"} | relief.model_fields_set, elevation_m=elevation_m, **values
    )


@kind("storage_heater")
class StorageHeater(Store, Heater):
    """A tank water heater, gas or electric: heats its whole store whether or not water is drawn.

    Entered at `cold`, left at `hot`; `return` takes a circulation pipe, `relief` the relief valve.
    """

    symbol: ClassVar[str] = "storage_heater"
    keeps_hot: ClassVar[bool] = True
    ports: ClassVar[tuple[str, ...]] = (COLD, HOT, RETURN, RELIEF)
    inlet: ClassVar[str | None] = COLD
    outlet: ClassVar[str | None] = HOT
    through: ClassVar[tuple[tuple[str, str], ...]] = ((COLD, HOT),)
    tappings: ClassVar[tuple[str, ...]] = (RETURN, RELIEF)

    electric: bool | None = None
    """Whether electricity heats it."""

    def heat(self) -> HeatSource | None:
        """What this heater warms, and whether by electricity."""
        source = super().heat()
        return None if source is None else replace(source, is_electric=self.electric)

    def exchanges(self) -> Iterator[Event]:
        """It may be exchanged for a flow-through heater."""
        values = {"kind": TanklessHeater.kind, "volume_m3": None}
        yield Event("exchanged for a tankless one", "set", values, Sort.OTHER_DEVICE)


@kind("tankless_heater")
class TanklessHeater(Heater):
    """A flow-through water heater: fires only while water moves through it, by a draw or by a pump."""

    symbol: ClassVar[str] = "tankless_heater"
    ports: ClassVar[tuple[str, ...]] = (COLD, HOT, RELIEF)
    inlet: ClassVar[str | None] = COLD
    outlet: ClassVar[str | None] = HOT
    through: ClassVar[tuple[tuple[str, str], ...]] = ((COLD, HOT),)
    on_flow: ClassVar[bool] = True
    assumed: ClassVar = {"volume": "holds 1 L of water (0.26 gal)"}

    volume_m3: InPassing = 0.001
    """Water in its coil; 1 L when left out (common practice)."""

    def exchanges(self) -> Iterator[Event]:
        """It may be exchanged for a heater with a tank."""
        values = {"kind": StorageHeater.kind, "volume_m3": USUAL_STORE_M3}
        yield Event("exchanged for one with a tank", "set", values, Sort.OTHER_DEVICE)
