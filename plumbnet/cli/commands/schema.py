"""The command `schema`."""

from plumbnet.cli.app import command
from plumbnet.cli.console import write
from plumbnet.report.reference import schema_text


@command()
def schema() -> None:
    """The JSON Schema of the file format, for editors that complete and check."""
    write(schema_text())
