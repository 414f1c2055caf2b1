"""The command `rules`."""

from typing import Annotated

import typer

from plumbnet.cli.app import command
from plumbnet.cli.arguments import fail, profile_named
from plumbnet.cli.console import write
from plumbnet.layout.yaml import quoted
from plumbnet.report.reference import finding_text, findings_text, profile_text, profiles_text
from plumbnet.rules import FILE_ENDINGS, GENERAL, REQUIREMENTS, profile_names


@command()
def rules(
    name: Annotated[str | None, typer.Argument(metavar="[NAME]", help="A profile, a file of one, a finding.")] = None,
    *,
    findings: Annotated[bool, typer.Option("--findings", help="List the findings, not the profiles.")] = False,
    under: Annotated[str, typer.Option("--rules", metavar="NAME", help="Profile that grades the findings.")] = GENERAL,
) -> None:
    """The rule profiles with their values and clauses, and the findings with their examples."""
    grading = profile_named(under)
    if findings and name is None:
        write(findings_text(grading))
    elif name is None:
        write(profiles_text([profile_named(each) for each in profile_names()]))
    elif name in REQUIREMENTS:
        write(finding_text(name, grading))
    elif name in profile_names() or name.endswith(FILE_ENDINGS):
        write(profile_text(profile_named(name)))
    else:
        fail(
            f"no profile or finding is called {quoted(name)}",
            name,
            [*profile_names(), *REQUIREMENTS],
            "plumbnet rules lists them",
        )
