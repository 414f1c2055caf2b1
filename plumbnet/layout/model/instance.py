"""A part of a kind that opens into several to those parts, the pipes between them, and where its own ports are."""

from collections.abc import Iterable, Mapping
from dataclasses import replace

from plumbnet.layout.model.build import make_part
from plumbnet.layout.model.part import Part
from plumbnet.layout.model.runs import Joint, Stop, joints, run_stops
from plumbnet.layout.model.system import End, Instance, Pipe
from plumbnet.layout.units import Units


def instance_of(name: str, part: Part, written: Mapping[str, object], units: Units, line: int = 0) -> Instance | None:
    """What `part`, declared as `written` on `line`, opens into; None for a part that is one.

    The parts are called `name/valve` and so on, and stand at its height. Raises nothing that a file can bring about:
    what is written has been read as fields of the whole.
    """
    inside = part.opens_into
    if inside is None:
        return None
    own = {word: inner.written(written) for word, inner in inside.parts.items()}
    parts = {word: make_part(inner.kind, _fields(own[word]), units) for word, inner in inside.parts.items()}
    pipes = [Pipe(_of(name, j.start), _of(name, j.end), line=line) for run in inside.runs for j in _joints(run, parts)]
    return Instance(
        whole=part,
        parts={f"{name}/{word}": each for word, each in parts.items()},
        written={f"{name}/{word}": fields for word, fields in own.items()},
        pipes=tuple(pipes),
        ports={End(name, port): _of(name, _end(place, parts)) for port, place in inside.ports.items()},
    )


def indoors(instances: Mapping[str, Instance], joint: Joint) -> Joint:
    """A joint that names ports of wholes as one between the ports inside."""
    if not instances:
        return joint
    return replace(joint, start=_inner(instances, joint.start), end=_inner(instances, joint.end))


def _inner(instances: Mapping[str, Instance], end: End) -> End:
    return instances[end.part].ports[end] if end.part in instances else end


def _fields(written: Mapping[str, object]) -> dict[str, object]:
    return {field: value for field, value in written.items() if field != "kind"}


def _of(name: str, end: End) -> End:
    return End(f"{name}/{end.part}", end.port)


def _end(place: str, parts: Mapping[str, Part]) -> End:
    (stop,) = run_stops(place)
    return End(stop.name, stop.port or parts[stop.name].port_names()[0])


def _joints(run: str, parts: Mapping[str, Part]) -> Iterable[Joint]:
    return list(joints(run, parts, _refuse))


def _refuse(stop: Stop, text: str, hint: str, _known: Iterable[str]) -> None:
    raise ValueError(f"a kind opens into a run that cannot be laid, at {stop.name}: {text}; {hint}")
