"""What every change to a system needs: parts found, made and put in their place, or the change refused in words."""

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from operator import indexOf
from typing import TypeVar

from pydantic import ValidationError

from plumbnet.layout.model import (
    KINDS,
    NAME,
    NAME_ADVICE,
    Mistake,
    Part,
    Path,
    Pipe,
    PlacedPart,
    System,
    fixed_to,
    instance_of,
    listed_names,
    make_part,
    mistakes,
    shown_value,
    with_article,
)
from plumbnet.layout.yaml import quoted

_Thing = TypeVar("_Thing")


class ChangeError(ValueError):
    """A change that cannot be made.

    `mistakes` tell why; their paths begin with the number of the change, counted from 0, and its action.
    """

    def __init__(self, found: Iterable[Mistake]) -> None:
        self.mistakes = tuple(found)
        super().__init__("; ".join(map(str, self.mistakes)))

    def __reduce__(self) -> tuple[type["ChangeError"], tuple[tuple[Mistake, ...]]]:
        """What it takes to make the same again, in another process too: the names that are known as plain words."""
        return type(self), (tuple(replace(one, meant=(one.meant[0], tuple(one.meant[1]))) for one in self.mistakes),)


@dataclass(slots=True)
class _Joined:
    """The pipes of a system that is being changed, by the parts they join; `last` is where one was last replaced."""

    pipes: tuple[Pipe, ...]
    at: dict[str, list[Pipe]]
    last: int = 0

    def put(self, pipe: Pipe, instead: Pipe | None) -> None:
        """A pipe more, in the place of another where both join a part."""
        for name in dict.fromkeys(end.part for end in pipe.ends):
            own = self.at.setdefault(name, [])
            places = (place for place, one in enumerate(own) if one is instead)
            place = next(places, len(own))
            own[place : place + 1] = [pipe]

    def place(self, pipe: Pipe) -> int:
        """Where in the row a pipe stands: it itself, not one like it."""
        near = range(self.last, min(self.last + 2, len(self.pipes)))
        found = next((place for place in near if self.pipes[place] is pipe), None)
        return indexOf(map(id, self.pipes), id(pipe)) if found is None else found


class _Own(dict[str, _Thing]):
    """A mapping of a system that is being changed, and of nobody else: it is written into and not copied."""

    joined: _Joined | None = None


def _gathered(pipes: tuple[Pipe, ...]) -> _Joined:
    made = _Joined(pipes, {})
    for pipe in pipes:
        made.put(pipe, None)
    return made


def pipes_at(system: System, part: str) -> Sequence[Pipe]:
    """The pipes at a part, in the order of the file."""
    joined = _joined(system)
    return system.pipes_at(part) if joined is None else joined.at.get(part, ())


def with_pipe_replaced(system: System, pipe: Pipe, by: tuple[Pipe, Pipe]) -> System:
    """The system with two pipes, one behind the other, in place of one of its own."""
    joined = _joined(system) or _gathered(system.pipes)
    at = joined.place(pipe)
    for half in by:
        joined.put(half, pipe)
    joined.pipes, joined.last = (*joined.pipes[:at], *by, *joined.pipes[at + 1 :]), at
    return replace(system, pipes=joined.pipes)


def _joined(system: System) -> _Joined | None:
    """The pipes of a system being changed, gathered once for all changes that replace one by two; None of any other."""
    parts = system.parts
    if not isinstance(parts, _Own):
        return None
    if parts.joined is None or parts.joined.pipes is not system.pipes:
        parts.joined = _gathered(system.pipes)
    return parts.joined


def being_changed(system: System) -> System:
    """A copy of the system whose mappings changes may write into."""
    return replace(system, parts=_Own(system.parts), written=_Own(system.written))


def as_changed(system: System) -> System:
    """The same system once all changes are made."""
    return replace(system, parts=dict(system.parts), written=dict(system.written))


def with_entries(things: Mapping[str, _Thing], new: Mapping[str, _Thing]) -> Mapping[str, _Thing]:
    """A mapping with entries put into it; the same one where it is that of a system being changed."""
    if isinstance(things, _Own):
        things.update(new)
        return things
    return {**things, **new}


