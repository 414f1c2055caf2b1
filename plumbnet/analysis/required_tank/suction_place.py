"""The place of a tank in a heating circuit: where its pump draws, near the boiler's return."""

from collections.abc import Iterator
from dataclasses import dataclass

from plumbnet.analysis.required_tank.place import TankPlace, in_pipe
from plumbnet.layout.model import End
from plumbnet.network import Network
from plumbnet.network.graphs import nearest_first
from plumbnet.network.loops import HeatedVolume, Loop
from plumbnet.network.piping import Node


def suction_place(network: Network, heated: HeatedVolume) -> TankPlace | None:
    """The fitting on the return where the pump of a heater's first loop draws; else the pipe there; None for neither.

    Where the pump stands in the return, upstream of it; where it stands in the supply it draws through the boiler, and
    the place is at the boiler's return. From there on the pump only raises the pressure.

    Source: common practice: the expansion tank connects at the suction of the circulator, and that is the place whose
    pressure the pump does not change.
    """
    return _Suction(network, heated, heated.loops[0]).place()


@dataclass(frozen=True)
class _Suction:
    network: Network
    heated: HeatedVolume
    loop: Loop

    def place(self) -> TankPlace | None:
        """The nearest fitting upstream that no valve parts, and else the first pipe."""
        start, zone_of = self._start, self.network.zoning.zone_of
        if zone_of[start] != zone_of[self.heated.inlet]:
            return None
        for node in self._upstream(start):
            part = self._part(node)
            if self.network.piping.system.parts[part].is_fitting:
                return TankPlace(part, node, self._why)
        pipe = self.network.pipe_at.get(self.network.piping.ports[start])
        return None if pipe is None else in_pipe(self.network, pipe, self._why)

    @property
    def _why(self) -> str:
        return (
            f"the suction side of {self._pump}, near the return of {self.heated.name}: what the pump adds to the "
            "pressure never takes from it"
        )

    @property
    def _pump(self) -> str:
        return self.loop.parts[0]

    @property
    def _start(self) -> Node:
        """The port at which to begin: that at which the pump draws, or the boiler's return where it draws there."""
        driven = self.network.piping.system.parts[self._pump].driven()
        suction = self.network.piping.node_of[End(self._pump, driven[0])] if driven else self.heated.inlet
        return self.heated.inlet if self._is_in_supply(suction) else suction

    def _is_in_supply(self, suction: Node) -> bool:
        """Whether the pump draws from the boiler before anything has cooled the water."""
        return any(self._part(node) == self.heated.name for node in self._near(suction))

    def _near(self, suction: Node) -> Iterator[Node]:
        """Nodes upstream of the suction up to the heater and to what cools."""
        return nearest_first([suction], lambda node: self._beyond(node, through_doors=True))

    def _upstream(self, start: Node) -> Iterator[Node]:
        """Nodes of the loop that neither valve, pump, heater nor emitter parts from a start, nearest first."""
        return nearest_first([start], self._beyond_and_not_back)

    def _beyond_and_not_back(self, node: Node) -> Iterator[Node]:
        """Neighbours across no valve, the heater's own connections left out."""
        beyond = self._beyond(node, through_doors=False)
        return (each for each in beyond if self._part(each) != self.heated.name)

    def _beyond(self, node: Node, *, through_doors: bool) -> Iterator[Node]:
        """Neighbours in the loop, by name, but none across a pump, a heater or what cools."""
        ports, name = self.network.piping.ports, self._part(node)
        part = self.network.piping.system.parts[name]
        stops = part.cools or part.heat() is not None or part.driven() is not None
        is_closed = stops or (part.is_door() and not through_doors)
        for beyond in sorted(self.network.piping.free[node], key=ports.__getitem__):
            if beyond in self.loop.nodes and not (is_closed and self._part(beyond) == name):
                yield beyond

    def _part(self, node: Node) -> str:
        return self.network.piping.ports[node].part
