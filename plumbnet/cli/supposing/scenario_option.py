"""A layout in one of its scenarios, with changes made to it, or one calm sentence and exit status 2."""

from collections.abc import Sequence
from dataclasses import replace
from typing import NoReturn

from plumbnet.analysis import Report
from plumbnet.cli.arguments import demand_heater, fail, refuse, report_with
from plumbnet.cli.progress_bar import at_work
from plumbnet.cli.supposing.change_options import Given, fail_each, refused_change
from plumbnet.layout.edits import ChangeError
from plumbnet.layout.model import Change
from plumbnet.layout.units import Units
from plumbnet.layout.yaml import LayoutError, quoted
from plumbnet.report.studies import changes_in_words
from plumbnet.rules import OwnAcceptances
from plumbnet.study.contingency import UnknownEvent, with_events
from plumbnet.study.whatif import FaultyScenario, UnknownScenario, WhatIf, whatif


def report_supposed(  # noqa: PLR0913, PLR0917  each is an option of a command
    file: str,
    heater: str | None,
    rules: Sequence[str] | None,
    units: Units | None,
    scenario: str | None,
    own: OwnAcceptances | None = None,
    given: tuple[Given, ...] = (),
) -> Report:
    """The report on a file in a scenario of it, and with changes made after that, which it names as it names scenarios.

    Says what is wrong and exits where it has no such heater then.
    """
    report = report_with(file, None, rules, units, own)
    if scenario is not None or given:
        report = _named(supposed(report, scenario, given), given)
    if heater is not None:
        demand_heater(report, heater, file)
    return report


def supposed(report: Report, scenario: str | None, given: tuple[Given, ...]) -> WhatIf:
    """What becomes of a layout in a scenario of it, with changes made after that; says what is wrong and exits."""
    try:
        with at_work("supposing"):
            return whatif(report, _happened(report, scenario, given), scenario=scenario)
    except UnknownScenario as error:
        fail(str(error))
    except FaultyScenario as error:
        refuse(error.file, error)
    except ChangeError as error:
        before = 0 if scenario is None else len(report.system.changes_of(scenario))
        fail_each(refused_change(given, before, error))
    except LayoutError as error:
        fail_uncomputed("the changes" if scenario is None else f"the scenario {quoted(scenario)}", error)


def _happened(report: Report, scenario: str | None, given: Sequence[Given]) -> tuple[Change, ...]:
    """The changes that options ask for, events of the sweep among them."""
    try:
        return with_events(report, [one.change for one in given], scenario=scenario)
    except UnknownEvent as error:
        one = given[error.index]
        fail(f"{one.option} {one.text}: {error}")


def _named(made: WhatIf, given: Sequence[Given]) -> Report:
    """The report afterwards, under the name of the scenario and what was changed beside it."""
    if not given:
        return made.after
    first = [] if made.scenario is None else [made.scenario]
    return replace(made.after, scenario=", then ".join([*first, changes_in_words(one.change for one in given)]))


def fail_uncomputed(changes: str, error: LayoutError) -> NoReturn:
    """Say why nothing can be computed with changes made, which are named in words, and exit."""
    fail(f"with {changes} made nothing can be computed: {'; '.join(fault.sentence for fault in error.faults)}")
