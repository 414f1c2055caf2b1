"""A place for an expansion tank: a part or a pipe, and why there."""

from dataclasses import dataclass

from plumbnet.layout.model import Pipe
from plumbnet.network import Network
from plumbnet.network.loops import HeatedVolume
from plumbnet.network.piping import Node


@dataclass(frozen=True, slots=True)
class TankPlace:
    """The part, or the pipe named by its ends, at which to connect; `node` gives its height.

    `why` says why there, as what follows "It is": the cold header that a and b share.
    """

    name: str
    node: Node
    why: str = ""


def in_pipe(network: Network, pipe: Pipe, why: str) -> TankPlace:
    """A place in a pipe, at the height of the heater that it leads to, or else of where it ends."""
    inlets = network.inlets
    start, end = (network.piping.node_of[each] for each in pipe.ends)
    return TankPlace(pipe.name, start if start in inlets and end not in inlets else end, why)


def place_named(network: Network, name: str, why: str) -> TankPlace | None:
    """The place of a name that is a part's, or a pipe's by its ends; None for one of neither.

    Of pipes of one name that at a heater, and else the first.
    """
    if name in network.piping.system.parts:
        return TankPlace(name, next(network.piping.nodes_of(name)), why)
    found = [in_pipe(network, pipe, why) for pipe in network.piping.system.pipes if pipe.name == name]
    inlets = network.inlets
    return min(found, key=lambda place: place.node not in inlets, default=None)


def inlet_pipe(network: Network, heated: HeatedVolume, why: str) -> TankPlace:
    """The pipe at the heater's inlet, or the heater itself where nothing is joined to it."""
    pipe = network.pipe_at.get(network.piping.ports[heated.inlet])
    return TankPlace(heated.name if pipe is None else pipe.name, heated.inlet, why)
