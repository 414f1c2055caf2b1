"""The command line: reads arguments, calls, hands to a renderer, sets the exit status; no logic of its own.

Every command stands here, in one place.
"""

import io
import os
import sys
from collections.abc import Iterable
from enum import StrEnum
from pathlib import Path
from typing import Annotated, Literal, NoReturn

import typer

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.analysis.sheet import sheets
from plumbnet.analysis.warming import NoWarmUp, warm_up
from plumbnet.layout.fault import Fault, LayoutError, nearest, quoted, visible
from plumbnet.layout.part import KINDS
from plumbnet.layout.system import System
from plumbnet.physics.methods import METHODS
from plumbnet.report import catalogue, json1, text
from plumbnet.report import warmup as course
from plumbnet.report.cures import section
from plumbnet.report.cures import to_text as remedies_text
from plumbnet.report.sheet import sheets_markdown, sheets_text
from plumbnet.report.sheet_json import sheets_json
from plumbnet.report.table import Paint
from plumbnet.report.trace import trace as trace_text
from plumbnet.rules.profile import UnknownProfile, profile
from plumbnet.study.placement import plans
from plumbnet.study.remedies import Found, remedies_if_small

FINE, FOUND, NOT_UNDERSTOOD = 0, 1, 2
STANDARD_INPUT = "-"

app = typer.Typer(
    name="plumbnet",
    help="Finds heated water with no way back to the street, what stops it, and what it needs.",
    no_args_is_help=True,
    add_completion=False,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
)


class Format(StrEnum):
    """How `check` writes its reports."""

    TEXT = "text"
    JSON = "json"


class SheetFormat(StrEnum):
    """How `size` writes a calculation sheet."""

    TEXT = "text"
    MARKDOWN = "markdown"
    JSON = "json"


class TableFormat(StrEnum):
    """How `warmup` writes what happens in time."""

    TEXT = "text"
    CSV = "csv"
    JSON = "json"


class UnitChoice(StrEnum):
    """The units of a report, where they are not to be those of the file."""

    US = "us"
    METRIC = "metric"

    @property
    def units(self) -> Literal["us", "metric"]:
        """The name that the library uses."""
        return "us" if self is UnitChoice.US else "metric"


Files = Annotated[list[str], typer.Argument(metavar="FILE...", help="Layout files; - reads standard input.")]
File = Annotated[str, typer.Argument(metavar="FILE", help="A layout file; - reads standard input.")]
Rules = Annotated[str | None, typer.Option("--rules", metavar="NAME", help="Rule profile, in place of the file's.")]
Units = Annotated[UnitChoice | None, typer.Option("--units", help="Units of the report, in place of the file's.")]


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
    _refuse_unknown(rules)
    reports: list[Report] = []
    cures: list[Found | None] = []
    errors: list[json1.Json] = []
    for file in files:
        try:
            report = _report(file, rules, units)
        except (LayoutError, OSError) as error:
            errors += _told(file, error, aloud=output is Format.TEXT)
        else:
            reports.append(report)
            cures.append(remedies_if_small(report))
            if output is Format.TEXT:
                more = section(report.facts, cures[-1])
                _write(text.to_text(report, paint=_paint(), more=more), blank_line=len(reports) > 1)
    if output is Format.JSON:
        _write(json1.to_json(reports, errors, cures) + "\n")
    raise typer.Exit(_status(reports, errors))


@app.command()
def trace(
    file: File,
    heater: Annotated[str | None, typer.Argument(metavar="[HEATER]", help="One heater; all when left out.")] = None,
    rules: Rules = None,
    units: Units = None,
) -> None:
    """Follow the water from a heater, step by step: where it can go, what stops it, what opens."""
    report = _report_with(file, heater, rules, units)
    chosen = [one for one in report.heaters if heater in {None, one.name}]
    _write("\n\n".join(trace_text(report, one) for one in chosen))
    raise typer.Exit(_status([report], []))


@app.command()
def remedies(
    file: File,
    heater: Annotated[str | None, typer.Argument(metavar="[HEATER]", help="One heater; all when left out.")] = None,
    rules: Rules = None,
    units: Units = None,
) -> None:
    """What would cure each heater in trouble, tried on a copy: least work first, each as a scenario to paste."""
    report = _report_with(file, heater, rules, units)
    found = {name: own for name, own in plumbnet.remedies(report).items() if heater in {None, name}}
    tanks = () if heater is not None else plans(report)
    _write(remedies_text(report, found, tanks, paint=_paint()))
    raise typer.Exit(_status([report], []))


