"""Where all water of a layout settles, by a formula over all parts of it that stand together.

Water passes a gate from the near to the far zone while the near one stands higher by what opens it. So, at rest, no
near zone stands higher than that, and each zone stands where what it takes up is what it grows by. With the far
zone of each gate thought lower by what opens it, this is the isotonic regression of convex functions on a partial
order, whose solution is a minimax over sets of zones (Robertson, Wright and Dykstra, "Order Restricted Statistical
Inference", 1988, theorem 1.4.4; from memory): of all sets that hold a zone and every zone beyond it the highest,
over all sets that hold it and every zone before it the lowest, of the level at which what both sets have in common
would take up its own growth.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from itertools import combinations

import numpy as np
from numpy.typing import NDArray

Levels = NDArray[np.float64]

MOST_LEFT_OUT = 3
"""Gates that are left out at the most."""
MOST_ZONES = 10
"""Zones that settle together of which all sets are still tried."""
_FREELY = 1e3  # cubic metres that an outlet lets off, or a supply lets in, for each pascal too much or too little
_HIGHEST_PA = 1e9
_HALVINGS = 75
_NOTHING_M3 = 1e-15
SAME_PA = 1e-2


@dataclass(frozen=True)
class Cushioned:
    """A tank's shell, its charge absolute, the most water it lets in, and the head of its height."""

    shell_m3: float
    charge_abs_pa: float
    most_m3: float
    head_pa: float

    def water_m3(self, abs_pa: Levels) -> Levels:
        """Water in it, by Boyle's law, at absolute pressures at datum."""
        at_tank = np.maximum(abs_pa - self.head_pa, self.charge_abs_pa)
        return np.minimum(self.most_m3, self.shell_m3 * (1.0 - self.charge_abs_pa / at_tank))


@dataclass(frozen=True)
class Basin:
    """A zone: its pressure cold, absolute at datum, its growth, its tanks, and where its first outlet opens."""

    start_abs_pa: float
    growth_m3: float
    tanks: tuple[Cushioned, ...] = ()
    outlet_abs_pa: float = float("inf")

    def taken_m3(self, abs_pa: Levels) -> Levels:
        """Water its tanks take up beyond what they hold cold."""
        cold = np.full_like(abs_pa, self.start_abs_pa)
        taken = [np.maximum(0.0, tank.water_m3(abs_pa) - tank.water_m3(cold)) for tank in self.tanks]
        return np.sum(taken, axis=0) if taken else np.zeros_like(abs_pa)

    def excess_m3(self, abs_pa: Levels) -> Levels:
        """What it could take beyond its growth; its outlet and its supply give way but a little."""
        let_off = _FREELY * np.maximum(0.0, abs_pa - max(self.outlet_abs_pa, self.start_abs_pa))
        let_in = _FREELY * np.maximum(0.0, self.start_abs_pa - abs_pa)
        return self.taken_m3(abs_pa) + let_off - let_in - self.growth_m3


@dataclass(frozen=True)
class Passing:
    """Water passes from `near` to `far` above `opens_pa` of difference, the far side standing below `below_abs_pa`."""

    near: int
    far: int
    opens_pa: float
    below_abs_pa: float

    @property
    def is_reducer(self) -> bool:
        """Whether it ever shuts by itself."""
        return self.below_abs_pa < float("inf")


class NoHeights(ValueError):
    """Gates with several opening pressures between the same zones, in more circles than are tried."""


class TooMany(ValueError):
    """More zones than all sets of which can be tried."""


