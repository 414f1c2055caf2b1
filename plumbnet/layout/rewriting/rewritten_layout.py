"""A layout and changes to the text of its file with the changes made, read again and found to say just that."""

import codecs
from collections.abc import Callable, Iterable, Mapping, Sequence
from hashlib import sha256

from plumbnet.layout.edits import with_changes
from plumbnet.layout.file import read_system
from plumbnet.layout.model import Add, Change, Fail, Insert, Pipe, PlacedPart, SetValues, System
from plumbnet.layout.rewriting.change_list_edits import is_assembled, is_at_its_place, with_listed_change
from plumbnet.layout.rewriting.run_edits import demand_run, joint_of, runs_of, with_pipes
from plumbnet.layout.rewriting.same_layout import first_difference
from plumbnet.layout.rewriting.text_edits import bare, with_fields, with_item, with_value, without_value
from plumbnet.layout.rewriting.text_places import Unwritable, node_at
from plumbnet.layout.yaml import LayoutError


class NotWritten(ValueError):
    """A change that cannot be written into the text of a file; the message is one sentence that says why."""


def rewritten(system: System, changes: Iterable[Change]) -> str:
    r"""The text of a layout's file with changes made in it; comments, order, quoting and spacing stay.

    It has been read again, and is the layout that `with_changes` makes; quantities that had to be worked out, such as
    half the length of a pipe, are written to six digits. Raises ChangeError for a change that cannot be made at all,
    NotWritten for one that can and that the text has no place for.

    >>> text = "plumbnet: 1\nparts: {street: {kind: main, pressure: 60 psi}, stop: valve, tap: fixture}  # a shed"
    >>> shed = read_system(f"{text}\nruns: [street -> stop -> tap.cold]".encode(), file="shed.yaml")
    >>> rewritten(shed, [Change(close="stop")]).splitlines()[1]
    'parts: {street: {kind: main, pressure: 60 psi}, stop: {kind: valve, state: shut}, tap: fixture}  # a shed'
    """
    made = tuple(changes)
    whole = with_changes(system, made)
    now = system
    for change in made:
        now = _step(now, change)
    _demand_same(now, whole, made[-1] if made else None)
    return now.record.text


def file_bytes(system: System, text: str) -> bytes:
    """A changed text as the bytes of a file, with a byte order mark where the file of the layout has one."""
    old = codecs.BOM_UTF8 + system.record.text.encode()
    mark = codecs.BOM_UTF8 if sha256(old).hexdigest() == system.record.sha256 else b""
    return mark + text.encode()


def _step(system: System, change: Change) -> System:
    """The layout that the text says once one change is written into it."""
    after = with_changes(system, [change])
    try:
        text = _text(system, after, change)
        now = read_system(text.encode(), file=system.record.file, shelf=system.record.shelf)
    except Unwritable as error:
        raise _refused(system, change, str(error)) from error
    except LayoutError as error:
        raise _refused(system, change, f"the file would not be right then: {error.faults[0].sentence}") from error
    _demand_same(now, after, change)
    return now


def _text(system: System, after: System, change: Change) -> str:
    """The text with one change in it: at its place, or where assemblies stand in the file in its list of changes."""
    text = system.record.text
    if is_assembled(system) and not is_at_its_place(system, change):
        return with_listed_change(text, system, change)
    return _ACTIONS[change.action](text, system, after, getattr(change, change.action))


def _demand_same(now: System, after: System, change: Change | None) -> None:
    different = first_difference(now, after)
    if different and change is not None:
        raise _refused(now, change, f"what would stand there is not what is meant: {different}")


def _refused(system: System, change: Change, why: str) -> NotWritten:
    subject = getattr(change, change.action)
    name = subject if isinstance(subject, str) else subject.part
    file = system.record.file or "a layout that was read from no file"
    return NotWritten(f"the change {change.action} {name} cannot be written into {file}: {why}; write it by hand")


def _fields(text: str, system: System, after: System, name: str) -> str:
    _demand_written(system, name)
    return with_fields(text, ("parts", name), system.written[name], after.written[name])


def _demand_written(system: System, name: str) -> None:
    """Raises Unwritable for a part that stands inside another."""
    owner = next((whole for whole, own in system.instances.items() if name in own.parts), name.rpartition("/")[0])
    if name not in system.instances and (name not in system.written or owner in system.instances):
        raise Unwritable(f"{name} is written inside {owner}")


def _of_part(text: str, system: System, after: System, change: SetValues | Fail) -> str:
    return _fields(text, system, after, change.part)


def _removed(text: str, system: System, after: System, name: str) -> str:
    _demand_written(system, name)
    kept = {id(pipe) for pipe in after.pipes}
    good = [pipe for pipe in after.pipes if not any(pipe is old for old in system.pipes)]
    gone = [pipe for pipe in system.pipes if id(pipe) not in kept]
    laid = [pipe for run in runs_of(text, system) for pipe in run.pipes]
    exchanged: dict[int, Sequence[Pipe]] = {id(pipe): () for pipe in gone}
    first = next((pipe for pipe in gone if any(pipe is own for own in laid)), None)
    if first is not None:
        exchanged[id(first)] = good
    return without_value(with_pipes(text, system, after, exchanged), ("parts", name))


def _inserted(text: str, system: System, after: System, change: Insert) -> str:
    at = next(index for index, pipe in enumerate(system.pipes) if pipe is not after.pipes[index])
    demand_run(runs_of(text, system), system.pipes[at])
    halves = tuple(joint_of(system, at, after.pipes[at : at + 2]))
    return _with_part(with_pipes(text, system, after, {id(system.pipes[at]): halves}), change)


def _added(text: str, _system: System, _after: System, change: Add) -> str:
    runs = node_at(text, ("runs",))
    last = len(runs.value) - 1 if runs is not None else 0
    return _with_part(with_item(text, ("runs",), last, change.run), change)


def _with_part(text: str, change: PlacedPart) -> str:
    return with_value(text, ("parts", change.part), bare({"kind": change.kind, **change.values}))


_ACTIONS: Mapping[str, Callable[..., str]] = {
    "close": _fields,
    "open": _fields,
    "draw": _fields,
    "set": _of_part,
    "fail": _of_part,
    "remove": _removed,
    "insert": _inserted,
    "add": _added,
}
