"""The command `assemblies`."""

from typing import Annotated

import typer

from plumbnet.cli.app import command
from plumbnet.cli.arguments import fail
from plumbnet.cli.console import write
from plumbnet.layout.authoring import shipped_assemblies, shipped_names
from plumbnet.layout.yaml import quoted
from plumbnet.report.reference import assemblies_text


@command()
def assemblies(
    name: Annotated[str | None, typer.Argument(metavar="[NAME]", help="One set; a list of all when left out.")] = None,
) -> None:
    """The assemblies that come with the program, to be used by --with NAME; with a name, the file of that set."""
    if name is None:
        write(assemblies_text({one: shipped_assemblies(one) for one in shipped_names()}))
    elif name in shipped_names():
        write(shipped_assemblies(name).decode())
    else:
        fail(
            f"no assemblies are called {quoted(name)}",
            name,
            shipped_names(),
            "the command plumbnet assemblies lists them all",
        )
