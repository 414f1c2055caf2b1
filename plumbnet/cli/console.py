"""Words to the terminal, and the exit status they end with."""

import io
import os
import sys
from collections.abc import Iterable

import typer

from plumbnet.analysis import Report
from plumbnet.cli.ending import FINE, FOUND, NOT_UNDERSTOOD, ON_TRUST, silence
from plumbnet.report.prose import PAINTS, Paint, plain


def status(reports: Iterable[Report]) -> int:
    """Whether every heater is fine, a finding of severity error stands, or one is silenced by the file alone."""
    return worst(_status(report) for report in reports)


def worst(found: Iterable[int]) -> int:
    """The exit status that tells most of several."""
    return max(found, key=_FROM_BEST_TO_WORST.index, default=FINE)


_FROM_BEST_TO_WORST = (FINE, ON_TRUST, FOUND, NOT_UNDERSTOOD)


def _status(report: Report) -> int:
    if not report.is_fine:
        return FOUND
    return ON_TRUST if report.rests_on_applicant else FINE


def write(words: str) -> None:
    """Print words as they are; where nobody reads them any more, none from here on. Raises OSError otherwise."""
    if isinstance(sys.stdout, io.TextIOWrapper):  # where a sign is not in the terminal's alphabet
        sys.stdout.reconfigure(errors="backslashreplace", newline="")
    try:
        typer.echo(words, nl=False)
    except OSError as error:
        if not silence(error):
            raise


def console_paint() -> Paint:
    """Colours for a terminal; plain text elsewhere, and where NO_COLOR is set."""
    if not sys.stdout.isatty() or os.environ.get("NO_COLOR"):
        return plain
    return _coloured


def _coloured(words: str, meaning: str) -> str:
    return typer.style(words, fg=PAINTS.get(meaning))
