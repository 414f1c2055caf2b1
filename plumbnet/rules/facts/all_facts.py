"""All that an analysis found out about a system, and its quantities in the units of the report."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from plumbnet.layout.model import Circuit, System
from plumbnet.layout.units import LENGTH, POWER, PRESSURE, TEMPERATURE, VOLUME, Units, show
from plumbnet.rules.facts.device_facts import HinderedFacts, ReducerFacts, ReliefFacts
from plumbnet.rules.facts.feed_facts import FeedFacts
from plumbnet.rules.facts.fill_facts import FillFacts
from plumbnet.rules.facts.growth_facts import PumpedFacts, ReturnFacts
from plumbnet.rules.facts.heater_answer import HeaterFacts
from plumbnet.rules.facts.limit_facts import TapFacts
from plumbnet.rules.facts.low_facts import LowFacts, Use
from plumbnet.rules.facts.service_facts import TankServiceFacts
from plumbnet.rules.facts.store_facts import StoreFacts
from plumbnet.rules.facts.tank_facts import TankFacts
from plumbnet.rules.facts.ways_out import OutletFacts, ShutInFacts


def _drinking(_part: str) -> Circuit:
    """As where nobody has looked for heating circuits."""
    return Circuit.WATER


@dataclass(frozen=True, slots=True)
class Facts:
    """All that an analysis found out about a system."""

    system: System
    units: Units
    heaters: tuple[HeaterFacts, ...]
    tanks: tuple[TankFacts, ...]
    reliefs: tuple[ReliefFacts, ...]
    expansion_reliefs: tuple[ReliefFacts, ...]
    reducers: tuple[ReducerFacts, ...]
    returns: tuple[ReturnFacts, ...]
    """Growth that goes back to a main; found only under a profile that keeps it in the supply pipe."""
    hot_side_checks: tuple[str, ...]
    idle_pumps: tuple[str, ...]
    unreached: tuple[str, ...]
    feeds: tuple[FeedFacts, ...]
    """The cold feed of every heater, in the order of the file."""
    fills: tuple[FillFacts, ...]
    """Every part that joins a heating circuit to drinking water, in the order of the file."""
    pumped: tuple[PumpedFacts, ...] = ()
    """What heating and cooling again and again pumps up."""
    hindered_pumps: tuple[HinderedFacts, ...] = ()
    """Those of the idle pumps that a reducer keeps from driving a loop."""
    lows: tuple[LowFacts, ...] = ()
    """Taps, emitters, and of every heater the highest place of what it warms."""
    outlets: tuple[OutletFacts, ...] = ()
    """Every outlet; of a part that has several, its last counts."""
    taps: tuple[TapFacts, ...] = ()
    """Every place where people draw water, in the order of the file."""
    stores: tuple[StoreFacts, ...] = ()
    """Every store of hot water, in the order of the file."""
    tank_service: tuple[TankServiceFacts, ...] = ()
    """Of every expansion tank whether it can be parted from its supply."""
    circulators: tuple[str, ...] = ()
    """Pumps that run and are there to drive water round a loop."""
    shut_in: tuple[ShutInFacts, ...] = ()
    """Water in which the growth of a heater is trapped or sealed."""
    assumed: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """What was taken where the file says nothing, with the parts it was taken for."""
    circuit_of: Callable[[str], Circuit] = field(default=_drinking, repr=False, compare=False)
    """The circuit to which a part belongs; searched for when it is first asked for."""

    @property
    def rungs(self) -> int:
        """Rungs of the ladders of all heaters."""
        return sum(len(heater.ladder) for heater in self.heaters)

    @property
    def dry_heaters(self) -> tuple[str, ...]:
        """Heaters to which no water comes."""
        wet = {low.name for low in self.lows if low.use is Use.HEATER}
        return tuple(heater.name for heater in self.heaters if heater.name not in wet)

    @property
    def low_at(self) -> dict[str, LowFacts]:
        """Taps at which water stands or might, by name."""
        return {low.name: low for low in self.lows if low.use is Use.TAP}

    def pressure(self, pressure_pa: float) -> str:
        """A pressure in the units of the report."""
        return show(pressure_pa, PRESSURE, self.units)

    def length(self, length_m: float) -> str:
        """A length or a height in the units of the report."""
        return show(length_m, LENGTH, self.units)

    def volume(self, volume_m3: float) -> str:
        """A volume in the units of the report."""
        return show(volume_m3, VOLUME, self.units)

    def power(self, power_w: float) -> str:
        """A rate of heat in the units of the report."""
        return show(power_w, POWER, self.units)

    def temperature(self, temperature_k: float) -> str:
        """A temperature in the units of the report."""
        return show(temperature_k, TEMPERATURE, self.units)
