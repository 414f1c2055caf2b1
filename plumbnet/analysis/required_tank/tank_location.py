"""Where a tank connects: where a sound one hangs, on the cold header, or at the suction of a heating pump."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import cached_property

from plumbnet.analysis.required_tank.header_place import HeaderPlaces
from plumbnet.analysis.required_tank.place import TankPlace, inlet_pipe
from plumbnet.analysis.required_tank.suction_place import suction_place
from plumbnet.layout.model import Circuit
from plumbnet.network import Network
from plumbnet.network.graphs import nearest_first
from plumbnet.network.loops import HeatedVolume
from plumbnet.network.piping import Node, Zone
from plumbnet.rules import Rules


def tank_place(network: Network, heated: HeatedVolume, rules: Rules) -> TankPlace:
    """Where the tank of a heater connects, with the reason.

    In a heating circuit at the suction of the pump. Else where a sound tank hangs on the cold header that the heaters
    of the water share, or on that header itself: upstream of their branches, of the return of a circulation, and of
    the valves with which one heater is shut off. Where no water comes in, the fitting nearest to the heater's inlet.

    Source: common practice, and the place that IPC 607.3 names: the cold supply of the heater, downstream
    of every check valve, reducer and backflow preventer.
    """
    return TankPlaces(network, rules).of(heated)


@dataclass(frozen=True)
class TankPlaces:
    """The places of the tanks of all heaters of a network, each looked for once."""

    network: Network
    rules: Rules
    _found: dict[str, TankPlace] = field(default_factory=dict)
    _in_zone: dict[Zone, tuple[TankPlace, ...]] = field(default_factory=dict)

    def of(self, heated: HeatedVolume) -> TankPlace:
        """What `tank_place` tells of a heater."""
        if heated.name not in self._found:
            self._found[heated.name] = self._searched(heated)
        return self._found[heated.name]

    def in_zone(self, zone: Zone) -> tuple[TankPlace, ...]:
        """The places for the heaters that warm water in a zone, each once."""
        if zone not in self._in_zone:
            self._in_zone[zone] = tuple(dict.fromkeys(map(self.of, self.network.heated_in.get(zone, ()))))
        return self._in_zone[zone]

    def _searched(self, heated: HeatedVolume) -> TankPlace:
        place = None
        if heated.loops and self.network.circuits.at(heated.inlet) is Circuit.HEATING:
            place = suction_place(self.network, heated)
        return place or self._headers.of(heated) or _nearest(self.network, heated)

    @cached_property
    def _headers(self) -> HeaderPlaces:
        return HeaderPlaces(self.network, self.rules)


def _nearest(network: Network, heated: HeatedVolume) -> TankPlace:
    """The fitting nearest to the heater's inlet that no valve and no loop parts from it; else the pipe there."""
    why = f"the place nearest to the cold side of {heated.name} from which no valve parts it"
    looped = {node for loop in heated.loops for node in loop.nodes}
    for node in _upstream(network, heated):
        part = network.piping.ports[node].part
        if network.piping.system.parts[part].is_fitting and node not in looped:
            return TankPlace(part, node, why)
    return inlet_pipe(network, heated, why)


def _upstream(network: Network, heated: HeatedVolume) -> Iterator[Node]:
    """Nodes that no door parts from the inlet, nearest first and then by name, not through the heater itself."""
    free, ports = network.piping.free, network.piping.ports
    own = set(network.piping.nodes_of(heated.name))

    def beside(node: Node) -> Iterator[Node]:
        others = (each for each in free[node] if each not in own and not _is_door(network, node, each))
        yield from sorted(others, key=ports.__getitem__)

    return nearest_first([heated.inlet], beside)


def _is_door(network: Network, node: Node, beyond: Node) -> bool:
    """Whether two joined nodes are those of a valve, or of a joint of hot and cold by accident."""
    name = network.piping.ports[node].part
    return name == network.piping.ports[beyond].part and network.piping.system.parts[name].is_door()
