"""Runs as text to joints: "street -> meter -> heater" to the pairs of ports that pipes join."""

import re
from collections.abc import Callable, Collection, Iterator, Mapping
from dataclasses import dataclass

from plumbnet.layout.fault import nearest
from plumbnet.layout.part import Part
from plumbnet.layout.system import End

ARROW = "->"
NAME = re.compile(r"^\w(?:[\w -]*\w)?$")

Complain = Callable[[int, int, str, str], None]
"""Called with offset in the path, width, what is wrong, and what would be right."""


@dataclass(frozen=True, slots=True)
class Stop:
    """A part that a run names, the port named with it, and where in the path it stands."""

    name: str
    port: str | None
    offset: int
    width: int


def stops(path: str) -> list[Stop]:
    """The parts a run names, in order."""
    found: list[Stop] = []
    start = 0
    for piece in path.split(ARROW):
        text = piece.strip()
        offset = start + len(piece) - len(piece.lstrip())
        name, dot, port = text.rpartition(".")
        found.append(Stop(name if dot else text, port if dot else None, offset, max(1, len(text))))
        start += len(piece) + len(ARROW)
    return found


def joints(
    path: str, parts: Mapping[str, Part], complain: Complain, *, faulty: Collection[str] = ()
) -> Iterator[tuple[End, End]]:
    """Pairs of ports that the pipes of a run join, in its direction; what is wrong is told to `complain`.

    Parts named in `faulty` are declared but could not be read; nothing is said of them again.
    """
    run = stops(path)
    if len(run) == 1:
        complain(0, len(path), "a run joins at least two parts", 'write it as "first -> second"')
        return
    known = [stop.name not in faulty and _is_known(stop, parts, complain) for stop in run]
    leave = _leaving(run[0], parts, complain) if known[0] else None
    for index, stop in enumerate(run[1:], start=1):
        last = index == len(run) - 1
        enter = _entering(stop, parts, complain) if known[index] else None
        if leave is not None and enter is not None:
            yield leave, enter
        leave = None if last or enter is None else _passing(stop, enter, parts, complain)


def _is_known(stop: Stop, parts: Mapping[str, Part], complain: Complain) -> bool:
    if not stop.name:
        complain(stop.offset, 1, "a part is missing here", "write a name on each side of every ->")
        return False
    part = parts.get(stop.name)
    if part is None:
        hint = nearest(stop.name, parts) or "declare it under parts"
        complain(stop.offset, stop.width, f'no part is called "{stop.name}"', hint)
        return False
    if stop.port is not None and stop.port not in part.port_names():
        hint = nearest(stop.port, part.port_names()) or f"its ports are {_listed(part.port_names())}"
        complain(stop.offset, stop.width, f'{stop.name}, a {part.kind}, has no port "{stop.port}"', hint)
        return False
    return True


def _leaving(stop: Stop, parts: Mapping[str, Part], complain: Complain) -> End | None:
    part = parts[stop.name]
    port = stop.port or part.leaves_at() or _only(part)
    return _end(stop, part, port, complain)


def _entering(stop: Stop, parts: Mapping[str, Part], complain: Complain) -> End | None:
    part = parts[stop.name]
    port = stop.port or part.enters_at() or _only(part)
    return _end(stop, part, port, complain)


def _passing(stop: Stop, enter: End, parts: Mapping[str, Part], complain: Complain) -> End | None:
    part = parts[stop.name]
    port = part.mate(enter.port)
    if port is None:
        text = f"a run cannot pass through {stop.name}, a {part.kind}, from {enter.port}"
        ports = part.port_names()
        hint = "end the run there" if len(ports) == 1 else "end the run there and start another at one of its ports"
        complain(stop.offset, stop.width, text, hint)
        return None
    return End(stop.name, port)


def _end(stop: Stop, part: Part, port: str | None, complain: Complain) -> End | None:
    if port is None:
        text = f"{stop.name}, a {part.kind}, has the ports {_listed(part.port_names())}"
        complain(stop.offset, stop.width, text, f"name one, for example {stop.name}.{part.port_names()[0]}")
        return None
    return End(stop.name, port)


def _only(part: Part) -> str | None:
    ports = part.port_names()
    return ports[0] if len(ports) == 1 else None


def _listed(names: tuple[str, ...]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
