"""A layout in one of its scenarios, or one calm sentence and exit status 2."""

from collections.abc import Sequence
from typing import NoReturn

from plumbnet.analysis import Report
from plumbnet.cli.arguments import demand_heater, fail, refuse, report_with
from plumbnet.layout.units import Units
from plumbnet.layout.yaml import LayoutError, quoted
from plumbnet.rules import OwnAcceptances
from plumbnet.study.whatif import FaultyScenario, UnknownScenario, whatif


def report_supposed(  # noqa: PLR0913, PLR0917  each is an option of a command
    file: str,
    heater: str | None,
    rules: Sequence[str] | None,
    units: Units | None,
    scenario: str | None,
    own: OwnAcceptances | None = None,
) -> Report:
    """The report on a file in a scenario of it; says what is wrong and exits where it has no such heater then."""
    report = _in_scenario(report_with(file, None, rules, units, own), scenario)
    if heater is not None:
        demand_heater(report, heater, file)
    return report


def _in_scenario(report: Report, scenario: str | None) -> Report:
    """The report on a layout in a scenario of it, or as it is; says what is wrong and exits where there is none."""
    if scenario is None:
        return report
    try:
        return whatif(report, scenario=scenario).after
    except UnknownScenario as error:
        fail(str(error))
    except FaultyScenario as error:
        refuse(error.file, error)
    except LayoutError as error:
        fail_uncomputed(f"the scenario {quoted(scenario)}", error)


def fail_uncomputed(changes: str, error: LayoutError) -> NoReturn:
    """Say why nothing can be computed with changes made, which are named in words, and exit."""
    fail(f"with {changes} made nothing can be computed: {'; '.join(fault.sentence for fault in error.faults)}")
