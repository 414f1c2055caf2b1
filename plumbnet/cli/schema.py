"""The command `schema`."""

from plumbnet.cli.app import app
from plumbnet.cli.writing import write
from plumbnet.report import catalogue


@app.command()
def schema() -> None:
    """The JSON Schema of the file format, for editors that complete and check."""
    write(catalogue.schema_text())
