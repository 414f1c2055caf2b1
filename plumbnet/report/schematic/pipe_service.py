"""A system to the service of each of its pipes: cold, hot, mixed, or return.

Pipes are followed in the direction the author drew them. It is a matter of the drawing alone; no verdict rests on it.
"""

from collections import defaultdict, deque
from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, field

from plumbnet.drawing import Service
from plumbnet.layout.model import MIXED, End, Part, Pipe, System


def services(system: System) -> tuple[Service, ...]:
    """The service of each pipe, in the order of the pipes.

    A return leads hot water back to where it is heated and to no use on its way: into the cold feed of a heater,
    into a tapping of a tank, or into the inlet of a heater whose circuit serves no fixture. What leaves a tank
    that a heater charges is hot, and what goes from it to that heater is a return.
    """
    flow = _flow(system)
    draws = _draws(system)
    charged = _charged(system, flow, draws)
    flow.heated.update(end for store in charged for end in store.leaves)
    serving = _reached(draws, flow.back)
    cold = _reached(_sources(system), _without(flow.onward, flow.heated | flow.mixed)) & serving
    outlets = [*_outlets(system), *(end for store in charged for end in store.leaves)]
    hot = _reached(outlets, _without(flow.onward, cold | flow.inlets | flow.mixed))
    mixed = _reached(sorted(flow.mixed), _without(flow.onward, cold | flow.inlets))
    going_back = _spent(flow, cold, _into_heat(system, flow, serving, charged)) | cold
    return tuple(_service(pipe, hot, mixed, going_back) for pipe in system.pipes)


@dataclass(frozen=True, slots=True)
class _Flow:
    """Ways from port to port, onward and back; `inlets` of heaters, ports that are `heated`, and the `mixed` ones."""

    onward: dict[End, list[End]] = field(default_factory=lambda: defaultdict(list))
    back: dict[End, list[End]] = field(default_factory=lambda: defaultdict(list))
    inlets: set[End] = field(default_factory=set)
    heated: set[End] = field(default_factory=set)
    mixed: set[End] = field(default_factory=set)
    uses: set[End] = field(default_factory=set)


def _flow(system: System) -> _Flow:
    flow = _Flow()
    for name, part in system.parts.items():
        for first, second in _through(part):
            flow.onward[End(name, first)].append(End(name, second))
            if part.cools or _is_other_circuit(part, first):
                flow.uses.add(End(name, first))
        heat = part.heat()
        if heat is not None:
            flow.inlets.add(End(name, heat.inlet))
            flow.heated.add(End(name, heat.outlet))
        if MIXED in part.port_names():
            flow.mixed.add(End(name, MIXED))
    for pipe in system.pipes:
        flow.onward[pipe.start].append(pipe.end)
    for start, ends in flow.onward.items():
        for end in ends:
            flow.back[end].append(start)
    return flow


@dataclass(frozen=True, slots=True)
class _Charged:
    """A tank that a heater charges: where hot water comes in and leaves, and the inlets fed from the tank."""

    entries: frozenset[End]
    leaves: tuple[End, ...]
    fed: frozenset[End]


def _charged(system: System, flow: _Flow, draws: Collection[End]) -> list[_Charged]:
    """The tanks that heaters charge, in the order of the file: by a tapping, each serving fixtures through it alone."""
    stores = {name: part for name, part in system.parts.items() if part.is_vessel and part.heat() is None}
    if not stores:
        return []
    doors = {End(name, port) for name, part in stores.items() for port in part.port_names()}
    onward = _ending_at(flow.onward, flow.inlets | doors)
    pushed, ends = dict[End, set[End]](), frozenset(draws)
    for name, heat in ((name, part.heat()) for name, part in system.parts.items()):
        given = _reached([End(name, heat.outlet)], onward) if heat is not None else set[End]()
        if heat is not None and given.isdisjoint(ends):
            for door in given & doors:
                pushed.setdefault(door, set()).add(End(name, heat.inlet))
    back = _ending_at(flow.onward, flow.inlets)
    found = (_charging(name, part, pushed, back) for name, part in stores.items())
    return [store for store in found if store is not None]


