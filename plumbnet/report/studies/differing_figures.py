"""Everything that differs for a heater marked in a table of what-ifs: pressures, minutes, what opens, what it needs."""

from collections.abc import Iterator

from plumbnet.report.prose import left_as_it_is, pressure_in_words
from plumbnet.report.studies.difference_report import OTHER, SAME, difference_rows, mark
from plumbnet.rules.facts import Facts, HeaterFacts
from plumbnet.study.compare import HeaterChange

LEFT = "left as it is"
_LADDER = "opens first"
_TOLD = ("verdict", "needs")
"""What the sentences on worse and better heaters and on new findings say of them already."""


def differing_told(change: HeaterChange, before: Facts, after: Facts) -> Iterator[str]:
    """A sentence on what is another one for a heater, less what is told of worse and better ones already.

    Nothing for a heater without a mark, or one that is new or gone.
    """
    if mark(change) == SAME or change.before is None or change.after is None:
        return
    is_told = change.is_worse or change.is_better
    rows = map(_in_short, (*difference_rows(change, before, after), *left_rows(change, before, after)))
    said = [
        _said(label, was, now)
        for sign, label, was, now in rows
        if sign != SAME and now != "-" and not (is_told and label in _TOLD)
    ]
    yield f"{change.name}: {'; '.join(said) or 'different by less than is shown'}."


def _in_short(row: tuple[str, ...]) -> tuple[str, ...]:
    """A row as a sentence has it: of a ladder the first rung, and no more where that is the same."""
    sign, label, *cells = row
    if label != _LADDER:
        return row
    was, now = (cell.partition(", then ")[0] for cell in cells)
    return SAME if was == now else sign, label, was, now


def _said(label: str, was: str, now: str) -> str:
    if label == LEFT:
        return f"{label}, {now}"
    is_held_by_none = now == pressure_in_words(None, "us")
    return f"{'held by nothing' if is_held_by_none else f'{label} {now}'} ({was} before)"


def left_rows(change: HeaterChange, before: Facts, after: Facts) -> Iterator[tuple[str, str, str, str]]:
    """What comes of a heater left as it is, with the minutes until something opens; no row where nothing would."""
    was, now = _left(before, change.before), _left(after, change.after)
    if was or now:
        yield (SAME if was == now else OTHER, LEFT, was or "-", now or "-")


def _left(facts: Facts, heater: HeaterFacts | None) -> str:
    return "" if heater is None or heater.locked is None else left_as_it_is(facts, heater.locked)
