"""Arguments and options that several commands share."""

from enum import StrEnum
from typing import Annotated, Literal

import typer


class UnitChoice(StrEnum):
    """The units of a report, where they are not to be those of the file."""

    US = "us"
    METRIC = "metric"

    @property
    def units(self) -> Literal["us", "metric"]:
        """The name that the library uses."""
        return "us" if self is UnitChoice.US else "metric"


File = Annotated[str, typer.Argument(metavar="FILE", help="A layout file; - reads standard input.")]
AnyHeater = Annotated[str | None, typer.Argument(metavar="[HEATER]", help="One heater; all when left out.")]
Rules = Annotated[
    str | None,
    typer.Option("--rules", metavar="NAME", help="Rule profile by name, or a file of one; in place of the file's."),
]
Units = Annotated[UnitChoice | None, typer.Option("--units", help="Units of the report, in place of the file's.")]
