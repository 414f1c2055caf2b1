"""Every event of the sweep by a name, so that it can be supposed as a failure is: tank:charge_lost."""

from collections.abc import Iterable

from plumbnet.analysis import Report
from plumbnet.layout.edits import ChangeError, with_changes
from plumbnet.layout.model import Change, Circuit, System, with_article
from plumbnet.layout.yaml import nearest, quoted
from plumbnet.study.contingency.contingencies import event_name, events_of_part


class UnknownEvent(ValueError):
    """A part has no event of this name; the message says which it has. `index` is the number of the change, from 0."""

    def __init__(self, index: int, words: str) -> None:
        super().__init__(index, words)
        self.index = index
        self.words = words

    def __str__(self) -> str:
        return self.words


def with_events(report: Report, changes: Iterable[Change], *, scenario: str | None = None) -> tuple[Change, ...]:
    """Changes to be made one after another to a layout, or to a scenario of it, each event as the change that it is.

    What a kind of part declares as its failure stays as it is, and so does all that cannot be made. Raises UnknownEvent
    for a failure of a part that neither its kind nor the sweep knows.
    """
    system = report.system
    if scenario is not None and scenario in system.scenarios:
        system = _supposed(system, system.changes_of(scenario))
    found: list[Change] = []
    for index, change in enumerate(changes):
        found.append(_resolved(report, system, change, index))
        system = _supposed(system, found[-1:])
    return tuple(found)


def _supposed(system: System, changes: Iterable[Change]) -> System:
    """The layout with changes made; as it is where they cannot be, which is told by whoever makes them."""
    try:
        return with_changes(system, changes)
    except ChangeError:
        return system


def _resolved(report: Report, system: System, change: Change, index: int) -> Change:
    part = None if change.fail is None else system.parts.get(change.fail.part)
    if change.fail is None or part is None:
        return change
    name, how = change.fail.part, event_name(change.fail.how)
    if change.fail.how in part.failures or (not how and len(part.failures) == 1):
        return change
    events = {
        event_name(one.words): one.change
        for one in events_of_part(system, name, report.rules, lambda each: _circuit(report, each))
    }
    known = list(dict.fromkeys([*part.failures, *events]))
    if how in events or not known:
        return events.get(how, change)
    ways = "can fail in several ways" if len(known) > 1 else "fails in no way of its own"
    said = f"cannot fail as {quoted(change.fail.how)}" if how else ways
    near = nearest(how, known)
    advice = f": {near}" if near else f"; write how: {', '.join(known)}"
    raise UnknownEvent(index, f"{name}, {with_article(part.kind)}, {said}{advice}")


def _circuit(report: Report, name: str) -> Circuit:
    """The circuit of a part; of one that a change brings in, that of drinking water."""
    return report.facts.circuit_of(name) if name in report.system.parts else Circuit.WATER
