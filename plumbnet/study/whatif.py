"""A report and changes in, the report on the layout with them made and what differs out; or one for each scenario."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from plumbnet.analysis.report import Report
from plumbnet.api import check
from plumbnet.layout.apply import with_changes
from plumbnet.layout.change import Change
from plumbnet.layout.fault import nearest, quoted
from plumbnet.study.difference import Difference, difference


class UnknownScenario(ValueError):
    """No scenario of the file has this name; the message says which it has."""


@dataclass(frozen=True, slots=True)
class WhatIf:
    """A layout before and after changes.

    `scenario` names the scenario of the file that they begin with (None: none), `note` what it supposes.
    """

    scenario: str | None
    note: str
    changes: tuple[Change, ...]
    before: Report
    after: Report
    difference: Difference


def whatif(report: Report, changes: Iterable[Change] = (), *, scenario: str | None = None) -> WhatIf:
    """What becomes of a layout with the changes of a scenario of its file and then others made to a copy.

    Judged by the rules of the report, in its units. Raises UnknownScenario, ChangeError (layout.refusal) for the
    first change that cannot be made, LayoutError where nothing can be computed then.
    """
    note, first = "", tuple[Change, ...]()
    if scenario is not None:
        found = report.system.scenarios.get(scenario)
        if found is None:
            raise UnknownScenario(_unknown(scenario, list(report.system.scenarios)))
        note, first = found.note, found.change
    made = (*first, *changes)
    system = with_changes(report.system, made)
    after = replace(check(system, rules=report.profile, units=report.facts.units), scenario=scenario)
    return WhatIf(scenario, note, made, report, after, difference(report, after))


def untouched(report: Report) -> WhatIf:
    """A layout in which nothing is changed: what becomes of it is what it is."""
    return WhatIf(report.scenario, "", (), report, report, difference(report, report))


def _unknown(name: str, known: Sequence[str]) -> str:
    words = f"no scenario is called {quoted(name)}"
    near = nearest(name, known)
    if near:
        return f"{words}: {near}"
    return f"{words}; there is {', '.join(map(quoted, known))}" if known else f"{words}; the file has none"
