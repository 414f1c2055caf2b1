"""The program as typer knows it; every command registers here."""

import typer

app = typer.Typer(
    name="plumbnet",
    help="Finds heated water with no way back to the street, what stops it, and what it needs.",
    no_args_is_help=True,
    add_completion=False,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
)


@app.callback()
def program() -> None:
    """Keep a program with a single command asking for its name."""
