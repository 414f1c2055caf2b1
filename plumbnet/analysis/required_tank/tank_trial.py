"""A closed heater's case to the tank it needs: tried in its neighbourhood, the least that holds all it serves."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

from plumbnet.analysis.equilibrium import Limits, Neighbourhood, ZoneLoads, broken_places
from plumbnet.analysis.required_tank.charge import right_charge_pa
from plumbnet.analysis.required_tank.tank_task import ALWAYS, Task, charge_pa, nominal_m3, tank_answer
from plumbnet.budgets import MOST_LEVELLED, Spent
from plumbnet.layout.model import System
from plumbnet.network import Network
from plumbnet.network.loops import HeatedVolume
from plumbnet.network.piping import Node, Zone
from plumbnet.physics.fluids import ATMOSPHERE_PA
from plumbnet.physics.numerics import CLOSE, least
from plumbnet.physics.sizing import Sizing
from plumbnet.physics.vessels import Tank
from plumbnet.rules.facts import Charge, Need

_LARGEST = 1e5
"""A tank so many times the growth does what any tank can."""
_TIGHT = 0.99
"""What a tank is lessened by to see that it is the least."""
_GUESSED = 1e-4
"""A formula's answer is the least tank if one smaller by this share no longer holds: pressures are compared to 1 Pa."""
_SAME_PA = 1.0


