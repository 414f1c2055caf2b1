"""Changes made to a copy of a system: close, open, remove, insert, add, set, fail, draw."""

from collections import Counter
from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace

from plumbnet.discover import discover
from plumbnet.layout.edits.edit_draft import (
    ChangeError,
    as_changed,
    being_changed,
    made,
    part_named,
    placed_part,
    refusal,
    with_entries,
)
from plumbnet.layout.edits.pipe_edits import with_part_between, with_run, without
from plumbnet.layout.edits.selection import single_changes
from plumbnet.layout.model import KINDS, Change, Fail, SetValues, System, kinds, with_article
from plumbnet.layout.yaml import quoted

discover(kinds)


def with_changes(system: System, changes: Iterable[Change]) -> System:
    """A copy of `system` with `changes` made one after another; the system itself stays as it is.

    Raises ChangeError for the first change that cannot be made.
    """
    before = list(system.parts)
    system = being_changed(system)
    for index, change in enumerate(changes):
        try:
            for single in single_changes(system, change):
                system = _ACTIONS[single.action](system, getattr(single, single.action))
        except ChangeError as error:
            raise ChangeError(one.under(index, change.action) for one in error.mistakes) from None
    system = as_changed(system)
    return system if list(system.parts) == before else _in_file_order(system)


def _in_file_order(system: System) -> System:
    """The same parts, those of the file in its order and new ones behind, whatever was taken out and put back."""
    places = {name: place for place, name in enumerate(system.record.lines)}

    def place(name: str) -> tuple[int, bool]:
        if name in places:
            return places[name], False
        owner, fixed, _ = name.rpartition("/")
        return places.get(owner, len(places)), bool(fixed) and owner in places

    return replace(system, parts={name: system.parts[name] for name in sorted(system.parts, key=place)})


def _close(system: System, name: str) -> System:
    return _turned(system, name, "shut")


def _open(system: System, name: str) -> System:
    return _turned(system, name, "open")


def _turned(system: System, name: str, state: str) -> System:
    part = part_named(system, name)
    if not part.can_be_shut():
        raise refusal(f"{name} is {with_article(part.kind)}; only a valve can be opened or closed")
    return _with_values(system, name, {"state": state})


def _draw(system: System, name: str) -> System:
    part = part_named(system, name)
    if part.kind != "fixture":
        raise refusal(f"{name} is {with_article(part.kind)}; water is drawn at a fixture")
    return _with_values(system, name, {"drawing": True})


def _fail(system: System, fail: Fail) -> System:
    part = part_named(system, fail.part, ("part",))
    what = f"{fail.part}, {with_article(part.kind)},"
    if not part.failures:
        raise refusal(f"{what} has no failure to suppose", at=("part",))
    how = fail.how or part.fails_as or (next(iter(part.failures)) if len(part.failures) == 1 else "")
    known = ", ".join(part.failures)
    if how not in part.failures:
        said = f"cannot fail as {quoted(fail.how)}" if fail.how else "can fail in several ways"
        raise refusal(f"{what} {said}", f"write how: {known}", ("how",))
    return _with_values(system, fail.part, part.failures[how])


def _set(system: System, change: SetValues) -> System:
    name, values = change.part, change.values
    part = part_named(system, name, ("part",))
    if name not in system.written:
        raise refusal(f"{name} is written inside {name.rpartition('/')[0]}", "set its fields there", ("part",))
    old = {field: value for field, value in system.written[name].items() if field != "kind"}
    kind = part.kind if values.get("kind") is None else values["kind"]
    if kind != part.kind and isinstance(kind, str) and kind in KINDS:
        kept = {field.alias for field in KINDS[kind].model_fields.values()}
        old = {field: value for field, value in old.items() if field in kept}
    if isinstance(kind, str) and kind in KINDS and KINDS[kind].opens_into is not None:
        hint = "remove the part and insert the other"
        raise refusal(f"{with_article(kind)} opens into parts of its own, and {name} is one", hint, ("kind",))
    written = {field: value for field, value in {**old, **values, "kind": kind}.items() if value is not None}
    changed = placed_part(system, name, made(system, name, written), written)
    now = changed.parts[name]
    if type(now) is not type(part) or now.port_names() != part.port_names():
        _refuse_lost_ports(changed, name)
    return changed


def _refuse_lost_ports(system: System, name: str) -> None:
    """A part that has become another must have a port for every pipe that is there."""
    part, joined = system.parts[name], Counter(end for pipe in system.pipes for end in pipe.ends if end.part == name)
    for end, pipes in joined.items():
        if end.port not in part.port_names():
            text = f"{name} would be {with_article(part.kind)}, which has no port {quoted(end.port)} for its pipe"
            raise refusal(text, "remove the part and insert another", ("part",))
        if pipes > 1 and end.port not in part.shared:
            text = f"{name} would be {with_article(part.kind)}, whose port {quoted(end.port)} takes one pipe"
            raise refusal(text, "remove pipes from it first", ("part",))


def _with_values(system: System, name: str, values: Mapping[str, object]) -> System:
    part = system.parts[name].model_copy(update=dict(values))
    written = system.written
    if name in written:
        written = with_entries(written, {name: {**written[name], **values}})
    return replace(system, parts=with_entries(system.parts, {name: part}), written=written)


_ACTIONS: Mapping[str, Callable[..., System]] = {
    "close": _close,
    "open": _open,
    "remove": without,
    "insert": with_part_between,
    "add": with_run,
    "set": _set,
    "fail": _fail,
    "draw": _draw,
}
