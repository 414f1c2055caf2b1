"""Where an expansion tank connects: a tee in the cold pipe of a heater, with no valve between and outside any loop."""

from collections import deque
from collections.abc import Iterator
from dataclasses import dataclass

from plumbnet.network import Network
from plumbnet.network.loops import HeatedVolume
from plumbnet.network.piping import Node


@dataclass(frozen=True, slots=True)
class Place:
    """The part, or the pipe named by its ends, at which to connect; `node` gives its height."""

    name: str
    node: Node


def tank_place(network: Network, heated: HeatedVolume) -> Place:
    """The fitting nearest to the heater's inlet that no valve and no loop parts from it; else the pipe there.

    Source: common practice, and the place that IPC 607.3 names: the cold supply of the heater, downstream
    of every check valve, reducer and backflow preventer.
    """
    looped = {node for loop in heated.loops for node in loop.nodes}
    for node in _upstream(network, heated):
        part = network.piping.ports[node].part
        if network.piping.system.parts[part].is_fitting and node not in looped:
            return Place(part, node)
    return Place(_inlet_pipe(network, heated), heated.inlet)


def _upstream(network: Network, heated: HeatedVolume) -> Iterator[Node]:
    """Nodes that no door parts from the inlet, nearest first and then by name, not through the heater itself."""
    free, ports = network.piping.free, network.piping.ports
    own = set(network.piping.nodes_of(heated.name))
    seen, queue = own | {heated.inlet}, deque([heated.inlet])
    while queue:
        node = queue.popleft()
        yield node
        for beyond in sorted(free[node], key=lambda each: (ports[each].part, ports[each].port)):
            if beyond not in seen and not _is_door(network, node, beyond):
                seen.add(beyond)
                queue.append(beyond)


def _is_door(network: Network, node: Node, beyond: Node) -> bool:
    """Whether two joined nodes are those of a valve, or of a joint of hot and cold by accident."""
    name = network.piping.ports[node].part
    return name == network.piping.ports[beyond].part and network.piping.system.parts[name].is_door()


def _inlet_pipe(network: Network, heated: HeatedVolume) -> str:
    """The pipe at the heater's inlet, or the heater itself where nothing is joined to it."""
    pipe = network.pipe_at.get(network.piping.ports[heated.inlet])
    return heated.name if pipe is None else pipe.name
