"""A closed heater left as it is; how much it warms until an outlet lifts, how soon that is, and what is let out."""

import math
from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from plumbnet.analysis.equilibrium import Settling, cold_k, heated_abs_pa
from plumbnet.layout.model import Role
from plumbnet.network import Network
from plumbnet.network.loops import Heated
from plumbnet.network.outlets import Rung
from plumbnet.network.piping import Zone
from plumbnet.physics.fluids import ATMOSPHERE_PA, OutsideWater, specific_volume_m3_kg
from plumbnet.physics.vessels import BREAKS_PA, USUAL_EFFICIENCY, Bracket, Locked, joined_shells
from plumbnet.rules import LockedFacts

_STEP_K = 1e-9
"""A rise in temperature is found among the multiples of this, by halving."""


def locked(
    network: Network, heated: Heated, zone: Zone, rungs: Sequence[Rung], settling: Settling
) -> LockedFacts | None:
    """What comes of a trapped or sealed heater's water in a zone if nothing is done, from rigid walls to typical ones.

    All water that settles with it warms alike, and all its burners fire. None where no outlet lifts before all is
    hot, and where what is heated is no plain water. Where nothing can lift, it asks for the pressure to which a
    heater is tested.
    """
    first = next((rung for rung in rungs if rung.role is not Role.TANK), None)
    head_pa = network.piping.heads_pa[heated.inlet]
    opens_pa = BREAKS_PA if first is None else max(first.opens_pa, network.start_pa(zone)) - head_pa
    zones = settling.share(zone).zones
    heaters = {one.name: one for member in sorted(zones) for one in network.heated_in.get(member, ())}
    if any(one.source.mixture is not None for one in heaters.values()):
        return None
    opens_abs_pa = opens_pa + ATMOSPHERE_PA
    try:
        water = _water(network, heated, zones, settling)
        taken_m3 = _taken_m3(settling, zones, opens_abs_pa + head_pa)
        case = _Case(water, opens_abs_pa, heated.source.hot_k, taken_m3)
        rises = Bracket(_rise_k(case.rigid), _rise_k(case))
    except OutsideWater:
        return None
    if rises.rigid > heated.source.hot_k - water.cold_k:
        return None
    discharges = first is not None and not first.role.is_way_out
    inputs = [one.source.input_w for one in heaters.values()]
    return LockedFacts(
        outlet=None if first is None else first.site.part,
        opens_pa=opens_pa,
        rise_k=rises,
        firing_s=_firing_s(water, rises, inputs),
        discharged_m3=Bracket(_discharged_m3(case.rigid), _discharged_m3(case)) if discharges else None,
    )


@dataclass(frozen=True, slots=True)
class _Case:
    """Locked water, the pressure it climbs to, the temperature it is heated to and what tanks take until then."""

    water: Locked
    opens_abs_pa: float
    hot_k: float
    taken_m3: float

    @property
    def rigid(self) -> "_Case":
        return _Case(self.water.rigid, self.opens_abs_pa, self.hot_k, self.taken_m3)

    def room_left_kg(self, temperature_k: float) -> float:
        """Water that would still find room at the opening pressure."""
        fits = self.water.fits_kg(temperature_k, pressure_abs_pa=self.opens_abs_pa)
        return fits + self.taken_m3 / self._volume_m3_kg(temperature_k) - self.water.water_kg

    def out_m3(self, temperature_k: float) -> float:
        """Water that finds no room, as hot as it is."""
        return max(0.0, -self.room_left_kg(temperature_k)) * self._volume_m3_kg(temperature_k)

    def _volume_m3_kg(self, temperature_k: float) -> float:
        return specific_volume_m3_kg(temperature_k, pressure_abs_pa=self.opens_abs_pa)


@lru_cache(maxsize=4096)
def _rise_k(case: _Case) -> float:
    """Rise in temperature that fills all room at the opening pressure; infinite where being hot does not."""
    cold_k = case.water.cold_k
    if case.opens_abs_pa <= case.water.start_abs_pa or case.room_left_kg(cold_k) <= 0.0:
        return 0.0
    if case.hot_k <= cold_k or case.room_left_kg(case.hot_k) > 0.0:
        return math.inf
    steps = range(math.ceil((case.hot_k - cold_k) / _STEP_K))
    return _STEP_K * bisect_left(steps, True, key=lambda step: case.room_left_kg(cold_k + _STEP_K * step) <= 0.0)  # noqa: FBT003  what is looked for


@lru_cache(maxsize=4096)
def _discharged_m3(case: _Case) -> float:
    return case.out_m3(case.hot_k)


def _firing_s(water: Locked, rises: Bracket, inputs: Sequence[float | None]) -> Bracket | None:
    """Time in which the burners together raise the water so much; None where one of them is not known."""
    known = [each for each in inputs if each is not None]
    if len(known) < len(inputs) or sum(known) <= 0.0:
        return None

    def firing_s(rise_k: float) -> float:
        if not math.isfinite(rise_k):
            return rise_k
        return water.firing_s(rise_k, input_w=sum(known), efficiency=USUAL_EFFICIENCY)

    return Bracket(firing_s(rises.rigid), firing_s(rises.walls))


def _water(network: Network, heated: Heated, zones: frozenset[Zone], settling: Settling) -> Locked:
    warm = {
        piece.name: settling.loading.water.pieces[piece.name].shell
        for member in sorted(zones)
        for one in network.heated_in.get(member, ())
        for piece in one.pieces
        if network.zoning.zone_of[piece.node] in zones
    }
    cold = (shell for member in sorted(zones) for shell in settling.loading.water.beside(warm, member))
    zone = network.zoning.zone_of[heated.inlet]
    own_abs_pa = heated_abs_pa(network, heated)
    return Locked(
        heated=joined_shells(warm.values()),
        unheated=joined_shells(cold),
        cold_k=cold_k(network, zone),
        start_abs_pa=own_abs_pa,
    )


def _taken_m3(settling: Settling, zones: frozenset[Zone], datum_abs_pa: float) -> float:
    """Water that the tanks of the zones take until the outlet opens."""
    return math.fsum(tank.uptake_m3(datum_abs_pa) for _, tank in settling.loading.tanks(zones))