@dataclass(frozen=True)
class Rest:
    """Settled levels, absolute at datum, infinite where nothing holds it; with what reducers let through counted in."""

    basins: Mapping[int, Basin]
    levels: Mapping[int, float]
    lifts_pa: Mapping[int, float]
    gates: tuple[Passing, ...]
    """Those that have not shut."""
    all_gates: tuple[Passing, ...] = ()

    def pool(self, zone: int) -> set[int]:
        """Zones that stand at one level with a zone, joined by gates at which nothing is lost but what opens them."""
        found, waiting = {zone}, [zone]
        while waiting:
            at = waiting.pop()
            for gate in self.gates:
                if at in {gate.near, gate.far} and self._is_level(gate):
                    waiting += {gate.near, gate.far} - found
                    found |= {gate.near, gate.far}
        return found

    def beyond(self, zone: int) -> set[int]:
        """Zones of its pool to which water of a zone can come, itself included."""
        found = {zone}
        while more := {g.far for g in self.gates if g.near in found and self._is_level(g)} - found:
            found |= more
        return found

    def at(self, zone: int, level_pa: float) -> float:
        """The pressure of a zone, as it is with what checks lose left out of account in all of its pool."""
        return level_pa + self.lifts_pa[zone]

    def takes_m3(self, zone: int, level_pa: float) -> float:
        """What the tanks of a zone take up to a level of its pool."""
        return float(self.basins[zone].taken_m3(np.array([level_pa - self.lifts_pa[zone]]))[0])

    def _is_level(self, gate: Passing) -> bool:
        near, far = (self.at(zone, self.levels[zone]) for zone in (gate.near, gate.far))
        return near == far or abs(near - far) < SAME_PA


def at_rest(basins: Mapping[int, Basin], gates: tuple[Passing, ...]) -> Rest:
    """All zones settled, at pressures that no order of heating surpasses.

    Where gates of several opening pressures join the same zones, some are left out, for not all of them can stand
    open at once; if the zones then settle where those left out are shut, that is how all of them settle: the energy
    of fewer bounds, least where the others hold too, is the least within all. Raises NoHeights, TooMany.
    """
    for count in range(MOST_LEFT_OUT + 1):
        for left_out in combinations(gates, count):
            try:
                rest = _at_rest(basins, tuple(gate for gate in gates if gate not in left_out))
            except NoHeights:
                continue
            if not any(_must_pass(rest, gate) for gate in left_out):
                return replace(rest, all_gates=gates)
    raise NoHeights


def _must_pass(rest: Rest, gate: Passing) -> bool:
    near, far = rest.levels[gate.near], rest.levels[gate.far]
    return far < gate.below_abs_pa and near > far + gate.opens_pa + SAME_PA


def _at_rest(basins: Mapping[int, Basin], gates: tuple[Passing, ...]) -> Rest:
    """All zones settled over gates that can all stand open at once.

    A reducer whose far side settles at its set or above shuts: the water before it may have warmed last and found it
    shut, or first and filled what lies beyond up to the set. Raises NoHeights, TooMany.
    """
    lifts, all_gates = _lifts(basins, gates), gates
    while True:
        levels = _levels(basins, gates, lifts)
        shut = [gate for gate in gates if gate.is_reducer and gate.below_abs_pa <= levels[gate.far] + SAME_PA / 10]
        if not shut:
            return Rest(basins, levels, lifts, gates, all_gates)
        passed = [(gate.far, _passes_m3(basins, gates, lifts, gate)) for gate in shut]
        filled = dict(basins)
        for zone, volume_m3 in passed:
            filled[zone] = replace(filled[zone], growth_m3=filled[zone].growth_m3 + volume_m3)
        basins, gates = filled, tuple(gate for gate in gates if gate not in shut)


def _passes_m3(
    basins: Mapping[int, Basin], gates: tuple[Passing, ...], lifts: Mapping[int, float], reducer: Passing
) -> float:
    """The most that comes through a reducer: all that grows before it, or all that finds room beyond below its set."""
    before = _spread(reducer.near, [(gate.far, gate.near) for gate in gates], without=reducer.far)
    beyond = _spread(reducer.far, [(gate.near, gate.far) for gate in gates], without=reducer.near)
    level = reducer.below_abs_pa + lifts[reducer.far]
    filled = Rest(basins, {}, lifts, gates)
    room = sum(filled.takes_m3(zone, level) for zone in beyond)
    return min(room, sum(basins[zone].growth_m3 for zone in before))


