"""A change to the changes that take it back, or to the reason in words why none can."""

from collections import Counter
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace

from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.edits.change_text import fields_inside
from plumbnet.layout.edits.edit_draft import ChangeError
from plumbnet.layout.model import Add, Change, End, Fail, Insert, Part, Pipe, SetValues, System

_TWO_ENDS = 2
"""Pipes that meet in a part that stands in a pipe."""


@dataclass(frozen=True, slots=True)
class Inverse:
    """What takes a change back, tried on a copy: the changes in the order to make them.

    None where no changes can do it; `reason` then says in words what would be lost.
    """

    changes: tuple[Change, ...] | None
    reason: str = ""


def undo(system: System, change: Change) -> tuple[Change, ...] | None:
    r"""The changes that take `change` back once it is made to `system`; None where none can: `inverse` says why.

    With them made the report is the same again, byte for byte. Raises ChangeError where the change cannot be made.

    >>> from plumbnet.layout.file.loader import read_system
    >>> parts = "{street: {kind: main, pressure: 60 psi}, stop: {kind: valve, state: open}, tap: fixture}"
    >>> text = f"plumbnet: 1\nparts: {parts}\nruns: [street -> stop -> tap.cold]"
    >>> undo(read_system(text.encode(), file="house.yaml"), Change(close="stop"))[0].open
    'stop'
    """
    return inverse(system, change).changes


def inverse(system: System, change: Change) -> Inverse:
    """The same, with the reason where there is none. Cost: the change made, and taken back, on copies.

    Raises ChangeError where the change cannot be made.
    """
    after = with_changes(system, [change])
    found = _ACTIONS[change.action](system, after, getattr(change, change.action))
    if isinstance(found, str):
        return Inverse(None, found)
    try:
        again = with_changes(after, found)
    except ChangeError as error:
        return Inverse(None, f"what would take it back cannot be done: {error}")
    lost = next(_lost(system, again), None)
    return Inverse(found) if lost is None else Inverse(None, lost)


_Found = tuple[Change, ...] | str
"""The changes that ought to take a change back, or why there are none."""


def _turned(system: System, after: System, name: str) -> _Found:
    """A valve turned back, unless it stood so before; one of which the file says nothing is said nothing of again."""
    if "state" not in system.written.get(name, {}):
        return _fields(system, after, name)
    if system.parts[name] == after.parts[name]:
        return ()
    return (Change(close=name) if after.parts[name].is_valve() else Change(open=name),)


def _fields(system: System, after: System, name: str) -> _Found:
    """The fields of a part as they were written."""
    if name not in system.written:
        return _fixed_anew(system, name)
    old, now = system.written[name], after.written[name]
    values = {field: value for field, value in old.items() if field not in now or now[field] != value}
    values |= dict.fromkeys(field for field in now if field not in old)
    return (_set(name, fields_inside(system, name, values)),) if values else ()


def _fixed_anew(system: System, name: str) -> _Found:
    """A part that is written inside another taken off it and fitted anew, as it is written there."""
    owner, _, field = name.rpartition("/")
    written = system.written.get(owner, {}).get(field)
    if written is None:
        return f"{name} is no longer written inside {owner}"
    return (_set(owner, {field: None}), _set(owner, {field: written}))


def _set(name: str, values: Mapping[str, object]) -> Change:
    return Change.model_validate({"set": {"part": name, **values}})


def _taken_out(_system: System, _after: System, change: Insert | Add) -> _Found:
    return (Change(remove=change.part),)


def _put_back(system: System, _after: System, name: str) -> _Found:
    """A part that was taken out, added or inserted again."""
    if name in system.instances:
        return f"{name} stood for several parts, which may not be now as they were written"
    if name not in system.written:
        return _fixed_anew(system, name)
    own = {name, *(end.part for pipe in system.pipes for end in pipe.ends if end.part.startswith(f"{name}/"))}
    pipes = [pipe for pipe in system.pipes if _touches(pipe, own) == 1]
    fields = {"part": name, **fields_inside(system, name, system.written[name])}
    if len(pipes) == 1:
        run = f"{_place(pipes[0].start)} -> {_place(pipes[0].end)}"
        return (Change.model_validate({"add": {**fields, "run": run}}),)
    if len(pipes) == _TWO_ENDS:
        if not _is_way_through(system.parts[name], name, pipes):
            return f"{name} joins two pipes and is no way through; a run would join it to one of them only"
        between = [_place(end) for end in _neighbours(system.parts[name], name, pipes)]
        return (Change.model_validate({"insert": {**fields, "between": between}}),)
    return f"{name} has no pipe that it could be joined to again"


def _touches(pipe: Pipe, names: set[str]) -> int:
    return sum(end.part in names for end in pipe.ends)


def _place(end: End) -> str:
    return f"{end.part}.{end.port}"


def _is_way_through(part: Part, name: str, pipes: list[Pipe]) -> bool:
    one, other = (pipe.end.port if pipe.end.part == name else pipe.start.port for pipe in pipes)
    return part.mate(one) == other or part.mate(other) == one


def _neighbours(part: Part, name: str, pipes: list[Pipe]) -> tuple[End, End]:
    """What two pipes join a part to: what lies at its inlet first; of equal ports, what lies upstream."""
    ends = [pipe.ends if pipe.end.part == name else pipe.ends[::-1] for pipe in pipes]
    (first, own), (second, others) = ends
    if own.port == others.port:
        return (second, first) if pipes[0].start.part == name else (first, second)
    return (first, second) if own.port == part.enters_at() else (second, first)


_ACTIONS: Mapping[str, Callable[..., _Found]] = {
    "close": _turned,
    "open": _turned,
    "remove": _put_back,
    "insert": _taken_out,
    "add": _taken_out,
    "set": lambda system, after, change: _fields(system, after, _named(change)),
    "fail": lambda system, after, change: _fields(system, after, _named(change)),
    "draw": _fields,
}


def _named(change: SetValues | Fail) -> str:
    return change.part


def _lost(system: System, again: System) -> Iterator[str]:
    """What of a system is not as it was, in words; nothing that a report does not show counts."""
    if list(system.parts) != list(again.parts):
        moved = next(name for name, other in zip(system.parts, again.parts, strict=False) if name != other)
        yield f"{moved} would stand in another place among the parts, or not at all"
        return
    for name, part in system.parts.items():
        if not _is_alike(part, again.parts[name]):
            yield f"{name} would not be as it was"
    old, now = [replace(pipe, line=0) for pipe in system.pipes], [replace(pipe, line=0) for pipe in again.pipes]
    if Counter(old) != Counter(now):
        lost = next(iter((Counter(old) - Counter(now)) or (Counter(now) - Counter(old))))
        yield f"the pipe {lost.name} would not be as it was: its direction, its length or the water in it"
    elif [pipe for pipe in old if pipe.volume_m3] != [pipe for pipe in now if pipe.volume_m3]:
        yield "the pipes would be counted in another order, and sums over them rounded otherwise"


def _is_alike(one: Part, other: Part) -> bool:
    """Whether two parts have the same values, and the same of them assumed."""
    return one.kind == other.kind and one == other and set(one.unsaid()) == set(other.unsaid())
