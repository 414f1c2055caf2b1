"""The command `check`."""

from enum import StrEnum
from typing import Annotated

import typer

from plumbnet.analysis.report import Report
from plumbnet.cli.app import app
from plumbnet.cli.options import Rules, Units
from plumbnet.cli.reading import refuse_unknown, report_on, told
from plumbnet.cli.writing import NOT_UNDERSTOOD, paint, status, write
from plumbnet.layout.fault import LayoutError
from plumbnet.report import json1, text
from plumbnet.report.cures import section
from plumbnet.study.remedies import Found, remedies_if_small


class Format(StrEnum):
    """How `check` writes its reports."""

    TEXT = "text"
    JSON = "json"


Files = Annotated[list[str], typer.Argument(metavar="FILE...", help="Layout files; - reads standard input.")]


@app.command()
def check(
    files: Files,
    rules: Rules = None,
    units: Units = None,
    output: Annotated[Format, typer.Option("--format", help="How to write the reports.")] = Format.TEXT,
) -> None:
    """Verdicts and findings for every heater of each file.

    Exit status: 0 every heater is fine, 1 a finding of severity error stands, 2 a file could not be understood.
    """
    refuse_unknown(rules)
    reports = list[Report]()
    cures = list[Found | None]()
    errors: list[json1.Json] = []
    for file in files:
        try:
            report = report_on(file, rules, units)
        except (LayoutError, OSError) as error:
            errors += told(file, error, aloud=output is Format.TEXT)
        else:
            reports.append(report)
            cures.append(remedies_if_small(report))
            if output is Format.TEXT:
                more = section(report.facts, cures[-1])
                write(text.to_text(report, paint=paint(), more=more), blank_line=len(reports) > 1)
    if output is Format.JSON:
        write(json1.to_json(reports, errors, cures) + "\n")
    raise typer.Exit(NOT_UNDERSTOOD if errors else status(reports))
