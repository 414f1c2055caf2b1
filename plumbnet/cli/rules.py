"""The command `rules`."""

from typing import Annotated

import typer

from plumbnet.cli.app import app
from plumbnet.cli.reading import fail, profile_named
from plumbnet.cli.writing import write
from plumbnet.layout.fault import quoted
from plumbnet.report import rulebook
from plumbnet.rules.finding import RULES
from plumbnet.rules.profile import FILE_ENDINGS, GENERAL, profile_names


@app.command()
def rules(
    name: Annotated[str | None, typer.Argument(metavar="[NAME]", help="A profile, a file of one, a finding.")] = None,
    *,
    findings: Annotated[bool, typer.Option("--findings", help="List the findings, not the profiles.")] = False,
    under: Annotated[str, typer.Option("--rules", metavar="NAME", help="Profile that grades the findings.")] = GENERAL,
) -> None:
    """The rule profiles with their values and clauses, and the findings with their examples."""
    grading = profile_named(under)
    if findings and name is None:
        write(rulebook.findings_text(grading))
    elif name is None:
        write(rulebook.profiles_text([profile_named(each) for each in profile_names()]))
    elif name in RULES:
        write(rulebook.finding_text(name, grading))
    elif name in profile_names() or name.endswith(FILE_ENDINGS):
        write(rulebook.profile_text(profile_named(name)))
    else:
        fail(
            f"no profile or finding is called {quoted(name)}",
            name,
            [*profile_names(), *RULES],
            "plumbnet rules lists them",
        )
