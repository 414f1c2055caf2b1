"""A closed heater left as it is; how much it warms until an outlet lifts, how soon that is, and what is let out."""

import math
from collections.abc import Sequence

from plumbnet.analysis.equilibrium import SharedTanks, cold_k, heated_abs_pa
from plumbnet.layout.model import Role
from plumbnet.network import Network
from plumbnet.network.loops import HeatedVolume
from plumbnet.network.outlets import Rung
from plumbnet.network.piping import Zone
from plumbnet.physics.fluids import ATMOSPHERE_PA, OutsideWater
from plumbnet.physics.vessels import (
    BREAKS_PA,
    USUAL_EFFICIENCY,
    Bracket,
    Climb,
    LockedVolume,
    discharged_m3,
    locked_rise_k,
)
from plumbnet.rules.facts import LockedFacts


def locked(
    network: Network, heated: HeatedVolume, zone: Zone, rungs: Sequence[Rung], settling: SharedTanks
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
    heaters = settling.loading.heaters(zones)
    if any(one.source.mixture is not None for one in heaters):
        return None
    opens_abs_pa = opens_pa + ATMOSPHERE_PA
    try:
        water = _water(network, heated, zones, settling)
        taken_m3 = _taken_m3(settling, zones, opens_abs_pa + head_pa)
        climb = Climb(water, opens_abs_pa, heated.source.hot_k, taken_m3)
        rises = Bracket(locked_rise_k(climb.rigid), locked_rise_k(climb))
    except OutsideWater:
        return None
    if rises.rigid > heated.source.hot_k - water.cold_k:
        return None
    discharges = first is not None and not first.role.is_way_out
    inputs = [one.source.input_w for one in heaters]
    return LockedFacts(
        outlet=None if first is None else first.site.part,
        opens_pa=opens_pa,
        rise_k=rises,
        firing_s=_firing_s(water, rises, inputs),
        discharged_m3=Bracket(discharged_m3(climb.rigid), discharged_m3(climb)) if discharges else None,
    )


def _firing_s(water: LockedVolume, rises: Bracket, inputs: Sequence[float | None]) -> Bracket | None:
    """Time in which the burners together raise the water so much; None where one of them is not known."""
    known = [each for each in inputs if each is not None]
    if len(known) < len(inputs) or sum(known) <= 0.0:
        return None

    def firing_s(rise_k: float) -> float:
        if not math.isfinite(rise_k):
            return rise_k
        return water.firing_s(rise_k, input_w=sum(known), efficiency=USUAL_EFFICIENCY)

    return Bracket(firing_s(rises.rigid), firing_s(rises.walls))


def _water(network: Network, heated: HeatedVolume, zones: frozenset[Zone], settling: SharedTanks) -> LockedVolume:
    warm, cold = settling.loading.shells(zones)
    zone = network.zoning.zone_of[heated.inlet]
    own_abs_pa = heated_abs_pa(network, heated)
    return LockedVolume(heated=warm, unheated=cold, cold_k=cold_k(network, zone), start_abs_pa=own_abs_pa)


def _taken_m3(settling: SharedTanks, zones: frozenset[Zone], datum_abs_pa: float) -> float:
    """Water that the tanks of the zones take until the outlet opens."""
    return math.fsum(tank.uptake_m3(datum_abs_pa) for _, tank in settling.loading.tanks(zones))
