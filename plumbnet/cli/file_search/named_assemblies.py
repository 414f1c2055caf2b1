"""Files, or sets that come with the program, whose assemblies layouts may use, as a command line names them."""

from collections.abc import Sequence
from contextvars import ContextVar

import typer

from plumbnet.cli.ending import NOT_UNDERSTOOD
from plumbnet.layout.model import AssemblyFile
from plumbnet.layout.yaml import bytes_of, nearest, quoted, reason_of, visible

SHELF: ContextVar[tuple[AssemblyFile, ...]] = ContextVar("shelf", default=())
"""The files that the command line names, while its command runs."""


def use_assemblies(named: Sequence[str]) -> None:
    """Have the layouts of this command use what is named; says what is wrong and exits where that cannot be read."""
    SHELF.set(tuple(_file(name) for name in named))


def _file(named: str) -> AssemblyFile:
    """The file of that path, or the set of that name."""
    try:
        return AssemblyFile(named, bytes_of(named))
    except OSError as error:
        from plumbnet.layout.authoring import shipped_assemblies, shipped_names  # noqa: PLC0415  no check needs it

        if named in shipped_names():
            return AssemblyFile(f"{named} of plumbnet", shipped_assemblies(named))
        hint = nearest(named, shipped_names()) or "the command plumbnet assemblies lists the sets that come with it"
        sign = ":" if hint.endswith("?") else ";"
        typer.echo(visible(f"--with {quoted(named)}: {reason_of(error)}{sign} {hint}"), err=True)
        raise typer.Exit(NOT_UNDERSTOOD) from error