@dataclass(frozen=True)
class TankTrial:
    """A place for a tank, the heaters that it is to hold, and the water it stands in."""

    network: Network
    limits: Limits
    neighbourhood: Neighbourhood
    task: Task
    method: str
    heaters: tuple[HeatedVolume, ...]
    loading: ZoneLoads

    def need(self) -> Need:
        """The tank that the place asks for; of no size where no tank there holds them."""
        return self._need

    @cached_property
    def _need(self) -> Need:
        least_m3 = self.least_m3
        asked_m3 = None if self._beside or self.method == ALWAYS or least_m3 is None else self.asked_m3
        if asked_m3 is not None and asked_m3 <= (least_m3 or 0.0) * (1.0 + CLOSE):
            asked_m3 = None
        size_m3 = None if least_m3 is None else max(least_m3, asked_m3 or 0.0)
        return Need(
            tank_m3=least_m3,
            nominal_m3=None if size_m3 is None else nominal_m3(size_m3, self._system),
            precharge_pa=self.charge_pa,
            at=self.task.place.name,
            why=self.task.place.why,
            serves=tuple(heated.name for heated in self.heaters),
            asked_m3=asked_m3,
            method=self.method if asked_m3 is not None else "",
            beside=tuple(self._beside),
            recharge=tuple(self._recharge()),
            is_tight=self._found[1],
            is_left_out=self.is_left_out,
        )

    @cached_property
    def names(self) -> frozenset[str]:
        """Names of the heaters."""
        return frozenset(heated.name for heated in self.heaters)

    @property
    def least_m3(self) -> float | None:
        """The smallest tank that holds all of them; None where none does."""
        return self._found[0]

    @cached_property
    def is_left_out(self) -> bool:
        """Whether a tank may hold them though none was found: too many zones push into each other to try them all."""
        return self.least_m3 is None and (
            self.neighbourhood.budget.is_spent or not self.neighbourhood.is_narrowed(self.zone)
        )

    @cached_property
    def _found(self) -> tuple[float | None, bool]:
        """The smallest tank, and whether one hundredth less fails; none where the budget ends before one is found."""
        if self.neighbourhood.companions(self.zone) > MOST_LEVELLED:
            return None, True
        try:
            return self._sought()
        except Spent:
            return None, True

    def _sought(self) -> tuple[float | None, bool]:
        """The same, by a formula where its answer stands the trial. Raises Spent."""
        plain = self._sizings if self.method == ALWAYS else tank_answer(self.task, ALWAYS)
        by_formula = [_sum_m3(found) for found in (self._sizings, plain) if found]
        for guess_m3 in dict.fromkeys(by_formula):
            if self.holds_m3(guess_m3) and not self.holds_m3(guess_m3 * (1.0 - _GUESSED)):
                return guess_m3, True
        growth_m3 = math.fsum(self.neighbourhood.growths_m3.values())
        if growth_m3 <= 0.0 or not self.holds_m3(_LARGEST * growth_m3):
            return None, True
        least_m3 = least(self.holds_m3, (by_formula or [growth_m3])[0], floor=CLOSE * growth_m3)
        return least_m3, not self.holds_m3(least_m3 * _TIGHT)

    def holds_m3(self, volume_m3: float) -> bool:
        """Whether a tank of that size, charged as it ought to be, holds every heater in every history. Raises Spent."""
        self.neighbourhood.budget.demand()
        self.neighbourhood.budget.spend(2 * len(self._places) + 2)
        return self._holds(self.neighbourhood.with_tank(self.zone, self._tank(volume_m3)))

    @property
    def takes_m3(self) -> float:
        """What the least tank takes when its zone comes as high as it then may; nothing where there is none."""
        if self.least_m3 is None:
            return 0.0
        return self._tank(self.least_m3).uptake_m3(self._comes_to_pa(self.least_m3) + ATMOSPHERE_PA)

    def comes_to_pa(self, volume_m3: float) -> float:
        """What the tank's zone comes to with a tank of that size, gauge at the tank."""
        return self._comes_to_pa(volume_m3) - self._head_pa

    def _comes_to_pa(self, volume_m3: float) -> float:
        return self.neighbourhood.with_tank(self.zone, self._tank(volume_m3)).highest(self.zone).pressure_pa

    @property
    def zone(self) -> Zone:
        """The zone in which the tank would stand."""
        return self.network.zoning.zone_of[self.task.place.node]

    @cached_property
    def charge_pa(self) -> float:
        """What the tank is charged to, gauge at the tank: by the method, else the static pressure."""
        return max(charge_pa(self.task, self._sizings) if self._sizings else self.task.static_pa, 0.0)

    def method_charge_pa(self, tank: str) -> float | None:
        """What the method charges a tank to, gauge at that tank, never below the air; None: to the line pressure."""
        if not self._sizings or self._sizings[0].charge_abs_pa is None:
            return None
        fall_pa = self._head_pa - self.network.piping.heads_pa[next(self.network.piping.nodes_of(tank))]
        holds_air = self.charge_pa == 0.0  # a plain tank is filled from the air, at whatever height it hangs
        charge_pa = 0.0 if holds_air else max(self.charge_pa + fall_pa, 0.0)
        return charge_pa if abs(charge_pa - right_charge_pa(self.network, tank)) > _SAME_PA else None

    @property
    def _head_pa(self) -> float:
        return self.network.piping.heads_pa[self.task.place.node]

    @property
    def _system(self) -> System:
        return self.network.piping.system

    @cached_property
    def _sizings(self) -> tuple[Sizing, ...]:
        return tank_answer(self.task, self.method)

    @property
    def asked_m3(self) -> float | None:
        """What the method asks for, for all the water alone; None where it has no answer, nor Boyle's law."""
        return _sum_m3(self._sizings) if self._sizings else None

    @cached_property
    def _beside(self) -> list[str]:
        """Sound tanks into which water of one of the heaters can push."""
        zones: set[Zone] = set()
        for _, node in self._places:
            zone = self.network.zoning.zone_of[node]
            if zone not in zones:  # else all in its reach is there already
                zones |= self.neighbourhood.reach(zone).keys()
        return sorted(name for zone in zones for name in self.loading.takers_in(zone))

    @cached_property
    def _places(self) -> list[tuple[HeatedVolume, Node]]:
        """Each heater with a node of its water in every zone of this neighbourhood."""
        return [
            (heated, node)
            for heated in self.heaters
            for zone, node in self.network.places_of(heated).items()
            if zone in self.neighbourhood.zones
        ]

    def _holds(self, neighbourhood: Neighbourhood) -> bool:
        """Whether every heater is held in every zone of its water."""
        return not any(
            not neighbourhood.is_held(self.network.zoning.zone_of[node])
            or any(broken_places(self.limits, neighbourhood, heated.name, node))
            for heated, node in self._places
        )

    def _tank(self, volume_m3: float) -> Tank:
        start_abs_pa = self.network.start_pa(self.zone) + ATMOSPHERE_PA
        return Tank(volume_m3, self.charge_pa + ATMOSPHERE_PA, start_abs_pa, None, self._head_pa)

    def _recharge(self) -> Iterator[Charge]:
        """What the tanks at hand ought to be charged to, where that alone would hold all of them."""
        wrong = list(self._wrong())
        if (
            wrong
            and not self.is_left_out
            and self._holds(self.neighbourhood.charged({one.tank: one.right_pa for one in wrong}))
        ):
            yield from wrong

    def _wrong(self) -> Iterator[Charge]:
        for name in self._beside:
            right_pa, cushion = right_charge_pa(self.network, name), self._system.parts[name].cushion()
            if self.method != ALWAYS:
                by_method_pa = self.method_charge_pa(name)
                right_pa = right_pa if by_method_pa is None else by_method_pa
            if cushion is not None and abs(right_pa - cushion.precharge_pa) > _SAME_PA:
                yield Charge(name, right_pa, cushion.precharge_pa)


def _sum_m3(sizings: Sequence[Sizing]) -> float:
    return math.fsum(one.tank_m3 for one in sizings)
