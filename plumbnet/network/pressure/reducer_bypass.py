"""Ways by which water comes past a reducer: from before it to behind it through no reducer at all."""

import math
from collections import deque
from collections.abc import Iterator

from plumbnet.network.piping import Gate, Node, Piping


def way_past(piping: Piping, reducer: Gate) -> tuple[str, ...]:
    """Parts on the shortest way past a reducer, in the order in which water meets them; none where there is no way.

    Fittings are left out unless there is nothing else. Of ways of one length names choose. Linear but for sorting.
    """
    before = _before(piping, reducer)
    if reducer.end not in before:
        return ()
    way = [reducer.end]
    while way[-1] != reducer.start:
        way.append(before[way[-1]])
    parts = piping.system.parts
    met = [name for name in dict.fromkeys(piping.ports[node].part for node in reversed(way)) if name != reducer.part]
    return tuple(name for name in met if not parts[name].is_fitting) or tuple(met)


def _before(piping: Piping, reducer: Gate) -> dict[Node, Node]:
    """The port from which water first comes to each, from before the reducer on."""
    through: dict[Node, list[Node]] = {}
    for start, end in _gates(piping):
        through.setdefault(start, []).append(end)
    before = {reducer.start: reducer.start}
    queue = deque(before)
    while queue:
        node = queue.popleft()
        for beyond in sorted([*piping.free[node], *through.get(node, ())], key=lambda each: piping.ports[each]):
            if beyond not in before:
                before[beyond] = node
                queue.append(beyond)
    return before


def _gates(piping: Piping) -> Iterator[tuple[Node, Node]]:
    """Ends of the gates that water passes as it comes, reducers apart."""
    for gate in piping.gates:
        if gate.forward is None or gate.forward.below_pa == math.inf:
            if gate.forward is not None:
                yield gate.start, gate.end
            if gate.backward is not None:
                yield gate.end, gate.start
