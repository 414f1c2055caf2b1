"""Changes to the pipes of a system: a part removed, inserted, or added with a run."""

from collections import ChainMap
from collections.abc import Iterable
from dataclasses import replace

from plumbnet.layout.edits.edit_draft import (
    new_part,
    part_named,
    pipes_at,
    placed_part,
    refusal,
    with_pipe_replaced,
    without_entries,
)
from plumbnet.layout.model import (
    Add,
    End,
    Insert,
    Instance,
    Part,
    Pipe,
    Stop,
    System,
    fixed_to,
    indoors,
    joints,
    listed_names,
    occupied,
    run_stops,
    with_article,
)
from plumbnet.layout.yaml import quoted

NO_WAY_THROUGH = "cannot stand in a pipe, for it has no inlet and outlet of its own"
"""Why a part cannot be inserted."""
_TWO_ENDS = 2
"""Pipes that can be made good into one."""


def without(system: System, name: str) -> System:
    """The system without a part, the pipe made good. Raises ChangeError."""
    instance = system.instances.get(name)
    part = part_named(system, name) if instance is None else instance.whole
    gone = {name, *(fixed_to(name, part)[0] if instance is None else instance.parts)}
    touching = [pipe for pipe in system.pipes if any(end.part in gone for end in pipe.ends)]
    joined = [pipe for pipe in touching if not all(end.part in gone for end in pipe.ends)]
    if len(joined) > _TWO_ENDS:
        raise refusal(f"{name} joins {len(joined)} pipes; a part with at most two can be taken out")
    good = _made_good(name, part, joined if instance is None else [_outdoors(instance, pipe) for pipe in joined])
    pipes: list[Pipe] = []
    for pipe in system.pipes:
        if pipe not in touching:
            pipes.append(pipe)
        elif good is not None and pipe is joined[0]:
            pipes.append(good)
    return replace(
        system,
        parts=without_entries(system.parts, gone),
        written=without_entries(system.written, gone),
        pipes=tuple(pipes),
        instances={key: value for key, value in system.instances.items() if key != name},
    )


def _outdoors(instance: Instance, pipe: Pipe) -> Pipe:
    """A pipe to a port inside as one to a port of the whole."""
    return replace(pipe, start=instance.outdoors(pipe.start), end=instance.outdoors(pipe.end))


def _made_good(name: str, part: Part, joined: list[Pipe]) -> Pipe | None:
    """One pipe in place of two that met in a part, in their direction; None where the part is no way through."""
    if len(joined) < _TWO_ENDS:
        return None
    upstream, downstream = joined if joined[0].end.part == name else joined[::-1]
    start, enters = upstream.ends if upstream.end.part == name else upstream.ends[::-1]
    leaves, end = downstream.ends if downstream.start.part == name else downstream.ends[::-1]
    if part.mate(enters.port) != leaves.port and part.mate(leaves.port) != enters.port:
        return None
    known = upstream.length_m is not None and downstream.length_m is not None
    return Pipe(
        start,
        end,
        upstream.volume_m3 + downstream.volume_m3,
        length_m=(upstream.length_m or 0.0) + (downstream.length_m or 0.0) if known else None,
        tube=upstream.tube if upstream.tube == downstream.tube else None,
        line=upstream.line,
    )


def with_part_between(system: System, change: Insert) -> System:
    """The system with a part in one of its pipes, half of the pipe on each side. Raises ChangeError."""
    pipe, near, far = _pipe_between(system, *change.between)
    part, written = new_part(system, change)
    enter, leave = part.enters_at(), part.leaves_at()
    if enter is None or leave is None:
        raise refusal(f"{with_article(change.kind)} {NO_WAY_THROUGH}", "add it with a run", ("kind",))
    length_m = None if pipe.length_m is None else pipe.length_m / 2
    half = replace(pipe, volume_m3=pipe.volume_m3 / 2, length_m=length_m)
    placed = placed_part(system, change.part, part, written)
    halves = (
        replace(half, start=near, end=_inner(placed, End(change.part, enter))),
        replace(half, start=_inner(placed, End(change.part, leave)), end=far),
    )
    return with_pipe_replaced(placed, pipe, halves)


def _inner(system: System, end: End) -> End:
    instance = system.instances.get(end.part)
    return end if instance is None else instance.ports[end]


def _pipe_between(system: System, first: str, second: str) -> tuple[Pipe, End, End]:
    """The one pipe that joins two parts, or the ports named, with its ends in that order."""
    one, other = _neighbour(system, first, 0), _neighbour(system, second, 1)
    instance = system.instances.get(one.name)
    names = {one.name} if instance is None else {inner.part for inner in instance.ports.values()}
    found = [
        (pipe, *ends)
        for pipe in {id(pipe): pipe for name in names for pipe in pipes_at(system, name)}.values()
        for ends in (pipe.ends, pipe.ends[::-1])
        if _is_at(system, ends[0], one) and _is_at(system, ends[1], other)
    ]
    if not found:
        raise refusal(f"no pipe joins {first} and {second}", "name two parts that a pipe joins", ("between",))
    if len(found) > 1:
        text = f"{len(found)} pipes join {first} and {second}"
        raise refusal(text, "name a port with each, as heater.hot", ("between",))
    return found[0]


def _neighbour(system: System, named: str, place: int) -> Stop:
    stop, *more = run_stops(named)
    if more:
        raise refusal("a neighbour is one part", "write the pipe as [first, second]", ("between", place))
    instance = system.instances.get(stop.name)
    part = part_named(system, stop.name, ("between", place)) if instance is None else instance.whole
    if stop.port is not None and stop.port not in part.port_names():
        text = f"{stop.name}, {with_article(part.kind)}, has no port {quoted(stop.port)}"
        raise refusal(text, f"it has {listed_names(part.port_names())}", ("between", place))
    return stop


def _is_at(system: System, end: End, stop: Stop) -> bool:
    """Whether a pipe's end is at a part that a change names, or at a port inside it that is one of its own."""
    instance = system.instances.get(stop.name)
    if instance is None:
        return end.part == stop.name and stop.port in {None, end.port}
    return any(end == inner and stop.port in {None, outer.port} for outer, inner in instance.ports.items())


def with_run(system: System, change: Add) -> System:
    """The system with a part more, and the run that joins it. Raises ChangeError."""
    part, written = new_part(system, change)
    system = placed_part(system, change.part, part, written)

    def complain(stop: Stop, text: str, hint: str, known: Iterable[str]) -> None:
        raise refusal(text, hint, ("run",), (stop.name, known))

    if change.part not in {stop.name for stop in run_stops(change.run)}:
        raise refusal(f"this run does not mention {change.part}", "join the new part to one that is there", ("run",))
    taken = occupied(system.pipes)
    wholes = {name: instance.whole for name, instance in system.instances.items()}
    found = joints(change.run, ChainMap(dict(system.parts), wholes) if wholes else system.parts, complain)
    laid = [Pipe(joint.start, joint.end) for joint in (indoors(system.instances, one) for one in found)]
    for pipe in laid:
        for end in pipe.ends:
            part_named(system, end.part, ("run",))
            if end in taken and end.port not in system.parts[end.part].shared:
                text = f"{end.part}.{end.port} already has its pipe"
                raise refusal(text, "insert a tee first and join there", ("run",))
            taken[end] = pipe
    return replace(system, pipes=(*system.pipes, *laid))
