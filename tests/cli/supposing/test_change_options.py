"""Options that are changes; tests/cli/commands/test_whatif.py runs each of them."""

from typing import Annotated

import typer
from typer.testing import CliRunner

from plumbnet.cli.supposing.change_options import Close, Open, Ordered, SetOption, given_changes


def order(*words: str) -> str:
    """What a command with three such options is given, in order."""
    app = typer.Typer()

    @app.command(cls=Ordered)
    def command(
        context: typer.Context,
        file: Annotated[str, typer.Argument()],
        close: Close = None,
        open: Open = None,  # noqa: A002  the word of the file format
        setting: SetOption = None,
    ) -> None:
        assert file == "file"
        assert sorted(f"{value}" for values in (close, open, setting) for value in values or ()) == sorted(
            one.text for one in given_changes(context)
        )
        typer.echo(" ".join(f"{one.option}={one.text}" for one in given_changes(context)))

    return CliRunner().invoke(app, [*words]).stdout.strip()


def test_options_that_come_several_times_keep_their_order() -> None:
    words = ["--open", "a", "--close", "b", "file", "--open", "c", "--set=d.e=5", "--close=f"]
    assert order(*words) == "--open=a --close=b --open=c --set=d.e=5 --close=f"


def test_command_without_such_options_has_no_changes() -> None:
    assert not order("file")


def test_several_fields_may_be_set_at_once() -> None:
    text = "{part: heater, volume: 60 gal, relief: null}"
    assert order("file", "--set", text) == f"--set={text}"
