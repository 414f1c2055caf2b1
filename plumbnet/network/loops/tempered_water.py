"""A loop to the water in it that comes from the heater through a mixing valve only, and how warm that lets it be."""

from dataclasses import dataclass

from plumbnet.layout.model import End
from plumbnet.network.graphs import all_reached, by_start
from plumbnet.network.loops.loops import Loop
from plumbnet.network.piping import Node, Piping


@dataclass(frozen=True, slots=True)
class Tempering:
    """Where in a loop water is as hot as a heater makes it; elsewhere a mixing valve lets it be `mixed_k` at the most.

    `hot` are ports that heated water comes to unmixed, `stores` those at which heaters hold their own.
    """

    hot: frozenset[Node]
    stores: frozenset[Node]
    mixed_k: float

    def of_part(self, node: Node) -> float | None:
        """The most to which water that stands at a port of a part comes; None where nothing tempers it."""
        return None if node in self.hot or node in self.stores else self.mixed_k

    def of_pipe(self, start: Node, end: Node) -> float | None:
        """The same for a pipe between two ports."""
        return None if start in self.hot or end in self.hot else self.mixed_k


def tempering(piping: Piping, loop: Loop) -> Tempering | None:
    """What the mixing valves of a loop temper whose mixed water says how warm it is; None where there is no such valve.

    Water is followed as the pump may drive it, from each heater of the loop to the valves, and never back through a
    heater. Of several valves the warmest counts for all that is mixed. Linear.
    """
    parts = {name: piping.system.parts[name] for name in loop.parts}
    mixed = {name: mixed_k for name, part in parts.items() if (mixed_k := part.tempers_k()) is not None}
    if not mixed:
        return None
    barred = {piping.node_of[End(name, parts[name].leaves_at() or "")] for name in mixed}
    heats = [(name, heat) for name, part in parts.items() if (heat := part.heat()) is not None]
    inlets = {piping.node_of[End(name, heat.inlet)]: name for name, heat in heats}
    outlets = {piping.node_of[End(name, heat.outlet)]: name for name, heat in heats}
    onward = by_start(
        (start, end)
        for start, end in loop.onward
        if end not in barred and not (end in inlets and inlets[end] == outlets.get(start))
    )
    return Tempering(frozenset(all_reached(outlets, onward)), frozenset(inlets), max(mixed.values()))
