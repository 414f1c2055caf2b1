"""The command `class`."""

from enum import StrEnum
from pathlib import Path
from typing import Annotated, Literal

import typer

from plumbnet.cli.app import command
from plumbnet.cli.arguments import fail
from plumbnet.cli.console import write
from plumbnet.cli.output_file import form_of_output, save
from plumbnet.cli.playing import results_of
from plumbnet.cli.progress_bar import at_work
from plumbnet.layout.yaml import quoted
from plumbnet.study.training import Results, class_rows


class _ClassForm(StrEnum):
    """How `class` writes its table."""

    TEXT = "text"
    CSV = "csv"


_Form = Literal["html", "pdf", "csv"]
_FORMS: tuple[_Form, ...] = ("html", "pdf", "csv")
_Given = Annotated[list[str], typer.Argument(metavar="RESULTS...", help="Answers as --results keeps them.")]
_Out = Annotated[
    Path | None, typer.Option("-o", "--output", metavar="OUT", help="A page, .html or .pdf, or a table, .csv.")
]


@command("class")
def class_(
    results: _Given,
    form: Annotated[_ClassForm, typer.Option("--format", help="How to write what is printed.")] = _ClassForm.TEXT,
    out: _Out = None,
) -> None:
    """Who of a class held which belief: a table of the answers that apprentices gave, and no marks."""
    read = {file: results_of(file) for file in results}
    named = _by_name(read)
    written = None if out is None else form_of_output(out, _FORMS)
    with at_work("writing"):
        from plumbnet.report.worksheets.classroom import class_csv, class_page, class_text  # noqa: PLC0415  pages are slow

        rows, names = class_rows(named), list(named)
        if out is not None and written is not None:
            is_metric = any(one.units != "us" for each in read.values() for one in each.sittings)
            page = (
                class_csv(rows).encode() if written == "csv" else class_page(rows, names, written, is_metric=is_metric)
            )
            save(out, page, read=results)
            return
        text = class_csv(rows) if form is _ClassForm.CSV else class_text(rows, names)
    write(text)


def _by_name(read: dict[str, Results]) -> dict[str, Results]:
    """The results by who answered, or else by the name of the file; says what is wrong and exits where two are one."""
    named: dict[str, Results] = {}
    for file, results in read.items():
        name = results.name or Path(file).stem
        if name in named:
            fail(
                f"{quoted(name)} stands for two of these files", advice="give each a name in its file, as name: Ada B."
            )
        named[name] = results
    return named
