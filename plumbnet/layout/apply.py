"""Changes made to a copy of a system: close, open, remove, insert, add, set, fail, draw."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace

from pydantic import ValidationError

from plumbnet.layout.build import fixed_to, make_part, occupied
from plumbnet.layout.change import Add, Change, Fail, Insert, Placed, SetValues
from plumbnet.layout.fault import nearest
from plumbnet.layout.part import KINDS, Part
from plumbnet.layout.runs import NAME, joints
from plumbnet.layout.system import End, Pipe, System


_TWO_ENDS = 2
"""Pipes that can be made good into one."""


class ChangeError(ValueError):
    """A change that cannot be made: `index` tells which of the list, `hint` what would be right."""

    def __init__(self, text: str, hint: str = "") -> None:
        super().__init__(text)
        self.hint = hint
        self.index = 0


def with_changes(system: System, changes: Iterable[Change]) -> System:
    """A copy of `system` with `changes` made one after another; the system itself stays as it is.

    Raises ChangeError for the first change that cannot be made.
    """
    for index, change in enumerate(changes):
        try:
            system = _ACTIONS[change.action](system, getattr(change, change.action))
        except ChangeError as error:
            error.index = index
            raise
    return system


def _close(system: System, name: str) -> System:
    return _turn(system, name, "shut")


def _open(system: System, name: str) -> System:
    return _turn(system, name, "open")


def _turn(system: System, name: str, state: str) -> System:
    part = _part(system, name)
    if part.kind != "valve":
        raise ChangeError(f"{name} is a {part.kind}; only a valve can be opened or closed")
    return _with_values(system, name, {"state": state})


def _draw(system: System, name: str) -> System:
    part = _part(system, name)
    if part.kind != "fixture":
        raise ChangeError(f"{name} is a {part.kind}; water is drawn at a fixture")
    return _with_values(system, name, {"drawing": True})


def _fail(system: System, fail: Fail) -> System:
    part = _part(system, fail.part)
    if not part.failures:
        raise ChangeError(f"{fail.part}, a {part.kind}, has no failure to suppose")
    known = ", ".join(part.failures)
    how = fail.how or (known if len(part.failures) == 1 else "")
    if how not in part.failures:
        raise ChangeError(f'{fail.part}, a {part.kind}, cannot fail as "{how}"', f"it can be {known}")
    return _with_values(system, fail.part, part.failures[how])


def _set(system: System, change: SetValues) -> System:
    part = _part(system, change.part)
    if change.part not in system.written:
        raise ChangeError(f"{change.part} is written inside a heater; set the relief of the heater instead")
    kind = str(change.values.get("kind", part.kind))
    written = {**system.written[change.part], **change.values, "kind": kind}
    return _placed(system, change.part, _made(system, change.part, written), written)


def _remove(system: System, name: str) -> System:
    part = _part(system, name)
    touching = [pipe for pipe in system.pipes if name in (pipe.start.part, pipe.end.part)]
    gone = {name} | {f"{name}/{suffix}" for _, suffix, _ in part.fixed()}
    joined = [pipe for pipe in touching if not {pipe.start.part, pipe.end.part} <= gone]
    if len(joined) > _TWO_ENDS:
        raise ChangeError(f"{name} joins {len(joined)} pipes; a part with at most two can be taken out")
    kept = [pipe for pipe in system.pipes if pipe not in touching]
    if len(joined) == _TWO_ENDS:
        kept.append(_made_good(name, joined[0], joined[1]))
    parts = {key: value for key, value in system.parts.items() if key not in gone}
    written = {key: value for key, value in system.written.items() if key not in gone}
    return replace(system, parts=parts, written=written, pipes=tuple(kept))


def _made_good(name: str, one: Pipe, other: Pipe) -> Pipe:
    """One pipe in place of two that met in the part `name`, in the direction of the first."""
    upstream, downstream = (one, other) if one.end.part == name else (other, one)
    start = upstream.start if upstream.end.part == name else upstream.end
    end = downstream.end if downstream.start.part == name else downstream.start
    return Pipe(start, end, one.volume_m3 + other.volume_m3, line=upstream.line)


def _insert(system: System, change: Insert) -> System:
    first, second = change.between
    pipe = _pipe_between(system, first, second)
    part, written = _new(system, change)
    enter, leave = part.enters_at(), part.leaves_at()
    if enter is None or leave is None:
        raise ChangeError(f"a {change.kind} cannot stand in a pipe: it has no inlet and outlet of its own")
    near, far = (pipe.start, pipe.end) if pipe.start.part == first else (pipe.end, pipe.start)
    halves = (
        replace(pipe, start=near, end=End(change.part, enter), volume_m3=pipe.volume_m3 / 2),
        replace(pipe, start=End(change.part, leave), end=far, volume_m3=pipe.volume_m3 / 2),
    )
    kept = tuple(other for other in system.pipes if other is not pipe)
    return _placed(replace(system, pipes=(*kept, *halves)), change.part, part, written)


def _add(system: System, change: Add) -> System:
    part, written = _new(system, change)
    system = _placed(system, change.part, part, written)

    def complain(_offset: int, _width: int, text: str, hint: str) -> None:
        raise ChangeError(text, hint)

    taken = occupied(system.pipes)
    laid = [Pipe(start, end) for start, end in joints(change.run, system.parts, complain)]
    for pipe in laid:
        for end in (pipe.start, pipe.end):
            if end in taken and end.port not in system.parts[end.part].shared:
                raise ChangeError(f"{end.part}.{end.port} is taken already", "insert a tee first and join there")
            taken[end] = pipe
    return replace(system, pipes=(*system.pipes, *laid))


def _part(system: System, name: str) -> Part:
    part = system.parts.get(name)
    if part is None:
        raise ChangeError(f'no part is called "{name}"', nearest(name, system.parts))
    return part


def _pipe_between(system: System, first: str, second: str) -> Pipe:
    _part(system, first)
    _part(system, second)
    found = [pipe for pipe in system.pipes if {pipe.start.part, pipe.end.part} == {first, second}]
    if len(found) != 1:
        known = "no pipe joins" if not found else f"{len(found)} pipes join"
        raise ChangeError(f"{known} {first} and {second}", "name two parts that one pipe joins")
    return found[0]


def _new(system: System, change: Placed) -> tuple[Part, Mapping[str, object]]:
    if change.part in system.parts:
        raise ChangeError(f"{change.part} is there already", "give the new part a name of its own")
    if not NAME.match(change.part):
        raise ChangeError(f'"{change.part}" is no name for a part', "use letters, digits, _ and -")
    written = {**change.values, "kind": change.kind}
    return _made(system, change.part, written), written


def _made(system: System, name: str, written: Mapping[str, object]) -> Part:
    kind = str(written["kind"])
    if kind not in KINDS:
        raise ChangeError(f'unknown kind "{kind}"', nearest(kind, KINDS))
    try:
        return make_part(kind, {key: value for key, value in written.items() if key != "kind"}, system.units)
    except ValidationError as error:
        raise ChangeError(f"{name}, a {kind}, {_first_mistake(error)}") from error


def _first_mistake(error: ValidationError) -> str:
    detail = error.errors(include_url=False)[0]
    field = ".".join(str(step) for step in detail["loc"])
    return f"cannot be so: {field}: {detail['msg'].removeprefix('Value error, ')}"


def _placed(system: System, name: str, part: Part, written: Mapping[str, object]) -> System:
    """The system with `part` under `name`, and what comes fixed to it in place of what did before."""
    fixed, pipes = fixed_to(name, part)
    own = f"{name}/"
    parts = {key: value for key, value in system.parts.items() if not key.startswith(own)}
    kept = [pipe for pipe in system.pipes if not pipe.end.part.startswith(own)]
    return replace(
        system,
        parts={**parts, name: part, **fixed},
        pipes=(*kept, *pipes),
        written={**system.written, name: written},
    )


def _with_values(system: System, name: str, values: Mapping[str, object]) -> System:
    part = system.parts[name].model_copy(update=dict(values))
    written = system.written
    if name in written:
        written = {**written, name: {**written[name], **values}}
    return replace(system, parts={**system.parts, name: part}, written=written)


_ACTIONS: Mapping[str, Callable[..., System]] = {
    "close": _close,
    "open": _open,
    "remove": _remove,
    "insert": _insert,
    "add": _add,
    "set": _set,
    "fail": _fail,
    "draw": _draw,
}
