"""A change whose names may select many parts, as `rooms/5-8/mixer`, to the changes of single parts."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from plumbnet.layout.assemblies import (
    SELECTING,
    Wrong,
    differs,
    height_above,
    meant,
    one_of,
    refuse_uneven,
    say_which,
    selected,
    taking_of,
)
from plumbnet.layout.edits.change_text import change_fields
from plumbnet.layout.edits.edit_draft import refusal
from plumbnet.layout.model import ARROW, Change, System, run_stops, with_article
from plumbnet.layout.yaml import Plain

_PLACING = frozenset({"insert", "add"})
_NAMING = frozenset({"part", "between", "run", "how"})


def selected_parts(system: System, text: str) -> tuple[str, ...]:
    """The full names of the parts that a name stands for, in the order of the file. Raises Wrong.

    Beside labels, a `/` may be followed by `first`, `last`, `each` or a range.
    """
    if text in system.parts or text in system.instances or not _is_assembled(system):
        return (text,)
    return tuple(_ways(system, "", text.split("/")))


def is_selecting(system: System, text: str) -> bool:
    """Whether a name stands for others than the part of just that name."""
    return selected_parts(system, text) != (text,)


def _is_assembled(system: System) -> bool:
    return bool(system.groups or system.assembled)


def _ways(system: System, prefix: str, words: Sequence[str]) -> Iterator[str]:
    name, *rest = words
    full = prefix + name
    labels = system.groups.get(full)
    if labels is None:
        if not _is_there(system, full):
            raise Wrong(f"no part is named {name}{meant(name, _names_in(system, prefix))}")
        yield from _inside(system, full, rest)
        return
    if not rest:
        raise Wrong(say_which(full, labels))
    word, *rest = rest
    if word not in labels and word not in SELECTING and f"{full}/{labels[0]}/{word}" in system.parts:
        inner = "/".join([word, *rest])
        ways = f"{full}/{labels[0]}/{inner} or {full}/each/{inner}"
        raise Wrong(f"{full} stands for {len(labels)}; say in which: {ways}")
    chosen = selected(full, word, labels)
    for label in chosen:
        if len(chosen) == 1 or _is_there(system, f"{full}/{label}"):
            yield from _inside(system, f"{full}/{label}", rest)


def _inside(system: System, full: str, rest: Sequence[str]) -> Iterator[str]:
    """The parts that further words lead to from one part or instance."""
    if rest:
        if full not in system.assembled and f"{full}/{rest[0]}" not in system.parts:
            part = system.parts.get(full)
            kind = "" if part is None else f" is a {part.kind}, no assembly; it"
            raise Wrong(f"{full}{kind} has no {rest[0]} inside")
        yield from _ways(system, f"{full}/", rest)
    elif full in system.assembled:
        inside = next(iter(_names_in(system, f"{full}/")), "PART")
        assembly = system.assembled[full].assembly
        raise Wrong(f"{full} is an instance of {assembly}; name a part inside, as {full}/{inside}")
    elif full not in system.parts and full not in system.instances:
        raise Wrong(f"no part is named {full}")
    else:
        yield full


def _is_there(system: System, full: str) -> bool:
    return full in system.parts or full in system.assembled or full in system.instances or full in system.groups


def _names_in(system: System, prefix: str) -> list[str]:
    """The names that an instance has inside, or the layout outside all."""
    names = (*system.parts, *system.groups, *system.assembled)
    inside = (name[len(prefix) :].partition("/")[0] for name in names if name.startswith(prefix))
    return list(dict.fromkeys(inside))


def single_changes(system: System, change: Change) -> Sequence[Change]:
    """The changes of single parts that a change stands for, in order; heights count from their instance's.

    Raises ChangeError.
    """
    if not _is_assembled(system):
        return (change,)
    about = getattr(change, change.action)
    name = about if isinstance(about, str) else about.part
    try:
        parts = _new_parts(system, name) if change.action in _PLACING else selected_parts(system, name)
        if isinstance(about, str):
            return [change if part == name else Change.model_validate({change.action: part}) for part in parts]
        written = change_fields(change)[change.action]
        fields: dict[str, Plain] = dict(written) if isinstance(written, dict) else {"part": name}
        found = [_fields_of(system, change.action, fields, part, (k, len(parts))) for k, part in enumerate(parts)]
        return [change if one == fields else Change.model_validate({change.action: one}) for one in found]
    except Wrong as wrong:
        raise refusal(wrong.text, at=wrong.path or (() if isinstance(about, str) else ("part",))) from None


def _fields_of(
    system: System, action: str, fields: Mapping[str, Plain], part: str, which: tuple[int, int]
) -> dict[str, Plain]:
    """The fields of a change of one of many: its own values, names in full, heights counted from where it stands."""
    made = {**fields, "part": part}
    there = system.parts.get(part)
    kind = str(fields.get("kind") or ("" if there is None else there.kind))
    for key, value in fields.items():
        if key not in _NAMING:
            made[key] = _value(system, value, which, key, kind)
    around = system.instance_around(part)
    lift = None if around is None else system.assembled[around].lift
    if lift is not None and (action in _PLACING or "elevation" in made):
        made["elevation"] = height_above(lift, made.get("elevation"), system.units)
    if action in _PLACING:
        beside = _Beside(system, "" if around is None else f"{around}/", str(fields["part"]), part)
        between = fields.get("between")
        if isinstance(between, list):
            made["between"] = [beside.named(str(one), "between") for one in between]
        if "run" in fields:
            made["run"] = f" {ARROW} ".join(beside.named(one, "run") for one in str(fields["run"]).split(ARROW))
    return made


def _value(system: System, value: Plain, which: tuple[int, int], field: str, kind: str) -> Plain:
    """The value that one of many gets."""
    taking = taking_of(kind, field)
    if not differs(value, taking):
        return value
    k, count = which
    try:
        refuse_uneven(value, count, taking, system.units)
    except Wrong as wrong:
        raise Wrong(wrong.text, (field, *wrong.path)) from None
    return one_of(value, k, taking, system.units)[0]


@dataclass(frozen=True, slots=True)
class _Beside:
    """The parts that a new part stands beside: `inside` is what stands before the names of its own assembly."""

    system: System
    inside: str
    written: str
    part: str

    def named(self, text: str, field: str) -> str:
        """A name in full: as the new part's own assembly calls it, or else as the layout does. Raises Wrong."""
        (stop,) = run_stops(text)
        port = f".{stop.port}" if stop.port is not None else ""
        if stop.name in {self.written, self.part, self.part.removeprefix(self.inside)}:
            return self.part + port
        try:
            found = self._parts(stop.name)
        except Wrong as wrong:
            raise Wrong(wrong.text, (field,)) from None
        if len(found) != 1:
            raise Wrong(f"{stop.name} stands for {len(found)}; name one", (field,))
        return found[0] + port

    def _parts(self, name: str) -> tuple[str, ...]:
        first = name.partition("/")[0]
        if not self.inside or name.startswith(self.inside):
            return selected_parts(self.system, name)
        if _is_there(self.system, self.inside + first):
            return tuple(_ways(self.system, self.inside, name.split("/")))
        if not _is_there(self.system, first):
            raise Wrong(f"no part is named {name}{meant(name, _names_in(self.system, self.inside))}")
        return selected_parts(self.system, name)


def _new_parts(system: System, text: str) -> tuple[str, ...]:
    """The full names of a new part: in every instance that its name leads to, or outside all. Raises Wrong."""
    head, slash, name = text.rpartition("/")
    if not slash:
        return (text,)
    return tuple(f"{instance}/{name}" for instance in _instances(system, "", head.split("/")))


def _instances(system: System, prefix: str, words: Sequence[str]) -> Iterator[str]:
    """The instances that words lead to. Raises Wrong."""
    name, *rest = words
    full = prefix + name
    labels = system.groups.get(full)
    heads = [full]
    if labels is not None:
        if not rest:
            raise Wrong(say_which(full, labels))
        word, *rest = rest
        heads = [f"{full}/{label}" for label in selected(full, word, labels)]
    elif not _is_there(system, full):
        raise Wrong(f"no part is named {name}{meant(name, _names_in(system, prefix))}")
    for head in heads:
        if head not in system.assembled:
            part = system.parts.get(head)
            what = "no instance" if part is None else f"{with_article(part.kind)}, no instance"
            raise Wrong(f"{head} is {what}; a new part stands in an instance or outside all")
        if rest:
            yield from _instances(system, f"{head}/", rest)
        else:
            yield head