def _spread(start: int, joints: list[tuple[int, int]], without: int | None = None) -> set[int]:
    found, waiting = {start}, [start]
    while waiting:
        at = waiting.pop()
        beyond = {other for one, other in joints if one == at and other != without} - found
        found |= beyond
        waiting += beyond
    return found


def _lifts(basins: Mapping[int, Basin], gates: Iterable[Passing]) -> dict[int, float]:
    """How much higher each zone is thought, so that gates open at once; of gates side by side the easiest counts."""
    easiest: dict[tuple[int, int], float] = {}
    for gate in gates:
        pair = (gate.near, gate.far)
        easiest[pair] = min(gate.opens_pa, easiest.get(pair, gate.opens_pa))
    lifts: dict[int, float] = {}
    for first in basins:
        lifts.setdefault(first, 0.0)
        for _ in basins:
            for (near, far), opens_pa in easiest.items():
                if near in lifts:
                    lifts.setdefault(far, lifts[near] + opens_pa)
                elif far in lifts:
                    lifts[near] = lifts[far] - opens_pa
    if any(abs(lifts[far] - lifts[near] - opens_pa) > SAME_PA for (near, far), opens_pa in easiest.items()):
        raise NoHeights
    return lifts


def _levels(basins: Mapping[int, Basin], gates: tuple[Passing, ...], lifts: Mapping[int, float]) -> dict[int, float]:
    """The minimax over sets, for each group of zones that gates join."""
    found: dict[int, float] = {}
    both_ways = [(gate.near, gate.far) for gate in gates] + [(gate.far, gate.near) for gate in gates]
    for first in basins:
        if first not in found:
            group = sorted(_spread(first, both_ways))
            if len(group) > MOST_ZONES:
                raise TooMany(len(group))
            found |= _minimax(group, basins, gates, lifts)
    return found


def _minimax(
    group: list[int], basins: Mapping[int, Basin], gates: tuple[Passing, ...], lifts: Mapping[int, float]
) -> dict[int, float]:
    count = len(group)
    sets = np.arange(1 << count)
    member = (sets[:, None] >> np.arange(count)) & 1 == 1
    beyond = np.ones(len(sets), dtype=bool)
    for gate in gates:
        if gate.near in group:
            beyond &= ~member[:, group.index(gate.near)] | member[:, group.index(gate.far)]
    upper = sets[beyond]
    lower = sets[beyond[::-1]]  # the complement of a set stands at the mirrored place
    wanted = np.unique(upper[:, None] & lower[None, :])
    level_of = np.zeros(len(sets))
    level_of[wanted] = _common_levels(member[wanted], group, basins, lifts)
    found = {}
    for place, zone in enumerate(group):
        own_lower = lower[(lower >> place) & 1 == 1]
        lowest = [level_of[one & own_lower].min() for one in upper[(upper >> place) & 1 == 1]]
        found[zone] = float(max(lowest)) - lifts[zone]
    return found


def _common_levels(
    member: NDArray[np.bool_], group: list[int], basins: Mapping[int, Basin], lifts: Mapping[int, float]
) -> Levels:
    """The lowest level at which each set of zones takes up its growth; infinite where it never does."""
    low, high = np.zeros(len(member)), np.full(len(member), _HIGHEST_PA)

    def is_held(level: Levels) -> NDArray[np.bool_]:
        excess = [basins[zone].excess_m3(level - lifts[zone]) for zone in group]
        total: Levels = np.sum(np.where(member, np.array(excess).T, 0.0), axis=1)
        return total >= -_NOTHING_M3

    never = ~is_held(high)
    for _ in range(_HALVINGS):
        middle = (low + high) / 2.0
        held = is_held(middle)
        low, high = np.where(held, low, middle), np.where(held, middle, high)
    return np.where(never, np.inf, high)
