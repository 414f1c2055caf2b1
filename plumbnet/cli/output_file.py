"""A file that a command writes: its form by the ending of its name, and one calm sentence where it cannot be."""

from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import Annotated, NoReturn, TypeVar

import typer

from plumbnet.cli.arguments import fail
from plumbnet.cli.file_search import STANDARD_INPUT
from plumbnet.layout.yaml import reason_of
from plumbnet.library import UnknownForm
from plumbnet.library import form_of as form_by_name
from plumbnet.report.output import write_whole

Form = TypeVar("Form", bound=str)
Out = Annotated[Path, typer.Option("-o", "--output", metavar="OUT", help="The file to write; its ending says how.")]


def form_of_output(out: Path, forms: Sequence[Form]) -> Form:
    """The one of some forms that the ending of a name asks for; says which there are and exits where it is none."""
    try:
        return form_by_name(out, forms)
    except UnknownForm as error:
        fail(str(error))


def save(out: Path, content: bytes, *, read: Iterable[str | None] = ()) -> None:
    """Write a file whole; says so and exits where it cannot be written, or is one of those that were `read`.

    What stood under its name stays then as it is.
    """
    for source in read:
        if source is not None and _is_same(out, source):
            fail(f"{out} is the file that was read, and stays as it is", advice="write to another name")
    try:
        write_whole(out, content)
    except OSError as error:
        fail_unwritten(out, error)


def save_new(out: Path, content: bytes, *, read: Sequence[str], force: bool) -> None:
    """Write a file that is made of others, which were `read`; says so and exits where one is there, or it is of those.

    `force` writes over any file but those that it is made of.
    """
    if out.exists() and not force and not any(_is_same(out, source) for source in read):
        fail(f"{out} is there already", advice="with --force it is written over")
    save(out, content, read=read)


def fail_unwritten(out: Path, error: OSError) -> NoReturn:
    """Say why a file cannot be written, and whether an old one stands there still, and exit."""
    stays = "; the file that was there stays as it is" if out.is_file() else ""
    fail(f"{out} cannot be written: {reason_of(error)}{stays}")


def _is_same(out: Path, source: str) -> bool:
    """Whether what is to be written is a file that was read, under whatever name."""
    return source != STANDARD_INPUT and out.is_file() and Path(source).exists() and out.samefile(source)
