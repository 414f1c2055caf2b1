import pytest
from every_command import app
from running import TRAPPED, Write, real, run
from typer.main import get_command


@pytest.mark.parametrize("arguments", [["check"], ["trace"], ["bake"], ["check", "x", "--format", "xml"]])
def test_wrong_usage_has_status_2(arguments: list[str]) -> None:
    assert run(*arguments).exit_code == 2


def test_bare_program_shows_its_help() -> None:
    assert "Usage" in run().output


@pytest.mark.parametrize("name", sorted(get_command(app).commands))  # type: ignore[attr-defined]  # typer makes a group
def test_every_command_and_option_has_its_help(name: str) -> None:
    command = get_command(app).commands[name]  # type: ignore[attr-defined]  # typer makes a group
    assert command.help
    assert run(name, "--help").exit_code == 0
    for parameter in command.params:
        assert getattr(parameter, "help", None), parameter.name


def test_program_runs_as_a_module(write: Write) -> None:
    done = real("check", write("trapped.yaml", TRAPPED))
    assert (done.returncode, done.stderr) == (1, b"")
    assert b"heater: TRAPPED" in done.stdout
