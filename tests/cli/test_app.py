from pathlib import Path
from typing import Any

import pytest
from every_command import app
from running import FAULTY, OPEN, TRAPPED, Write, real, run
from typer.main import get_command

from plumbnet.cli.app import FILE_ARGUMENTS
from plumbnet.layout.file.loader import _Reader

COMMANDS: dict[str, Any] = get_command(app).commands  # type: ignore[attr-defined]  # typer makes a group
READING = sorted(name for name, one in COMMANDS.items() if {each.name for each in one.params} & set(FILE_ARGUMENTS))
ASKED_FOR = {
    "chart": ("--of", "ladder", "-o", "out.svg"),
    "draw": ("-o", "out.svg"),
    "export": ("-o", "out"),
    "import": ("-o", "out.yaml"),
    "report": ("-o", "out.html"),
    "whatif": ("--remove", "cv"),
    "warmup": ("heater",),
}
"""What a command needs beside a file."""
FAILED = (
    "the program failed on this file, by a mistake of its own (ZeroDivisionError: odd; "
    "{at}plumbnet 0.1.0); please report it where you have plumbnet from, with these words and, if you may, with the "
    "file\n"
)


@pytest.mark.parametrize("arguments", [["check"], ["trace"], ["bake"], ["check", "x", "--format", "xml"]])
def test_wrong_usage_has_status_2(arguments: list[str]) -> None:
    assert run(*arguments).exit_code == 2


def test_bare_program_shows_its_help() -> None:
    assert "Usage" in run().output


@pytest.mark.parametrize("name", sorted(COMMANDS))
def test_every_command_and_option_has_its_help(name: str) -> None:
    command = COMMANDS[name]
    assert command.help
    assert run(name, "--help").exit_code == 0
    for parameter in command.params:
        assert getattr(parameter, "help", None), parameter.name


def test_program_runs_as_a_module(write: Write) -> None:
    done = real("check", write("trapped.yaml", TRAPPED))
    assert (done.returncode, done.stderr) == (1, b"")
    assert b"heater: TRAPPED" in done.stdout


def failing(*_: object, **__: object) -> None:
    raise ZeroDivisionError("odd")


@pytest.mark.parametrize("name", READING)
def test_failure_that_nobody_has_foreseen_is_a_sentence_for_the_file_with_status_2(
    name: str, write: Write, monkeypatch: pytest.MonkeyPatch
) -> None:
    write("bad.yaml", TRAPPED)
    write("bad.csv", "name;kind\nstreet;main\n")
    monkeypatch.setattr(_Reader, "system", failing)
    monkeypatch.setattr("plumbnet.cli.commands.import.layout_of", failing)
    arguments = [one.name for one in COMMANDS[name].params if one.name in FILE_ARGUMENTS]
    files = ["bad.csv" if one == "tables" else "bad.yaml" for one in arguments]
    result = run(name, *files, *ASKED_FOR.get(name, ()))
    assert result.exit_code == 2
    said, on = " ".join(result.output.split()), "this file" if len(files) == 1 else "these files"
    assert f"the program failed on {on}, by a mistake of its own (ZeroDivisionError: odd; " in said
    assert files[0] in said
    assert "Traceback" not in said


@pytest.mark.parametrize("command", ["check", "review", "survey"])
def test_failure_of_one_file_leaves_the_others_their_answers(
    command: str, write: Write, monkeypatch: pytest.MonkeyPatch
) -> None:
    real_system = _Reader.system

    def fail_on_some(reader: _Reader) -> Any:  # noqa: ANN401  as it is
        return failing() if reader.record.text.startswith("title: bad") else real_system(reader)

    monkeypatch.setattr(_Reader, "system", fail_on_some)
    write("a.yaml", f"title: bad\n{OPEN}")
    write("b.yaml", TRAPPED)
    write("c.yaml", FAULTY)
    result = run(command, "a.yaml", "b.yaml", "c.yaml")
    assert result.exit_code == 2
    assert "trapped-expansion" in result.stdout
    assert 'unknown kind "mian"' in result.output
    assert "a.yaml: the program failed on this file" in result.output


def test_sentence_names_the_failure_its_place_and_where_to_report_it(
    write: Write, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("plumbnet.cli.commands.trace.report_supposed", failing)
    result = run("trace", write("a.yaml", OPEN))
    place = f"cli/commands/trace.py, line {_line_of('report = report_supposed')}; "
    assert (result.exit_code, result.stderr) == (2, f"a.yaml: {FAILED.format(at=place)}")


def _line_of(words: str) -> int:
    text = (Path(__file__).parents[2] / "plumbnet" / "cli" / "commands" / "trace.py").read_text(encoding="utf-8")
    return next(number for number, line in enumerate(text.splitlines(), 1) if words in line)


def test_command_without_a_file_ends_in_a_sentence_too(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("plumbnet.cli.commands.tubes.tubes_text", failing)
    result = run("tubes")
    assert (result.exit_code, result.stdout) == (2, "")
    assert result.stderr.startswith("plumbnet: the program failed, by a mistake of its own (ZeroDivisionError: odd; ")
