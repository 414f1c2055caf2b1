"""Zones that push into each other through one-way gates, and what they come to when one of them grows."""

import math
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from typing import Generic

from networkx.utils import UnionFind

from plumbnet.budgets import MOST_LEVELLED, MOST_NARROWED, MOST_PAIRS, Budget
from plumbnet.physics.equilibrium import OneWayGate, ZoneLoad
from plumbnet.physics.histories.push import Gates, Pushes, Zone, as_felt, let_go_abs_pa, lifted_abs_pa
from plumbnet.physics.vessels import settled_abs_pa

State = Mapping[Zone, float]
"""The pressure of every zone, absolute at datum, while some of the heaters have warmed."""

_SAME_PA = 1e-3
"""Pressures closer than this are one: sums of the same few numbers in another order."""


class Pushers(dict[Zone, tuple[Zone, ...]]):
    """The heated zones that can push into each zone; none where it has no entry."""

    def __missing__(self, zone: Zone) -> tuple[Zone, ...]:
        return ()


@dataclass(frozen=True)
class Neighbours(Generic[Zone]):
    """Zones with what they have to take up, and the gates between them. Pressures are absolute and stand at datum."""

    loads: Mapping[Zone, ZoneLoad]
    gates: Sequence[OneWayGate[Zone]]
    _reach: dict[Zone, dict[Zone, Pushes]] = field(default_factory=dict, repr=False, compare=False)
    _taken: dict[tuple[Zone, float], float] = field(default_factory=dict, repr=False, compare=False)
    _warm: Sequence[Zone] | None = field(default=None, repr=False, compare=False)
    budget: Budget = field(default_factory=Budget, repr=False, compare=False)

    def with_tanks(self, loads: Mapping[Zone, ZoneLoad]) -> "Neighbours[Zone]":
        """The same zones, gates and growth with other tanks; all that does not rest on these is kept."""
        other = self.warmed(loads, ())
        for name in ("growth_m3", "pushers", "_joined", "_companies"):
            other.__dict__[name] = getattr(self, name)
        return other

    def warmed(self, loads: Mapping[Zone, ZoneLoad], warm: Sequence[Zone]) -> "Neighbours[Zone]":
        """The same zones, gates and tanks with other growth, and none but in the zones `warm`, in their order."""
        other = Neighbours(loads, self.gates, self._reach, _warm=warm, budget=self.budget)
        for name in ("cold", "_let_go", "_out", "_rank"):
            other.__dict__[name] = getattr(self, name)
        return other

    def in_order(self, zones: Collection[Zone]) -> list[Zone]:
        """Some zones in the order in which all stand."""
        return sorted(zones, key=self._rank.__getitem__)

    def reach(self, zone: Zone) -> Mapping[Zone, Pushes]:
        """All zones into which the growth of a zone can push, itself first, and by which gates."""
        if zone not in self._reach:
            self._reach[zone] = self._out.pushes(zone)
        return self._reach[zone]

    @cached_property
    def cold(self) -> dict[Zone, float]:
        """The state in which nothing is warm."""
        return {zone: load.static_abs_pa for zone, load in self.loads.items()}

    @cached_property
    def growth_m3(self) -> dict[Zone, float]:
        """What each heated zone grows by, if it can rise at all: one that an open way out holds cannot."""
        return {
            zone: load.expansion_m3
            for zone in (self.loads if self._warm is None else self._warm)
            if (load := self.loads[zone]).expansion_m3 > 0.0
            and self.lets_go_abs_pa(zone) > load.static_abs_pa + _SAME_PA
        }

    def lets_go_abs_pa(self, zone: Zone) -> float:
        """Pressure of a zone at which an outlet in its reach lets out all that comes; infinite where none does."""
        return self._let_go[zone]

    @cached_property
    def _let_go(self) -> dict[Zone, float]:
        own = {
            zone: load.opens_abs_pa if load.outlet_abs_pa < math.inf else math.inf for zone, load in self.loads.items()
        }
        return let_go_abs_pa(own, self.gates)

    def after(self, state: State[Zone], zone: Zone, growth_m3: float) -> dict[Zone, float]:
        """The state once a zone has grown by so much more. Exact: what it pushes away fills tanks, zone by zone.

        Source: own derivation. Every zone in its reach comes to what the pushing zone lifts it to, and no further; so
        the level of the pushing zone is the one at which the tanks have taken the growth.
        """
        if growth_m3 <= 0.0:
            return dict(state)
        reach = self.reach(zone)
        felt = [
            one
            for far, pushes in reach.items()
            if state[far] < math.inf
            for tank in self.loads[far].tanks
            for one in as_felt(tank, pushes, state[far])
        ]
        level = settled_abs_pa(growth_m3, felt)
        level = max(state[zone], min(math.inf if level is None else level, self.lets_go_abs_pa(zone)))
        return {**state, **{far: max(state[far], lifted_abs_pa(pushes, level)) for far, pushes in reach.items()}}

    def room_m3(self, zone: Zone, start_abs_pa: float, end_abs_pa: float) -> float:
        """What the tanks of a zone take between two pressures, its outlet shut."""
        return max(0.0, self._taken_m3(zone, end_abs_pa) - self._taken_m3(zone, start_abs_pa))

    @cached_property
    def pushers(self) -> "Pushers[Zone]":
        """For each zone the heated zones whose growth can push into it, itself included."""
        found: dict[Zone, list[Zone]] = {}
        for heated in self.growth_m3:
            for far in self.reach(heated):
                found.setdefault(far, []).append(heated)
        return Pushers({zone: tuple(heated) for zone, heated in found.items()})

    def company(self, zone: Zone) -> tuple[Zone, ...]:
        """The heated zones whose growth comes to the same zones as that of a heated zone, and so on; with itself."""
        return self._companies[self._joined[zone]]

    def is_narrowed(self, company: Sequence[Zone]) -> bool:
        """Whether ceilings of a company may be narrowed in rounds: of few zones, or of which few push into others."""
        if not MOST_NARROWED < len(company) <= MOST_LEVELLED:
            return len(company) <= MOST_NARROWED
        reaches = ((zone, self.reach(zone)) for zone in company)
        return sum(other in reach for zone, reach in reaches for other in company if other != zone) <= MOST_PAIRS

    @cached_property
    def _joined(self) -> "UnionFind[Zone]":
        joined: UnionFind[Zone] = UnionFind()
        for heated in self.growth_m3:
            joined.union(*self.reach(heated))
        return joined

    @cached_property
    def _companies(self) -> dict[Zone, tuple[Zone, ...]]:
        found: dict[Zone, list[Zone]] = {}
        for heated in self.growth_m3:
            found.setdefault(self._joined[heated], []).append(heated)
        return {root: tuple(zones) for root, zones in found.items()}

    @cached_property
    def _rank(self) -> dict[Zone, int]:
        return {zone: number for number, zone in enumerate(self.loads)}

    @cached_property
    def _out(self) -> Gates[Zone]:
        return Gates.of(self.gates)

    def _taken_m3(self, zone: Zone, abs_pa: float) -> float:
        """What the tanks of a zone have taken at a pressure; a search asks for the same few again and again."""
        if not self.loads[zone].tanks:
            return 0.0
        if (zone, abs_pa) not in self._taken:
            self._taken[zone, abs_pa] = math.fsum(tank.uptake_m3(abs_pa) for tank in self.loads[zone].tanks)
        return self._taken[zone, abs_pa]
