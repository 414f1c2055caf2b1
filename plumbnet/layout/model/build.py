"""Parts and joints to a system: validates fields, fits what comes fixed to a part, keeps one pipe to a port."""

from collections.abc import Iterable, Iterator, Mapping

from plumbnet.layout.model.part import KINDS, Part
from plumbnet.layout.model.runs import Joint, Stop
from plumbnet.layout.model.system import End, Pipe
from plumbnet.layout.units import Units


def make_part(kind: str, values: Mapping[str, object], units: Units) -> Part:
    """A part of a registered kind from its fields as written; bare numbers count in `units`.

    Raises pydantic's ValidationError with every mistake in the fields.
    """
    return KINDS[kind].model_validate(values, context={"units": units})


def fixed_to(name: str, part: Part) -> tuple[dict[str, Part], list[Pipe]]:
    """The parts that come fixed to a part, and the pipes of no length that join them."""
    parts: dict[str, Part] = {}
    pipes: list[Pipe] = []
    for port, suffix, fixed in part.fixed():
        own = f"{name}/{suffix}"
        parts[own] = fixed
        pipes.append(Pipe(End(name, port), End(own, fixed.port_names()[0])))
    return parts, pipes


def occupied(pipes: Iterable[Pipe]) -> dict[End, Pipe]:
    """The pipe at each port that has one; of a shared port, the last."""
    return {end: pipe for pipe in pipes for end in pipe.ends}


def crowded(joint: Joint, taken: Mapping[End, Pipe], parts: Mapping[str, Part]) -> Iterator[tuple[str, str, Stop]]:
    """What is wrong where a joint meets a port that has a pipe already, and what would be right."""
    for end, stop in ((joint.start, joint.near), (joint.end, joint.far)):
        other = taken.get(end)
        if other is not None and end.port not in parts[end.part].shared:
            port = f"{end.part}.{end.port}"
            if other.line:
                yield f"{port} already has its pipe, from line {other.line}", "join pipes in a tee", stop
            else:
                yield f"{port} belongs to the relief written inside {other.start.part}", "write it only once", stop
