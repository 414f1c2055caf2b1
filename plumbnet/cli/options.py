"""Arguments and options that several commands share."""

from typing import Annotated

import typer

from plumbnet.layout.units import Units

File = Annotated[str, typer.Argument(metavar="FILE", help="A layout file; - reads standard input.")]
Files = Annotated[
    list[str],
    typer.Argument(metavar="FILE...", help="Layout files, folders of them, patterns; - reads standard input."),
]
AnyHeater = Annotated[str | None, typer.Argument(metavar="[HEATER]", help="One heater; all when left out.")]
Rules = Annotated[
    list[str] | None,
    typer.Option(
        "--rules",
        metavar="NAME",
        help="Rule profile by name, or a file of one, in place of the file's; or one for each circuit, as "
        "water=ipc-2021, then heating=us-boiler.",
    ),
]
UnitsOption = Annotated[Units | None, typer.Option("--units", help="Units of the report, in place of the file's.")]
ScenarioOption = Annotated[
    str | None, typer.Option("--scenario", metavar="NAME", help="The layout as this scenario of the file makes it.")
]
Strict = Annotated[bool, typer.Option("--strict", help="A YAML file in a folder that is no layout is an error.")]
MOST_JOBS = 256
"""Processes at work: each takes some 60 MB, and more than there are cores do nothing sooner."""
Jobs = Annotated[
    int | None,
    typer.Option(
        min=1, max=MOST_JOBS, metavar="N", help=f"Processes at work, {MOST_JOBS} at most; one to a core when left out."
    ),
]
