"""A heat source to the temperatures and the pressure between which its water warms, and what that grows by."""

from plumbnet.layout.model.kinds import COLD_SUPPLY_K
from plumbnet.layout.units import PRESSURE, TEMPERATURE, Units, show
from plumbnet.network import Network
from plumbnet.network.loops import HeatedVolume
from plumbnet.network.piping import Zone
from plumbnet.physics.fluids import (
    ATMOSPHERE_PA,
    HIGHEST_K,
    HIGHEST_PA,
    LOWEST_K,
    GlycolMissing,
    OutsideGlycol,
    OutsideWater,
    glycol_growth,
    growth,
)


class Unanswerable(ValueError):
    """A heater of which nothing can be computed; `heater` names it, the text says why."""

    def __init__(self, heater: str, text: str) -> None:
        super().__init__(text)
        self.heater = heater

    def __reduce__(self) -> tuple[type["Unanswerable"], tuple[str, str]]:
        """What it takes to make the same again, in another process too."""
        return type(self), (self.heater, str(self))


def grows_m3(network: Network, heated: HeatedVolume, volume_m3: float, hot_k: float | None = None) -> float:
    """Growth of a volume that a heat source warms, from the coldest supply of its zone to its setpoint, or to `hot_k`.

    Raises Unanswerable where the properties of what it warms are not known at these temperatures.
    """
    try:
        return volume_m3 * _growth(network, heated, heated.source.hot_k if hot_k is None else hot_k)
    except (GlycolMissing, OutsideGlycol) as error:
        raise Unanswerable(heated.name, str(error)) from error
    except OutsideWater as error:
        raise Unanswerable(heated.name, unknown_water(error, network.piping.system.units)) from error


def unknown_water(error: OutsideWater, units: Units) -> str:
    """Why nothing is known of water in a state, in the units of its author, and where to look."""
    if error.pressure_abs_pa is not None:
        pressures = (error.pressure_abs_pa, 0.0, HIGHEST_PA)
        stands, low, high = (show(one - ATMOSPHERE_PA, PRESSURE, units, 4) for one in pressures)
        known = f"is known from {low} to {high}"
        return f"its water would stand at {stands}, and {known}; look at the pressures and the heights"
    if error.temperature_k is not None:
        at, low, high = (show(one, TEMPERATURE, units, 4) for one in (error.temperature_k, LOWEST_K, HIGHEST_K))
        return f"its water would be at {at}, and is known from {low} to {high}; look at the temperatures of its supply"
    return str(error)


def _growth(network: Network, heated: HeatedVolume, hot_k: float) -> float:
    zone, mixture = network.zoning.zone_of[heated.inlet], heated.source.mixture
    if mixture is not None:
        return glycol_growth(mixture.glycol, mixture.share, cold_k(network, zone), hot_k)
    return growth(cold_k(network, zone), hot_k, pressure_abs_pa=heated_abs_pa(network, heated))


def heated_abs_pa(network: Network, heated: HeatedVolume) -> float:
    """Static pressure at a heat source, absolute, at its own height."""
    at_datum_pa = network.start_pa(network.zoning.zone_of[heated.inlet])
    return at_datum_pa - network.piping.heads_pa[heated.inlet] + ATMOSPHERE_PA


def cold_k(network: Network, zone: Zone) -> float:
    """Temperature at which a zone was filled; the usual one where no supply reaches it."""
    cold = network.standing.cold_k[zone]
    return COLD_SUPPLY_K if cold is None else cold
