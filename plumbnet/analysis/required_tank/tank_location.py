"""Where a tank connects: where a sound one hangs, on the cold header, or at the suction of a heating pump."""

from collections.abc import Iterator

from plumbnet.analysis.required_tank.header_place import header_place
from plumbnet.analysis.required_tank.place import Place, inlet_pipe
from plumbnet.analysis.required_tank.suction_place import suction_place
from plumbnet.layout.model import Circuit
from plumbnet.network import Network
from plumbnet.network.graphs import nearest_first
from plumbnet.network.loops import HeatedVolume
from plumbnet.network.piping import Node
from plumbnet.rules import Rules


def tank_place(network: Network, heated: HeatedVolume, rules: Rules) -> Place:
    """Where the tank of a heater connects, with the reason.

    In a heating circuit at the suction of the pump. Else where a sound tank hangs on the cold header that the heaters
    of the water share, or on that header itself: upstream of their branches, of the return of a circulation, and of
    the valves with which one heater is shut off. Where no water comes in, the fitting nearest to the heater's inlet.

    Source: common practice, and the place that IPC 607.3 names: the cold supply of the heater, downstream
    of every check valve, reducer and backflow preventer.
    """
    place = None
    if heated.loops and network.circuits.at(heated.inlet) is Circuit.HEATING:
        place = suction_place(network, heated)
    return place or header_place(network, heated, rules) or _nearest(network, heated)


def _nearest(network: Network, heated: HeatedVolume) -> Place:
    """The fitting nearest to the heater's inlet that no valve and no loop parts from it; else the pipe there."""
    why = f"the place nearest to the cold side of {heated.name} from which no valve parts it"
    looped = {node for loop in heated.loops for node in loop.nodes}
    for node in _upstream(network, heated):
        part = network.piping.ports[node].part
        if network.piping.system.parts[part].is_fitting and node not in looped:
            return Place(part, node, why)
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
