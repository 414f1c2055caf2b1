"""Water that warms as one, and the heat put into it; its temperature out.

A body of water is a heater's store and the loops its pumps drive, well mixed. What it pushes out into a tank still
counts with it and warms on with it: more than really happens, and so on the safe side; the same as where a tank is
sized. What a mixing valve tempers is a body of its own that warms with the heater's until the valve lets it come no
hotter. Walls take no heat. All pressures are absolute.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from plumbnet.physics.fluids import enthalpy_j_kg, heat_capacity_j_kg_k, specific_volume_m3_kg
from plumbnet.physics.vessels import TEMPERATURE_ELEMENT_K, USUAL_DIFFERENTIAL_K, USUAL_EFFICIENCY, USUAL_ROOM_K, Shell

_SETTLED_K = 1e-11
"""Step of the search for a temperature that no longer matters."""
_MOST_TRIES = 50


@dataclass(frozen=True, slots=True, kw_only=True)
class Burner:
    """What fires into a body of water, up to its setpoint `hot_k`, and again `differential_k` below it.

    `input_w` is what it burns or draws, of which the share `efficiency` reaches the water. Raises ValueError for a
    burner that gives nothing, or more than it burns.

    >>> Burner(name="heater", input_w=11_723.0, hot_k=333.15).useful_w
    9378.4
    """

    name: str
    input_w: float
    hot_k: float
    efficiency: float = USUAL_EFFICIENCY
    differential_k: float = USUAL_DIFFERENTIAL_K

    def __post_init__(self) -> None:
        if not 0.0 < self.input_w < math.inf:
            raise ValueError(f"a burner of {self.input_w:g} W heats nothing")
        if not 0.0 < self.efficiency <= 1.0:
            raise ValueError(f"an efficiency of {self.efficiency:g} is none: it lies above 0, and at most at 1")
        if not 0.0 <= self.differential_k < math.inf:
            raise ValueError(f"a thermostat has no differential of {self.differential_k:g} K")

    @property
    def useful_w(self) -> float:
        """Heat that reaches the water."""
        return self.input_w * self.efficiency

    @property
    def relights_k(self) -> float:
        """Temperature below which the thermostat lights it again."""
        return self.hot_k - self.differential_k


@dataclass(frozen=True, slots=True, kw_only=True)
class Body:
    """Water that warms as one, its room in each zone, and what fires into it.

    It is filled at `cold_k` and `fill_abs_pa`, at its own height, which stands `head_pa` below the pressure at
    datum. `element_k` is the temperature at which the element of its relief valve opens, `limit_abs_pa` the highest
    pressure, at datum, that it may reach. It loses `loss_w_k` to a room at `room_k` for each kelvin above that.
    Where it is `mixed_from` another body, by that one's name, it has no burners and shares in the heat of those until
    it is at `mixed_k`.
    """

    name: str
    burners: tuple[Burner, ...]
    shells: Mapping[int, Shell]
    cold_k: float
    fill_abs_pa: float
    head_pa: float = 0.0
    element_k: float = TEMPERATURE_ELEMENT_K
    limit_abs_pa: float = math.inf
    loss_w_k: float = 0.0
    room_k: float = USUAL_ROOM_K
    mixed_from: str | None = None
    mixed_k: float = math.inf

    @property
    def rigid(self) -> "Body":
        """The same water within walls that yield to nothing."""
        return replace(self, shells={zone: shell.rigid for zone, shell in self.shells.items()})

    @property
    def home(self) -> int:
        """The zone of its heater: the first that is given."""
        return next(iter(self.shells))

    @property
    def cold(self) -> "Warm":
        """The body as it is filled."""
        density = 1.0 / specific_volume_m3_kg(self.cold_k, pressure_abs_pa=self.fill_abs_pa)
        masses = {zone: shell.volume_m3 * density for zone, shell in self.shells.items()}
        return Warm(self, self.cold_k, masses, dict.fromkeys(self.shells, 0.0))


@dataclass(frozen=True)
class Warm:
    """A body at one moment: its temperature, and in each zone the water of it and how far that is pressed.

    `rises_pa` is how far above the fill the properties of water are taken: nothing where a tank or a way out yields
    to it, for what water itself then yields does not count.
    """

    body: Body
    temperature_k: float
    masses_kg: Mapping[int, float]
    rises_pa: Mapping[int, float]

    def water_abs_pa(self, zone: int) -> float:
        """Pressure at which the properties of its water in a zone are taken; at its own height."""
        return self.body.fill_abs_pa + self.rises_pa[zone]

    def volume_m3(self, zone: int, rise_pa: float | None = None) -> float:
        """Room its water of a zone takes up, as it is pressed or if it were pressed so far above the fill."""
        pressure = self.water_abs_pa(zone) if rise_pa is None else self.body.fill_abs_pa + rise_pa
        return self.masses_kg[zone] * specific_volume_m3_kg(self.temperature_k, pressure_abs_pa=pressure)

    @cached_property
    def mass_kg(self) -> float:
        """All its water, what it has pushed into tanks included."""
        return math.fsum(self.masses_kg.values())

    @cached_property
    def enthalpy_j(self) -> float:
        """Enthalpy of all its water, counted from the liquid at the triple point."""
        return math.fsum(mass * self._enthalpy_j_kg(zone) for zone, mass in self.masses_kg.items())

    def _enthalpy_j_kg(self, zone: int) -> float:
        return enthalpy_j_kg(self.temperature_k, pressure_abs_pa=self.water_abs_pa(zone))

    def heated(self, heat_j: float, rises_pa: Mapping[int, float]) -> "Warm":
        """The same water after heat has gone into it while it was pressed from where it was to `rises_pa`.

        Solves dH = Q + integral of V dp for the temperature, V as the mean of before and after. Source: first law
        for a closed mass of water. Raises OutsideWater beyond what is known of liquid water.

        >>> body = Body(name="kettle", burners=(), shells={0: Shell(0.001)}, cold_k=283.15, fill_abs_pa=101_325.0)
        >>> warm = body.cold.heated(0.9997 * 4186.0 * 40.0, {0: 0.0})  # a litre by 40 K, by head
        >>> round(warm.temperature_k - 273.15, 1)
        50.0
        """
        after = replace(self, rises_pa=rises_pa)
        for _ in range(_MOST_TRIES):
            excess = after.enthalpy_j - self.enthalpy_j - heat_j - pressed_j((self,), (after,))
            step = excess / math.fsum(
                mass * heat_capacity_j_kg_k(after.temperature_k, pressure_abs_pa=after.water_abs_pa(zone))
                for zone, mass in after.masses_kg.items()
            )
            after = replace(after, temperature_k=after.temperature_k - step)
            if abs(step) <= _SETTLED_K:
                break
        return after

    def without(self, masses_kg: Mapping[int, float]) -> tuple["Warm", float]:
        """The body less water let out of it, and the enthalpy which that carried off."""
        left = {zone: mass - masses_kg.get(zone, 0.0) for zone, mass in self.masses_kg.items()}
        carried = math.fsum(mass * self._enthalpy_j_kg(zone) for zone, mass in masses_kg.items())
        return replace(self, masses_kg=left), carried

    def fed(self, zone: int, mass_kg: float) -> tuple["Warm", float]:
        """The body with as much cold water let into a zone, mixed, and the enthalpy which that brought."""
        cold = enthalpy_j_kg(self.body.cold_k, pressure_abs_pa=self.water_abs_pa(zone))
        colder = mass_kg * (cold - self._enthalpy_j_kg(zone))
        more = replace(self, masses_kg={**self.masses_kg, zone: self.masses_kg[zone] + mass_kg})
        return more.heated(colder, self.rises_pa), mass_kg * cold


def pressed_j(before: Sequence[Warm], after: Sequence[Warm]) -> float:
    """Work of pressing between two moments: the integral of V dp, V as the mean of both."""
    return math.fsum(
        0.5 * (first.volume_m3(zone) + then.volume_m3(zone)) * (then.rises_pa[zone] - first.rises_pa[zone])
        for first, then in zip(before, after, strict=True)
        for zone in first.masses_kg
    )
