"""A sweep as JSON and as CSV."""

import csv
import io
from collections.abc import Iterator

from plumbnet.layout.edits import change_fields
from plumbnet.layout.model import Change
from plumbnet.report.formats import in_order
from plumbnet.study.contingency import Outcome, Sweep

_COLUMNS = ("rank", "event", "heater", "before", "after", "new_errors", "refused")


def sweep_json(found: Sweep, *, top: int | None = None) -> str:
    """One JSON document: the events that change something, worst first, and counts of all; ends with a line break."""
    system = found.report.system
    document: dict[str, object] = {
        "file": system.record.file,
        "sha256": system.record.sha256,
        "title": system.title,
        "scenario": found.report.scenario,
        "rules": found.report.rules.named,
        "events_tried": len(found.events),
        "events_without_effect": found.idle_count,
        "events": [
            {"event": one.event.title, "fail": one.event.failure, **_outcome([one.event.change], one.outcome)}
            for one in found.changing[:top]
        ],
        "pairs": None,
    }
    if found.pairs is not None:
        document["pairs"] = {
            "tried": found.pairs.tried,
            "possible": found.pairs.possible,
            "found": [
                {
                    "events": [pair.first.title, pair.second.title],
                    **_outcome([pair.first.change, pair.second.change], pair.outcome),
                }
                for pair in found.pairs.found[:top]
            ],
        }
    return in_order(document) + "\n"


def _outcome(changes: list[Change], one: Outcome) -> dict[str, object]:
    return {
        "change": [change_fields(change) for change in changes],
        "heaters": [
            {"name": turn.heater, "before": turn.before.value, "after": turn.after.value} for turn in one.turns
        ],
        "new_errors": [{"name": error.name, "part": error.part} for error in one.errors],
        "refused": one.refused or None,
    }


def sweep_csv(found: Sweep, *, top: int | None = None) -> str:
    """A row for each heater that an event or a pair turns; one with an empty heater where only errors are new.

    Lines end as RFC 4180 has it.
    """
    text = io.StringIO(newline="")
    rows = csv.writer(text)
    rows.writerow(_COLUMNS)
    outcomes = [(one.event.title, one.outcome) for one in found.changing[:top]]
    if found.pairs is not None:
        outcomes += [(pair.title, pair.outcome) for pair in found.pairs.found[:top]]
    for rank, (title, one) in enumerate(outcomes, start=1):
        errors = "; ".join(f"{error.name} ({error.part})" for error in one.errors)
        rows.writerows((rank, title, *turned, errors, one.refused) for turned in _turned(one))
    return text.getvalue()


def _turned(one: Outcome) -> Iterator[tuple[str, str, str]]:
    if not one.turns:
        yield "", "", ""
    for turn in one.turns:
        yield turn.heater, turn.before.value, turn.after.value