@app.command()
def size(  # noqa: PLR0913, PLR0917  each is an option of the command
    file: File,
    heater: Annotated[str | None, typer.Argument(metavar="[HEATER]", help="One heater; all when left out.")] = None,
    method: Annotated[str | None, typer.Option(metavar="NAME", help="Sizing method, in place of the file's.")] = None,
    output: Annotated[SheetFormat, typer.Option("--format", help="How to write the sheet.")] = SheetFormat.TEXT,
    rules: Rules = None,
    units: Units = None,
) -> None:
    """The calculation sheet: the tank each heater needs, every step with its formula, numbers, units and source."""
    if method is not None and method not in METHODS:
        _fail(f"no sizing method is called {quoted(method)}", method, METHODS, f"there is {', '.join(METHODS)}")
    report = _report_with(file, heater, rules, units)
    found = sheets(report, [one for one in report.heaters if heater in {None, one.name}], method=method)
    _write({"text": sheets_text, "markdown": sheets_markdown, "json": sheets_json}[output](found, report.facts.units))
    raise typer.Exit(_status([report], []))


@app.command()
def warmup(
    file: File,
    heater: Annotated[str, typer.Argument(metavar="HEATER", help="The heater that is lit from cold.")],
    minutes: Annotated[float | None, typer.Option(min=0.0, help="How long; until all is hot when left out.")] = None,
    output: Annotated[TableFormat, typer.Option("--format", help="How to write the course.")] = TableFormat.TEXT,
    units: Units = None,
) -> None:
    """Temperature, pressure and water lost against time, from a cold start with every fixture shut."""
    report = _report_with(file, heater, None, units)
    try:
        warming = warm_up(report, heater, minutes=minutes)
    except NoWarmUp as error:
        _fail(str(error))
    _write({"text": course.to_text, "csv": course.to_csv, "json": course.to_json}[output](warming))
    raise typer.Exit(_status([report], []))


@app.command()
def kinds(
    kind: Annotated[str | None, typer.Argument(metavar="[KIND]", help="One kind; all when left out.")] = None,
) -> None:
    """The kinds of part: fields, units, defaults, ports, and what is taken for granted."""
    if kind is None:
        _write(catalogue.kinds_text())
    elif kind in KINDS:
        _write(catalogue.kind_text(kind))
    else:
        _fail(f"unknown kind {quoted(kind)}", kind, KINDS, "the command plumbnet kinds lists them all")


@app.command()
def schema() -> None:
    """The JSON Schema of the file format, for editors that complete and check."""
    _write(catalogue.schema_text())


def _report(file: str, rules: str | None, units: UnitChoice | None) -> Report:
    return plumbnet.check(_read(file), rules=rules, units=None if units is None else units.units)


def _report_with(file: str, heater: str | None, rules: str | None, units: UnitChoice | None) -> Report:
    """The report on a file; says what is wrong and exits where it cannot be read or has no such heater."""
    _refuse_unknown(rules)
    try:
        report = _report(file, rules, units)
    except (LayoutError, OSError) as error:
        _told(file, error, aloud=True)
        raise typer.Exit(NOT_UNDERSTOOD) from error
    names = [one.name for one in report.heaters]
    if heater is not None and heater not in names:
        known = f"there is {', '.join(names) or 'none'}"
        _fail(f"no heater is called {quoted(heater)} in {file}", heater, names, known)
    return report


def _read(file: str) -> System:
    if file == STANDARD_INPUT:
        return plumbnet.read_bytes(sys.stdin.buffer.read(), file="standard input")
    return plumbnet.read(Path(file))


def _told(file: str, error: LayoutError | OSError, *, aloud: bool) -> list[json1.Json]:
    """An error for people on standard error, if `aloud`; and as data."""
    if isinstance(error, LayoutError):
        words, rows = str(error), json1.layout_errors(error)
    else:
        reason = error.strerror or str(error)
        reason = f"{reason[:1].lower()}{reason[1:]}"
        words, rows = visible(f"{file}: {reason}"), [json1.file_error(file, reason)]
    if aloud:
        typer.echo(words, err=True)
    return rows


def _refuse_unknown(rules: str | None) -> None:
    if rules is not None:
        try:
            profile(rules)
        except UnknownProfile as error:
            _fail(str(error))


def _fail(words: str, word: str = "", known: Iterable[str] = (), advice: str = "") -> NoReturn:
    """Say what is wrong, with the nearest known word or else the advice, and exit."""
    typer.echo(visible(Fault(0, 0, words, nearest(word, known) or advice).sentence), err=True)
    raise typer.Exit(NOT_UNDERSTOOD)


def _status(reports: Iterable[Report], errors: Iterable[json1.Json]) -> int:
    if list(errors):
        return NOT_UNDERSTOOD
    return FINE if all(report.is_fine for report in reports) else FOUND


def _write(words: str, *, blank_line: bool = False) -> None:
    if isinstance(sys.stdout, io.TextIOWrapper):  # where a sign is not in the terminal's alphabet
        sys.stdout.reconfigure(errors="backslashreplace")
    typer.echo(("\n" if blank_line else "") + words, nl=False)


def _paint() -> Paint:
    """Colours for a terminal; plain text elsewhere, and where NO_COLOR is set."""
    if not sys.stdout.isatty() or os.environ.get("NO_COLOR"):
        return text.plain
    return lambda words, meaning: typer.style(words, fg=text.PAINTS.get(meaning))