def without_entries(things: Mapping[str, _Thing], gone: Collection[str]) -> Mapping[str, _Thing]:
    """A mapping with entries taken out of it; the same one where it is that of a system being changed."""
    if isinstance(things, _Own):
        for name in gone:
            things.pop(name, None)
        return things
    return {name: thing for name, thing in things.items() if name not in gone}


def refusal(text: str, hint: str = "", at: Path = (), meant: tuple[str, Iterable[str]] = ("", ())) -> ChangeError:
    """A change refused: why, what would be right, where in the change, and a name with those it may be meant for."""
    return ChangeError([Mistake(at, text, hint, meant=meant)])


def part_named(system: System, name: str, at: Path = ()) -> Part:
    """The part of that name; `at` is where the change names it. Raises ChangeError."""
    if name in system.instances:
        inside = list(system.instances[name].parts)
        raise refusal(f"{name} stands for {listed_names(inside)}", "name one of them", at)
    part = system.parts.get(name)
    if part is None:
        raise refusal(f"no part is called {quoted(name)}", "name one that is there", at, (name, system.parts))
    return part


def new_part(system: System, change: PlacedPart) -> tuple[Part, Mapping[str, object]]:
    """The part that a change brings in, with its fields as written. Raises ChangeError."""
    if change.part in system.parts or change.part in system.instances:
        raise refusal(f"{change.part} is there already", "give the new part a name of its own", ("part",))
    around, _, name = change.part.rpartition("/")
    if not NAME.fullmatch(name if around in system.assembled else change.part):
        raise refusal(f"{quoted(change.part)} is no name for a part", NAME_ADVICE, ("part",))
    written = {**change.values, "kind": change.kind}
    return made(system, change.part, written), written


def unknown_kind(kind: object) -> Mistake:
    """What is wrong with a kind that there is not."""
    if not isinstance(kind, str):
        return Mistake(("kind",), f"a kind is a word, not {shown_value(kind)}", "for example kind: valve")
    hint = "the command plumbnet kinds lists them all"
    return Mistake(("kind",), f"unknown kind {quoted(kind)}", hint, meant=(kind, KINDS))


def made(system: System, name: str, written: Mapping[str, object]) -> Part:
    """A part from its fields as written, the kind among them. Raises ChangeError with every mistake."""
    kind = written["kind"]
    if not isinstance(kind, str) or kind not in KINDS:
        raise ChangeError([unknown_kind(kind)])
    try:
        return make_part(kind, {key: value for key, value in written.items() if key != "kind"}, system.units)
    except ValidationError as error:
        what = f"{name}, {with_article(kind)},"
        raise ChangeError(mistakes(error, what=what, model=KINDS[kind])) from None


def placed_part(system: System, name: str, part: Part, written: Mapping[str, object]) -> System:
    """The system with `part` under `name`, and with what comes fixed to it, or with what it opens into.

    What was fixed to it before and is still the same stays as it is now: plugged, say, or taken out.
    """
    instance = instance_of(name, part, written, system.units)
    if instance is not None:
        return replace(
            system,
            parts=with_entries(system.parts, instance.parts),
            pipes=(*system.pipes, *instance.pipes),
            written=with_entries(system.written, instance.written),
            instances={**system.instances, name: instance},
        )
    before = fixed_to(name, system.parts[name])[0] if name in system.parts else {}
    fixed, pipes = fixed_to(name, part)
    new = {own for own in fixed if fixed[own] != before.get(own)}
    gone = before.keys() - fixed.keys() | new
    kept = without_entries(system.parts, gone) if gone else system.parts
    old = tuple(pipe for pipe in system.pipes if not _is_at_any(pipe, gone)) if gone else system.pipes
    laid = tuple(pipe for pipe in pipes if pipe.end.part in new)
    return replace(
        system,
        parts=with_entries(kept, {name: part, **{own: fixed[own] for own in fixed if own in new}}),
        pipes=(*old, *laid) if laid else old,
        written=with_entries(system.written, {name: written}),
    )


def _is_at_any(pipe: Pipe, parts: Collection[str]) -> bool:
    return pipe.start.part in parts or pipe.end.part in parts
