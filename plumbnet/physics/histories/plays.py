"""Heated zones to the orders in which they may warm, each played, and what the worst of them brings each zone to."""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from itertools import islice, permutations
from typing import Generic

from plumbnet.budgets import MOST_LEVELLED, ORDERS
from plumbnet.physics.histories.neighbours import Neighbours
from plumbnet.physics.histories.push import Zone

MOST_ORDERED = 5
"""Heated zones of which every order is played: 120 orders. Of more, the orders that are usually the worst."""

_SAME = 1e-12
"""Share of a pressure that rounding leaves: of histories that come equally high the first is told."""

_ALIKE = 1e-5
"""Share of a pressure, a pascal or some, by which orders may differ and still all come to the same."""

History = tuple[tuple[Zone, ...], ...]
"""Heated zones in the order in which they warm; those in one stage warm together."""

Reached = tuple[float, History[Zone], bool]
"""What a zone comes to, by which history, and whether every order brings it there."""


@dataclass
class Plays(Generic[Zone]):
    """The orders of one company, played one after another as far as they are asked for. Absolute, at datum."""

    neighbours: Neighbours[Zone]
    company: tuple[Zone, ...]
    _states: dict[tuple[Zone, ...], dict[Zone, float]] = field(default_factory=dict)
    _best: dict[Zone, tuple[float, tuple[Zone, ...]]] = field(default_factory=dict)
    _lowest: dict[Zone, float] = field(default_factory=dict)

    def __post_init__(self) -> None:
        """Nothing is warm."""
        cold = self.neighbours.cold
        self._states[()] = cold
        self._best = {zone: (cold[zone], ()) for zone in self.company}
        self._lowest = dict.fromkeys(self.company, math.inf)

    def passes(self, zone: Zone, level_abs_pa: float) -> bool:
        """Whether an order that is played brings a zone above a level; no more are played than it takes to tell."""
        return self._best[zone][0] > level_abs_pa or any(self._best[zone][0] > level_abs_pa for _ in self._to_play)

    @cached_property
    def reached(self) -> Mapping[Zone, Reached[Zone]]:
        """What the worst order brings each zone to."""
        for _ in self._to_play:
            pass
        return {
            zone: (level, tuple((each,) for each in order), self._lowest[zone] >= level * (1.0 - _ALIKE))
            for zone, (level, order) in self._best.items()
        }

    @cached_property
    def _to_play(self) -> Iterator[None]:
        """Plays the next order each time it is asked."""
        return self._played()

    def _played(self) -> Iterator[None]:
        lifted = sum(len(self.neighbours.reach(zone)) for zone in self.company)
        most = None if len(self.company) <= MOST_ORDERED else max(1, ORDERS // lifted)
        for order in islice(self._orders(), most):
            self.neighbours.budget.spend(lifted)
            state = self._after(order)
            for zone in self.company:
                self._lowest[zone] = min(self._lowest[zone], state[zone])
                if state[zone] > self._best[zone][0] * (1.0 + _SAME):
                    self._best[zone] = (state[zone], order)
            yield
        self._states.clear()  # no order is left that could begin as one of these

    def _after(self, order: tuple[Zone, ...]) -> dict[Zone, float]:
        """The state after an order; how it begins is looked up where it has been played, of few zones."""
        neighbours = self.neighbours
        known = next(count for count in range(len(order), -1, -1) if order[:count] in self._states)
        state = self._states[order[:known]]
        for count, zone in enumerate(order[known:], known + 1):
            state = neighbours.after(state, zone, neighbours.growth_m3[zone])
            if len(order) <= MOST_LEVELLED:
                self._states[order[:count]] = state
        return state

    def _orders(self) -> Iterator[tuple[Zone, ...]]:
        """Every order of few; of many, for each zone those that are usually its worst.

        First those that have nothing to do with it, then from the top those that push into it or into its reach, and
        what lies beyond it before them or after; itself last.  Source: own trials on random networks.
        """
        if len(self.company) <= MOST_ORDERED:
            yield from permutations(self.company)
            return
        reach_of = self.neighbours.reach
        depth = {zone: sum(zone in reach_of(other) for other in self.company) for zone in self.company}
        downward = sorted(self.company, key=lambda zone: depth[zone])
        for zone in self.company:
            reach = reach_of(zone)
            above = [each for each in downward if zone in reach_of(each) and each not in reach]
            beside = [each for each in downward if each not in reach and each not in above]
            below = [each for each in reversed(downward) if each in reach and each != zone]
            yield (*beside, *above, *below, zone)
            yield (*beside, *below, *above, zone)
            yield (*beside, *reversed(above), *below, zone)
