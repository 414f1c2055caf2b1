"""A layout in one of its scenarios, or one calm sentence and exit status 2."""

from typing import NoReturn

from plumbnet.analysis.report import Report
from plumbnet.cli.reading import fail
from plumbnet.layout.fault import LayoutError, quoted
from plumbnet.study.whatif import UnknownScenario, whatif


def in_scenario(report: Report, scenario: str | None) -> Report:
    """The report on a layout in a scenario of it, or as it is; says what is wrong and exits where there is none."""
    if scenario is None:
        return report
    try:
        return whatif(report, scenario=scenario).after
    except UnknownScenario as error:
        fail(str(error))
    except LayoutError as error:
        fail_uncomputed(f"the scenario {quoted(scenario)}", error)


def fail_uncomputed(changes: str, error: LayoutError) -> NoReturn:
    """Say why nothing can be computed with changes made, which are named in words, and exit."""
    fail(f"with {changes} made nothing can be computed: {'; '.join(fault.sentence for fault in error.faults)}")
