"""Taps, emitters and the highest places of what is heated, with the least pressure that stands at each."""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from functools import cached_property

from plumbnet.layout.model import End, Role
from plumbnet.network import Network
from plumbnet.network.loops import HeatedVolume, Loop
from plumbnet.network.piping import Node, Zone
from plumbnet.network.pressure import PressureSources
from plumbnet.physics.fluids import ATMOSPHERE_PA, OutsideWater, boiling_k, saturation_abs_pa
from plumbnet.rules.facts import LowFacts, Use


def lows(network: Network) -> Iterator[LowFacts]:
    """Every place that water must come to, in the order of the file; where no water is, none."""
    yield from _Lowest(network).facts()


@dataclass
class _Lowest:
    network: Network
    feeding: PressureSources = field(init=False)
    _of_loops: dict[frozenset[Node], Node | None] = field(default_factory=dict)

    def __post_init__(self) -> None:
        self.feeding = PressureSources(self.network.zoning, self.network.standing)

    def facts(self) -> Iterator[LowFacts]:
        node_of = self.network.piping.node_of
        heated = {one.name: one for one in self.network.heated}
        for name, part in self.network.piping.system.parts.items():
            if name in heated:
                yield from self._heated(heated[name])
            elif part.draws_at():
                yield from self._place(name, Use.TAP, [node_of[End(name, port)] for port in part.draws_at()])
            elif part.cools:
                yield from self._place(name, Use.EMITTER, list(self.network.piping.nodes_of(name)))

    def _heated(self, heated: HeatedVolume) -> Iterator[LowFacts]:
        """The highest place of what a heater warms: its own store, and every loop that is driven through it."""
        loops = (self._lowest_in(loop) for loop in heated.loops)
        plain = heated.source.mixture is None
        hot_k = heated.source.hot_k if plain else None
        nodes = [heated.inlet, heated.outlet, *(node for node in loops if node is not None)]
        yield from self._place(heated.name, Use.HEATER, nodes, hot_k=hot_k, is_driven=bool(heated.loops))

    def _place(
        self, name: str, use: Use, nodes: list[Node], *, hot_k: float | None = None, is_driven: bool = False
    ) -> Iterator[LowFacts]:
        """The place among nodes at which least stands; pipes that end in the air may stand empty at the top."""
        node = self._lowest(nodes)
        if node is None:
            return
        zone, at = self.network.zoning.zone_of[node], self.network.piping.ports[node].part
        least_pa = self._least_pa(node)
        yield LowFacts(
            name=name,
            use=use,
            at=at,
            elevation_m=self.network.piping.system.parts[at].elevation_m,
            static_pa=self.network.standing.at(zone) - self.network.piping.heads_pa[node],
            least_pa=least_pa,
            feed=self.feeding.feed(zone),
            is_driven=is_driven,
            is_vented=zone in self._vented,
            hot_k=hot_k,
            vapour_pa=0.0 if hot_k is None else _vapour_pa(hot_k),
            boils_k=None if hot_k is None else _boils_k(least_pa),
        )

    def _lowest_in(self, loop: Loop) -> Node | None:
        """The same of a loop, looked for once for all heaters on it."""
        if loop.nodes not in self._of_loops:
            self._of_loops[loop.nodes] = self._lowest(loop.nodes)
        return self._of_loops[loop.nodes]

    def _lowest(self, nodes: Iterable[Node]) -> Node | None:
        """The node at which least stands, of several the first by name; None where no water is."""
        wet = (node for node in nodes if node not in self._airy and self._least_pa(node) > -math.inf)
        ports = self.network.piping.ports
        return min(wet, key=lambda each: (self._least_pa(each), ports[each]), default=None)

    def _least_pa(self, node: Node) -> float:
        """Least pressure at a node, gauge at its height; minus infinity where no water is."""
        least_pa = self.network.standing.least_pa[self.network.zoning.zone_of[node]]
        return -math.inf if least_pa is None else least_pa - self.network.piping.heads_pa[node]

    @cached_property
    def _airy(self) -> frozenset[Node]:
        """Ends in the air, but for taps that run."""
        parts = self.network.piping.system.parts
        sites = (site for site in self.network.sites if site.outlet.role is Role.AIR)
        return frozenset(site.node for site in sites if not parts[site.part].draws_at())

    @cached_property
    def _vented(self) -> frozenset[Zone]:
        return frozenset(self.network.zoning.zone_of[node] for node in self._airy)


def _vapour_pa(hot_k: float) -> float:
    """By how much water this hot must stand above the air to stay liquid."""
    return max(0.0, saturation_abs_pa(hot_k) - ATMOSPHERE_PA)


def _boils_k(least_pa: float) -> float | None:
    try:
        return boiling_k(least_pa + ATMOSPHERE_PA)
    except OutsideWater:
        return None
