"""A change, or what is done to every part of a kind, as a person would say it, in a few words."""

from collections.abc import Iterable, Mapping

from plumbnet.layout.model import Change
from plumbnet.report.prose import spoken
from plumbnet.rules import listed
from plumbnet.study.whatif import FitEach, ToEach


def change_in_words(change: Change) -> str:
    """The change as an order, names and values as its author wrote them.

    >>> change_in_words(Change(close="stop"))
    'close stop'
    """
    if change.insert is not None:
        first, second = change.insert.between
        what = f"{change.insert.part} ({_kind(change.insert.kind)})"
        return f"insert {what} between {first} and {second}{_fields(change.insert.values, ', with')}"
    if change.add is not None:
        what = f"{change.add.part} ({_kind(change.add.kind)})"
        return f"add {what} by {change.add.run}{_fields(change.add.values, ', with')}"
    if change.set is not None:
        return f"set {change.set.part}{_fields(change.set.values, ':')}"
    if change.fail is not None:
        how = f" ({change.fail.how.replace('_', ' ')})" if change.fail.how else ""
        return f"let {change.fail.part} fail{how}"
    return f"{change.action} {getattr(change, change.action)}"


def changes_in_words(changes: Iterable[Change]) -> str:
    """Changes in their order."""
    return ", then ".join(map(change_in_words, changes))


def done_in_words(done: ToEach) -> str:
    """What is done to every part of a kind, as an order.

    >>> from plumbnet.study.whatif.bulk_changes import SetEach
    >>> done_in_words(SetEach("meter", {"check": True})), done_in_words(FitEach("main", "check_valve", {}))
    ('set every meter: check yes', 'fit a check valve behind every main')
    """
    if isinstance(done, FitEach):
        return f"fit {spoken(done.fitted)} behind every {_kind(done.kind)}{_fields(done.values, ', with')}"
    return f"set every {_kind(done.kind)}{_fields(done.values, ':')}"


def all_done_in_words(to_each: Iterable[ToEach]) -> str:
    """The same of several, one after the other."""
    return ", then ".join(map(done_in_words, to_each))


def _kind(kind: str) -> str:
    return spoken(kind).partition(" ")[2]


def _fields(values: Mapping[str, object], joint: str) -> str:
    said = [f"{field} {_value(value)}" for field, value in values.items()]
    return f"{joint} {listed(said)}" if said else ""


def _value(value: object) -> str:
    match value:
        case None:
            return "as usual"
        case bool():
            return "yes" if value else "no"
        case dict():
            return f"({', '.join(f'{key} {_value(inner)}' for key, inner in value.items())})"
        case list():
            return f"({', '.join(map(_value, value))})"
        case _:
            return str(value)
