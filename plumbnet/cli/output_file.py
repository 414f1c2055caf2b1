"""A file that a command writes: its form by the ending of its name, and one calm sentence where it cannot be."""

from collections.abc import Sequence
from pathlib import Path
from typing import Annotated, NoReturn, TypeVar

import typer

from plumbnet.cli.arguments import fail
from plumbnet.cli.file_search import STANDARD_INPUT
from plumbnet.layout.yaml import reason_of
from plumbnet.library import UnknownForm
from plumbnet.library import form_of as form_by_name

Form = TypeVar("Form", bound=str)
Out = Annotated[Path, typer.Option("-o", "--output", metavar="OUT", help="The file to write; its ending says how.")]


def form_of_output(out: Path, forms: Sequence[Form]) -> Form:
    """The one of some forms that the ending of a name asks for; says which there are and exits where it is none."""
    try:
        return form_by_name(out, forms)
    except UnknownForm as error:
        fail(str(error))


def save(out: Path, content: bytes) -> None:
    """Write a file; says so and exits where it cannot be written."""
    try:
        out.write_bytes(content)
    except OSError as error:
        fail_unwritten(out, error)


def save_new(out: Path, content: bytes, *, source: str, force: bool) -> None:
    """Write a file that is made of another, `source`; says so and exits where one is there already, or it is that one.

    `force` writes over any file but the one that it is made of.
    """
    if source != STANDARD_INPUT and out.exists() and Path(source).exists() and out.samefile(source):
        fail(f"{out} is the file that was read", advice="write the changed layout under another name")
    if out.exists() and not force:
        fail(f"{out} is there already", advice="with --force it is written over")
    save(out, content)


def fail_unwritten(out: Path, error: OSError) -> NoReturn:
    """Say why a file cannot be written, and exit."""
    fail(f"{out} cannot be written: {reason_of(error)}")