def _charging(name: str, part: Part, pushed: Mapping[End, set[End]], back: dict[End, list[End]]) -> _Charged | None:
    """How heaters charge a tank; `pushed` has the inlets of the heaters that lead to each port."""
    leave, tappings = part.leaves_at(), {End(name, port) for port in _tappings(part)}
    entries = tappings & pushed.keys()
    if leave is None or not entries:
        return None
    inlets = set[End]().union(*(pushed[end] for end in entries))
    fed = inlets & _reached([End(name, leave)], back)
    return _Charged(frozenset(entries), (End(name, leave), *sorted(tappings - entries)), frozenset(fed))


def _ending_at(onward: Mapping[End, list[End]], last: Collection[End]) -> dict[End, list[End]]:
    """The ways that go no further than the ports `last`."""
    return {start: ends for start, ends in onward.items() if start not in last}


def _into_heat(system: System, flow: _Flow, serving: set[End], charged: Collection[_Charged]) -> set[End]:
    """Where what comes back ends: inlets of heaters that serve nothing or charge, and tappings that none charges."""
    tappings = {End(name, port) for name, part in system.parts.items() if part.is_vessel for port in _tappings(part)}
    tappings.difference_update(end for store in charged for end in store.entries)
    return (flow.inlets - serving) | tappings | {end for store in charged for end in store.fed}


def _through(part: Part) -> Iterator[tuple[str, str]]:
    """Ways through a part from inlet to outlet, and from each tapping to the outlet."""
    names = part.port_names()
    entry, leave = part.enters_at(), part.leaves_at()
    if not set(names) >= {port for pair in part.through for port in pair}:
        if entry is not None and leave is not None:
            yield entry, leave
        return
    yield from ((first, second) for first, second in part.through if first != second)
    if part.through and leave is not None:
        yield from ((port, leave) for port in _tappings(part))


def _tappings(part: Part) -> list[str]:
    """Ports that only open into the part: those of no way through it."""
    passed = {port for pair in part.through for port in pair}
    return [port for port in part.port_names() if port not in passed]


def _is_other_circuit(part: Part, port: str) -> bool:
    """Whether a port enters a heater on the side that heats it."""
    heat = part.heat()
    return heat is not None and port not in {heat.inlet, heat.outlet, *_tappings(part)}


def _draws(system: System) -> list[End]:
    return [End(name, port) for name, part in system.parts.items() for port in part.draws_at()]


def _sources(system: System) -> list[End]:
    found = ((name, part.source()) for name, part in system.parts.items())
    return [End(name, source.port) for name, source in found if source is not None]


def _outlets(system: System) -> list[End]:
    """Ports by which heated water leaves: the outlet of each heater and its tappings."""
    found = ((name, part, part.heat()) for name, part in system.parts.items())
    return [End(name, port) for name, part, heat in found if heat for port in (heat.outlet, *_tappings(part))]


def _without(onward: dict[End, list[End]], barred: Collection[End]) -> dict[End, list[End]]:
    """The ways that lead neither into a barred port nor out of one."""
    return {start: [end for end in ends if end not in barred] for start, ends in onward.items() if start not in barred}


def _reached(starts: Iterable[End], onward: dict[End, list[End]]) -> set[End]:
    reached = dict.fromkeys(starts)
    queue = deque(reached)
    while queue:
        for end in onward.get(queue.popleft(), ()):
            if end not in reached:
                reached[end] = None
                queue.append(end)
    return set(reached)


def _spent(flow: _Flow, cold: set[End], into_heat: Collection[End]) -> set[End]:
    """Ports from which water can only go back to be heated."""
    spent = set(into_heat)
    queue = deque(sorted(spent | cold))
    while queue:
        for start in flow.back.get(queue.popleft(), ()):
            if start in spent or start in cold or start in flow.uses or start in flow.heated:
                continue
            if all(end in spent or end in cold for end in flow.onward[start]):
                spent.add(start)
                queue.append(start)
    return spent


def _service(pipe: Pipe, hot: set[End], mixed: set[End], going_back: set[End]) -> Service:
    if pipe.start not in hot and pipe.start not in mixed:
        return Service.COLD
    if pipe.end in going_back:
        return Service.RETURN
    return Service.HOT if pipe.start in hot else Service.MIXED
