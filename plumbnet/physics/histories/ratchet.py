"""Heating and cooling again and again with no tap drawn: how high zones are pumped up through one-way gates.

When a heated zone cools, the street makes up what it pushed on, and the next heat-up pushes on again. Zones beyond a
gate so come to stand, cold, as high as the zone before it comes hot, less what the gate needs to open; their own growth
comes on top of that.  Source: own derivation; beyond a zone all is in the end pumped up until it takes nothing more.
"""

import math
from collections.abc import Collection
from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import Generic

import networkx as nx

from plumbnet.budgets import PUMPED
from plumbnet.physics.equilibrium import OneWayGate
from plumbnet.physics.histories.neighbours import Neighbours
from plumbnet.physics.histories.push import Push, Zone, lifted_abs_pa
from plumbnet.physics.vessels import settled_abs_pa

MOST_ROUNDS = 1000
"""Heat-ups that are played until a limit is passed; what takes longer is said to take more."""
_SAME_PA = 1.0
_HALVINGS = 60


@dataclass(frozen=True)
class Ratchet(Generic[Zone]):
    """Zones and gates, and which zones a street makes up for when they cool. Absolute pressures, at datum.

    Zones that push into each other in a circle are left out: their water comes round again.
    """

    neighbours: Neighbours[Zone]
    fed: Collection[Zone]
    _known_above: dict[Zone, list[Zone]] = field(default_factory=dict, repr=False, compare=False)

    def top_abs_pa(self, zone: Zone) -> float:
        """What a zone approaches hot, after many heat-ups; of one in a circle, where that is not known, its rest."""
        return self._tops[zone]

    def pumps_itself(self, zone: Zone) -> bool:
        """Whether a heated zone comes higher each time: what it pushes away does not come back, and fills that up."""
        if zone not in self.neighbours.growth_m3 or zone not in self.fed or len(self._circles[zone]) > 1:
            return False
        once = self.neighbours.after(self.neighbours.cold, zone, self.neighbours.growth_m3[zone])[zone]
        return self._tops[zone] > once + _SAME_PA

    def pushers(self, zone: Zone) -> tuple[Zone, ...]:
        """Heated zones above a zone that pump it up: those that come hot higher than it stands cold."""
        above = (each for each in self.neighbours.pushers[zone] if each != zone and each in self.fed)
        return tuple(
            each
            for each in above
            if zone not in self._circles[each]
            and lifted_abs_pa(self.neighbours.reach(each)[zone], self._tops[each]) > self._cold(zone) + _SAME_PA
        )

    def rounds_until(self, zone: Zone, limit_abs_pa: float) -> int | None:
        """Heat-ups of all that pushes into a zone, it last, until it passes a limit; None where so many do not.

        In each round every zone above is heated and cools, from the top, and then the zone itself is hot. Where these
        push into very many zones, fewer rounds are played, as the budgets say.
        """
        pushers = self.pushers(zone)
        above = [each for each in self._downward if each in pushers]
        growth, state = self.neighbours.growth_m3, dict(self.neighbours.cold)
        lifted = 1 + sum(len(self.neighbours.reach(each)) for each in {*above, zone})
        for number in range(1, min(MOST_ROUNDS, PUMPED // lifted + 1) + 1):
            for each in above:
                state = self._cooled(self.neighbours.after(state, each, growth[each]), each, growth[each])
            hot = self.neighbours.after(state, zone, growth[zone]) if zone in growth else state
            if hot[zone] > limit_abs_pa + _SAME_PA:
                return number
            state = self._cooled(hot, zone, growth[zone]) if zone in growth else hot
        return None

    def _cold(self, zone: Zone) -> float:
        return self.neighbours.cold[zone]

    @cached_property
    def _tops(self) -> dict[Zone, float]:
        """From the top down; what pumping does to a zone in a circle is not known here, and left out."""
        tops: dict[Zone, float] = {}
        for zone in self._downward:
            if len(self._circles[zone]) > 1:
                tops[zone] = self._cold(zone)
                continue
            tops[zone] = self._alone(zone, self._lifted_by(zone, tops))
        return tops

    def _lifted_by(self, zone: Zone, tops: dict[Zone, float]) -> float:
        """What the zones above leave a zone at, once they have cooled."""
        gates = (gate for gate in self._into.get(zone, ()) if gate.near in self.fed and gate.near in tops)
        return max([self._cold(zone), *(Push().through(gate).lifts_to_abs_pa(tops[gate.near]) for gate in gates)])

    def _alone(self, zone: Zone, start_abs_pa: float) -> float:
        """Where a zone comes to by its own growth alone, into its own tanks, from a start."""
        growth_m3 = self.neighbours.growth_m3.get(zone, 0.0)
        if growth_m3 <= 0.0 and start_abs_pa <= self._cold(zone):
            return start_abs_pa
        highest = max(self._cold(zone), self.neighbours.lets_go_abs_pa(zone))
        if growth_m3 <= 0.0 or start_abs_pa >= highest:
            return min(start_abs_pa, highest)
        level = settled_abs_pa(
            growth_m3, [replace(tank, start_abs_pa=start_abs_pa) for tank in self.neighbours.loads[zone].tanks]
        )
        return min(math.inf if level is None else max(level, start_abs_pa), highest)

    def _cooled(self, state: dict[Zone, float], zone: Zone, growth_m3: float) -> dict[Zone, float]:
        """The state once a zone has shrunk by what it grew: what pushes into it follows, and the street makes up."""
        giving = {each: self.neighbours.reach(each)[zone] for each in self._above(zone)}
        holding = [each for each in giving if self.neighbours.loads[each].tanks]

        def fallen(each: Zone, level: float) -> float:
            """A reducer lets no more through before the zone has fallen below its set."""
            follows = (level + row.opens_pa for row in giving[each] if level < row.below_abs_pa)
            return max(self._cold(each), min([state[each], *follows]))

        def given_m3(level: float) -> float:
            return math.fsum(self.neighbours.room_m3(each, fallen(each, level), state[each]) for each in holding)

        low, high = self._cold(zone), state[zone]
        level = low
        if high < math.inf and given_m3(low) > growth_m3:
            for _ in range(_HALVINGS):
                middle = (low + high) / 2.0
                low, high = (middle, high) if given_m3(middle) > growth_m3 else (low, middle)
            level = high
        return {**state, **{each: fallen(each, level) for each in giving}}

    def _above(self, zone: Zone) -> list[Zone]:
        """The zone and all that can push into it."""
        if zone not in self._known_above:
            above = {zone, *nx.ancestors(self._graph, zone)}
            self._known_above[zone] = self.neighbours.in_order(above)
        return self._known_above[zone]

    @cached_property
    def _into(self) -> dict[Zone, list[OneWayGate[Zone]]]:
        found: dict[Zone, list[OneWayGate[Zone]]] = {}
        for gate in self.neighbours.gates:
            found.setdefault(gate.far, []).append(gate)
        return found

    @cached_property
    def _graph(self) -> "nx.DiGraph[Zone]":
        graph: nx.DiGraph[Zone] = nx.DiGraph((gate.near, gate.far) for gate in self.neighbours.gates)
        graph.add_nodes_from(self.neighbours.loads)
        return graph

    @cached_property
    def _circles(self) -> dict[Zone, frozenset[Zone]]:
        """For each zone those that push into it and it into them; itself alone where none does."""
        circles = (frozenset(circle) for circle in nx.strongly_connected_components(self._graph))
        return {zone: circle for circle in circles for zone in circle}

    @cached_property
    def _downward(self) -> list[Zone]:
        """Zones in the direction of the gates."""
        whole = nx.condensation(self._graph)
        order = nx.lexicographical_topological_sort(
            whole, key=lambda each: min(map(repr, whole.nodes[each]["members"]))
        )
        return [zone for each in order for zone in sorted(whole.nodes[each]["members"], key=repr)]
