"""Runs as text to joints: "street -> meter -> heater" to the pairs of ports that pipes join."""

import re
from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from plumbnet.layout.model.part import Part
from plumbnet.layout.model.system import End
from plumbnet.layout.model.validation_messages import with_article
from plumbnet.layout.yaml import nearest, quoted

ARROW = "->"
MOST_PIPES = 250_000
"""Most pipes of a layout."""
MOST_PIPES_OF_RUN = 10_000
"""Most pipes of a run."""
NAME = re.compile(r"\w(?:[\w -]{0,58}\w)?")
NAME_ADVICE = "use up to 60 letters, digits, _ and -, a letter or digit at each end"


@dataclass(frozen=True, slots=True)
class Stop:
    """A part that a run names, the port named with it, and where in the path it stands."""

    name: str
    port: str | None
    offset: int
    width: int


@dataclass(frozen=True, slots=True)
class Joint:
    """Two ports that a pipe of a run joins, with the stops that they were named by."""

    start: End
    end: End
    near: Stop
    far: Stop


Complain = Callable[[Stop, str, str, Iterable[str]], None]
"""Called with the stop, what is wrong, what would be right, and names one of which may be meant instead."""


def run_stops(path: str) -> list[Stop]:
    """The parts a run names, in order.

    >>> [(stop.name, stop.port, stop.offset) for stop in run_stops("street -> sink.hot")]
    [('street', None, 0), ('sink', 'hot', 10)]
    """
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
) -> Iterator[Joint]:
    """The ports that the pipes of a run join, in its direction; what is wrong is told to `complain`.

    Parts named in `faulty` are declared but could not be read; nothing is said of them again.
    """
    run = run_stops(path)
    if len(run) == 1:
        complain(Stop("", None, 0, len(path)), "a run joins at least two parts", 'write it as "first -> second"', ())
        return
    yield from joints_between(run, parts, complain, faulty=faulty)


def joints_between(
    run: Sequence[Stop],
    parts: Mapping[str, Part],
    complain: Complain,
    *,
    faulty: Collection[str] = (),
    passes: bool = False,
) -> Iterator[Joint]:
    """The same of a run's stops, two or more; `passes` says that it comes from elsewhere and passes the first."""
    known = [stop.name not in faulty and _is_known(stop, parts, complain) for stop in run]
    leave = _leaving(run[0], parts, complain) if known[0] and not passes else None
    if known[0] and passes:
        enter = _entering(run[0], parts, complain)
        leave = None if enter is None else _passing(run[0], enter, parts, complain)
    for index, stop in enumerate(run[1:], start=1):
        enter = _entering(stop, parts, complain) if known[index] else None
        if leave is not None and leave == enter:
            complain(stop, f"this pipe joins {stop.name} to itself", "name two different parts", ())
        elif leave is not None and enter is not None:
            yield Joint(leave, enter, run[index - 1], stop)
        is_last = index == len(run) - 1
        leave = None if is_last or enter is None else _passing(stop, enter, parts, complain)


def listed_names(names: Iterable[str]) -> str:
    """Names as a person lists them.

    >>> listed_names(["a", "b", "c"])
    'a, b and c'
    """
    *first, last = names
    return f"{', '.join(first)} and {last}" if first else last


def _is_known(stop: Stop, parts: Mapping[str, Part], complain: Complain) -> bool:
    if not stop.name:
        complain(stop, "a part is missing here", "write a name on each side of every ->", ())
        return False
    part = parts.get(stop.name)
    if part is None:
        complain(stop, f"no part is called {quoted(stop.name)}", "declare it under parts", parts)
        return False
    if stop.port is not None and stop.port not in part.port_names():
        ports = listed_names(part.port_names())
        hint = nearest(stop.port, part.port_names()) or f"it has {ports}"
        complain(stop, f"{stop.name}, {with_article(part.kind)}, has no port {quoted(stop.port)}", hint, ())
        return False
    return True


def _leaving(stop: Stop, parts: Mapping[str, Part], complain: Complain) -> End | None:
    part = parts[stop.name]
    return _end(stop, part, stop.port or part.leaves_at() or _only(part), complain)


def _entering(stop: Stop, parts: Mapping[str, Part], complain: Complain) -> End | None:
    part = parts[stop.name]
    return _end(stop, part, stop.port or part.enters_at() or _only(part), complain)


def _passing(stop: Stop, enter: End, parts: Mapping[str, Part], complain: Complain) -> End | None:
    part = parts[stop.name]
    port = part.mate(enter.port)
    if port is not None:
        return End(stop.name, port)
    text = f"a run cannot pass through {stop.name}, {with_article(part.kind)}"
    if len(part.port_names()) == 1:
        complain(stop, text, "end the run there", ())
    else:
        ports = listed_names([f"{stop.name}.{other}" for other in part.port_names() if other != enter.port])
        complain(stop, f"{text}, from {enter.port}", f"end the run there, and start others at {ports}", ())
    return None


def _end(stop: Stop, part: Part, port: str | None, complain: Complain) -> End | None:
    if port is None:
        text = f"{stop.name}, {with_article(part.kind)}, has the ports {listed_names(part.port_names())}"
        complain(stop, text, f"name one, for example {stop.name}.{part.port_names()[0]}", ())
        return None
    return End(stop.name, port)


def _only(part: Part) -> str | None:
    ports = part.port_names()
    return ports[0] if len(ports) == 1 else None
