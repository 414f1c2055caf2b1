"""A report and changes in, the report on the layout with them made and what differs out; or one for each scenario."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from plumbnet.analysis import Report
from plumbnet.api import Layout, as_report, check
from plumbnet.layout import shown
from plumbnet.layout.edits import with_changes
from plumbnet.layout.model import Change, System
from plumbnet.layout.yaml import LayoutError, nearest, quoted
from plumbnet.study.compare import Difference, difference


class UnknownScenario(ValueError):
    """No scenario of the file has this name; the message says which it has."""


class FaultyScenario(LayoutError):
    """A scenario of the file cannot be made; the message shows why under its line."""


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

    def to_text(self) -> str:
        """What `plumbnet whatif` prints of it: before and after, side by side; ends with a line break."""
        return shown(self, "text", str)


def whatif(layout: Layout | Report, changes: Iterable[Change] = (), *, scenario: str | None = None) -> WhatIf:
    """What becomes of a layout with the changes of a scenario of its file and then others made to a copy.

    Judged by the rules of the report, in its units. Raises UnknownScenario, ChangeError (layout.edits) for the
    first change that cannot be made, FaultyScenario for a scenario that cannot, LayoutError where nothing can be
    computed then.

    `layout` is a report, or what `check` makes one of; raises what `check` does.

    >>> import plumbnet
    >>> made = plumbnet.whatif("systems/open-house.yaml", [plumbnet.Change(close="house-stop")])
    >>> made.after.heaters[0].verdict.value, made.difference.is_worse
    ('trapped', True)
    >>> plumbnet.whatif("systems/open-house.yaml", scenario="meter-exchanged").after
    <Report of systems/open-house.yaml, rules general, scenario "meter-exchanged": 1 trapped; 1 finding>
    """
    report = as_report(layout)
    note, first = "", tuple[Change, ...]()
    if scenario is not None:
        note, first = _made_by(report.system, scenario)
    made = (*first, *changes)
    system = with_changes(report.system, made)
    answer = check(system, rules=report.rules, units=report.facts.units, acceptances=report.own_acceptances)
    after = replace(answer, scenario=scenario)
    return WhatIf(scenario, note, made, report, after, difference(report, after))


def _made_by(system: System, scenario: str) -> tuple[str, tuple[Change, ...]]:
    """The note of a scenario, and all changes that make it."""
    if scenario in system.faulty_scenarios:
        error = system.scenario_error(scenario)
        raise FaultyScenario(error.file, error.faults, system.record.text)
    if scenario not in system.scenarios:
        raise UnknownScenario(_unknown(scenario, [*system.scenarios, *system.faulty_scenarios]))
    return system.scenarios[scenario].note, system.changes_of(scenario)


def untouched(report: Report) -> WhatIf:
    """A layout in which nothing is changed: what becomes of it is what it is."""
    return WhatIf(report.scenario, "", (), report, report, difference(report, report))


def _unknown(name: str, known: Sequence[str]) -> str:
    words = f"no scenario is called {quoted(name)}"
    near = nearest(name, known)
    if near:
        return f"{words}: {near}"
    return f"{words}; there is {', '.join(map(quoted, known))}" if known else f"{words}; the file has none"
