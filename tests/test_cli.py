"""The command line: statuses, what goes to which stream, what a terminal gets to see."""

import json
import os
import pty
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from conftest import layout
from typer.main import get_command
from typer.testing import CliRunner, Result

from plumbnet.cli import app

OPEN = layout("street -> valve -> heater -> tap.hot", heater="relief: {pressure: 150 psi}")
TRAPPED = layout("street -> cv -> heater -> tap.hot", heater="relief: {pressure: 150 psi}")
FAULTY = "plumbnet: 1\nparts: {m: {kind: mian}, t: tee}\nruns: [m -> t]\n"
ONLY_PIPE = "plumbnet: 1\nparts: {m: {kind: main, pressure: 60}, t: tee}\nruns: [m -> t]\n"
HOSTILE = 'title: "\\e[2J\\u202eevil\\a"\n'
CONTROL = ("\x1b", "\x07", "\u202e", "\x9b")

Write = Callable[..., str]


@pytest.fixture
def write(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Write:
    """Writes files into the folder the program runs in, and returns the name."""
    monkeypatch.chdir(tmp_path)

    def one(name: str, text: str) -> str:
        Path(name).write_text(text, encoding="utf-8")
        return name

    return one


def run(*arguments: str, given: str = "", **environment: str) -> Result:
    return CliRunner().invoke(app, arguments, input=given, env=environment)


def real(*arguments: str, given: bytes = b"", **environment: str) -> "subprocess.CompletedProcess[bytes]":
    """The program in a process of its own."""
    command = [sys.executable, "-m", "plumbnet", *arguments]
    environment = {**os.environ, **environment}
    return subprocess.run(command, input=given, capture_output=True, env=environment, check=False)  # noqa: S603  # ours


def document(result: Result) -> dict[str, Any]:
    read: dict[str, Any] = json.loads(result.stdout)
    return read


def test_status_is_0_where_every_heater_is_fine(write: Write) -> None:
    result = run("check", write("open.yaml", OPEN))
    assert result.exit_code == 0
    assert "heater: OPEN" in result.stdout
    assert result.stderr == ""


def test_status_is_1_where_a_finding_of_severity_error_stands(write: Write) -> None:
    result = run("check", write("trapped.yaml", TRAPPED))
    assert result.exit_code == 1
    assert "heater: TRAPPED" in result.stdout


def test_status_is_2_where_a_file_is_not_understood(write: Write) -> None:
    result = run("check", write("faulty.yaml", FAULTY))
    assert result.exit_code == 2
    assert result.stdout == ""
    assert result.stderr == (
        'faulty.yaml:2:19: unknown kind "mian": did you mean "main"?\n'
        "  2 | parts: {m: {kind: mian}, t: tee}\n"
        "    |                   ^~~~\n"
    )


def test_bad_file_among_many_hides_no_other(write: Write) -> None:
    write("trapped.yaml", TRAPPED)
    write("faulty.yaml", FAULTY)
    write("open.yaml", OPEN)
    result = run("check", "trapped.yaml", "faulty.yaml", "none.yaml", "open.yaml")
    assert result.exit_code == 2
    assert "heater: TRAPPED" in result.stdout
    assert "heater: OPEN" in result.stdout
    assert "\n\nopen.yaml" in result.stdout
    assert 'unknown kind "mian"' in result.stderr
    assert "none.yaml: no such file or directory\n" in result.stderr


def test_bad_file_among_many_hides_no_other_in_json(write: Write) -> None:
    write("trapped.yaml", TRAPPED)
    write("faulty.yaml", FAULTY)
    result = run("check", "--format", "json", "trapped.yaml", "faulty.yaml", "none.yaml")
    assert result.exit_code == 2
    assert result.stderr == ""
    assert [report["file"] for report in document(result)["reports"]] == ["trapped.yaml"]
    assert document(result)["errors"] == [
        {"file": "faulty.yaml", "line": 2, "column": 19, "text": 'unknown kind "mian": did you mean "main"?'},
        {"file": "none.yaml", "line": 0, "column": 0, "text": "no such file or directory"},
    ]


def test_json_sets_the_same_status_as_text(write: Write) -> None:
    assert run("check", "--format", "json", write("open.yaml", OPEN)).exit_code == 0
    assert run("check", "--format", "json", write("trapped.yaml", TRAPPED)).exit_code == 1


def test_hyphen_reads_standard_input() -> None:
    result = run("check", "-", given=TRAPPED)
    assert result.exit_code == 1
    assert result.stdout.startswith("standard input\n")
    assert run("check", "-", given=FAULTY).stderr.startswith("standard input:2:19: ")
    assert run("trace", "-", given=OPEN).exit_code == 0


def test_folder_and_missing_file_are_told_in_a_line(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "folder").mkdir()
    for command in ("check", "trace", "remedies"):
        result = run(command, "folder")
        assert (result.exit_code, result.stdout, result.stderr) == (2, "", "folder: is a directory\n")
        result = run(command, "none.yaml")
        assert (result.exit_code, result.stderr) == (2, "none.yaml: no such file or directory\n")


def test_file_that_may_not_be_opened_is_told_in_a_line(write: Write, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(path: Path) -> bytes:
        raise PermissionError(13, "Permission denied", str(path))

    monkeypatch.setattr(Path, "read_bytes", refuse)
    result = run("check", write("locked.yaml", OPEN))
    assert (result.exit_code, result.stderr) == (2, "locked.yaml: permission denied\n")


def test_file_that_is_no_text_is_told_with_its_place(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    Path("photo.yaml").write_bytes(b"plumbnet: 1\n\x89PNG\x00")
    result = run("check", "photo.yaml")
    assert result.exit_code == 2
    assert result.stderr.startswith("photo.yaml:2:1: the byte 0x89 is not UTF-8; save the file in the encoding UTF-8")


def test_unknown_profile_on_the_command_line_is_told_once(write: Write) -> None:
    write("open.yaml", OPEN)
    for command in (
        ["check", "open.yaml", "open.yaml"],
        ["trace", "open.yaml"],
        ["remedies", "open.yaml"],
        ["check", "--format", "json", "open.yaml"],
    ):
        result = run(*command, "--rules", "genral")
        assert (result.exit_code, result.stdout) == (2, "")
        assert result.stderr == 'no rule profile is called "genral": did you mean "general"?\n'


def test_unknown_profile_in_the_file_is_told_with_its_line(write: Write) -> None:
    write("f.yaml", f"rules: genral\n{ONLY_PIPE}")
    said = (
        'f.yaml:1:8: no rule profile is called "genral": did you mean "general"?\n'
        "  1 | rules: genral\n"
        "    |        ^~~~~~\n"
    )
    for command in ("check", "trace", "remedies"):
        result = run(command, "f.yaml")
        assert (result.exit_code, result.stderr) == (2, said)
    errors = document(run("check", "f.yaml", "--format", "json"))["errors"]
    assert [(error["line"], error["column"]) for error in errors] == [(1, 8)]
    assert run("check", "f.yaml", "--rules", "general").exit_code == 0


def test_unknown_heater_is_told_with_the_nearest_or_all(write: Write) -> None:
    write("open.yaml", OPEN)
    write("pipe.yaml", ONLY_PIPE)
    assert run("trace", "open.yaml", "heter").stderr == (
        'no heater is called "heter" in open.yaml: did you mean "heater"?\n'
    )
    assert run("trace", "open.yaml", "boiler9").stderr == (
        'no heater is called "boiler9" in open.yaml; there is heater\n'
    )
    result = run("trace", "pipe.yaml", "heater")
    assert (result.exit_code, result.stderr) == (2, 'no heater is called "heater" in pipe.yaml; there is none\n')


def test_trace_follows_one_heater_or_all(write: Write) -> None:
    two = layout("street -> tee -> cv -> heater1 -> tap.hot\ntee -> heater2 -> tap2.hot")
    write("two.yaml", two)
    both, one = run("trace", "two.yaml"), run("trace", "two.yaml", "heater2")
    assert "heater1 is a storage heater" in both.stdout
    assert "heater2 is a storage heater" in both.stdout
    assert "heater1 is a storage heater" not in one.stdout
    assert both.exit_code == one.exit_code == 1


def test_units_of_a_report_can_be_chosen(write: Write) -> None:
    write("open.yaml", OPEN)
    assert "60 psi" in run("check", "open.yaml").stdout
    metric = run("check", "open.yaml", "--units", "metric").stdout
    assert "414 kPa" in metric
    assert "psi" not in metric.split("Local code")[0].replace("80 psi (552 kPa)", "")
    assert "414 kPa" in run("trace", "open.yaml", "--units", "metric").stdout


def test_kinds_are_listed_or_told_one_by_one() -> None:
    assert "check_valve" in run("kinds").stdout
    assert run("kinds", "meter").stdout.startswith("meter\n\nA water meter.")
    result = run("kinds", "metre")
    assert (result.exit_code, result.stderr) == (2, 'unknown kind "metre": did you mean "meter"?\n')
    assert run("kinds", "xyz").stderr == 'unknown kind "xyz"; the command plumbnet kinds lists them all\n'


def test_schema_is_json() -> None:
    result = run("schema")
    assert result.exit_code == 0
    assert document(result)["title"] == "plumbnet layout, format 1"


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


def test_text_is_plain_where_no_terminal_listens(write: Write) -> None:
    assert "\x1b" not in run("check", write("trapped.yaml", TRAPPED)).stdout


def test_colour_is_for_a_terminal_that_does_not_decline_it(write: Write) -> None:
    write("trapped.yaml", TRAPPED)
    assert b"\x1b[31mTRAPPED\x1b[0m" in on_a_terminal("check", "trapped.yaml")
    assert b"\x1b" not in on_a_terminal("check", "trapped.yaml", NO_COLOR="1")


def on_a_terminal(*arguments: str, **environment: str) -> bytes:
    """What the program writes to a terminal."""
    keeper, terminal = pty.openpty()
    command = [sys.executable, "-m", "plumbnet", *arguments]
    plain = {key: value for key, value in os.environ.items() if key != "NO_COLOR"}
    with subprocess.Popen(command, stdout=terminal, env={**plain, **environment}) as process:  # noqa: S603  # ours
        os.close(terminal)
        written = b""
        while True:
            try:
                piece = os.read(keeper, 65_536)
            except OSError:  # the other end is closed
                break
            if not piece:
                break
            written += piece
        assert process.wait() == 1
    os.close(keeper)
    return written


def test_hostile_title_is_escaped_in_text_and_in_json(write: Write) -> None:
    write("f.yaml", HOSTILE + OPEN)
    for result in (run("check", "f.yaml"), run("check", "f.yaml", "--format", "json"), run("trace", "f.yaml")):
        assert result.exit_code == 0
        assert not any(character in result.output for character in CONTROL)
    assert r"\x1b[2J\u202eevil\x07" in run("check", "f.yaml").stdout


@pytest.mark.parametrize(
    "text",
    [
        ONLY_PIPE.replace("t: tee", '"t\\e[2J\\u202e": tee'),
        ONLY_PIPE.replace("m -> t", '"m -> \\e[2J\\u202e"'),
        ONLY_PIPE.replace("tee", '"\\e[2J\\u202e"'),
        ONLY_PIPE.replace("pressure: 60", 'pressure: "60 \\e[2J\\u202e"'),
        ONLY_PIPE.replace("pressure: 60", 'pressure: 60, "\\e[2J\\u202e": 1'),
        f'rules: "\\e[2J\\u202e"\n{ONLY_PIPE}',
        f'scenarios: {{"\\e[2J": {{change: [{{close: "\\u202e"}}]}}}}\n{ONLY_PIPE}',
        "a: \x1b[2J",
        "\u202ea: [",
    ],
)
def test_hostile_text_is_escaped_in_errors(write: Write, text: str) -> None:
    result = run("check", write("f.yaml", text))
    assert result.exit_code == 2
    assert result.stderr
    assert not any(character in result.output for character in CONTROL)


def test_hostile_arguments_are_escaped(write: Write) -> None:
    write("open.yaml", OPEN)
    hostile = "\x1b[2J\u202e"
    for arguments in (
        ["check", hostile],
        ["check", "open.yaml", "--rules", hostile],
        ["trace", "open.yaml", hostile],
        ["remedies", "open.yaml", hostile],
        ["kinds", hostile],
    ):
        result = run(*arguments)
        assert result.exit_code == 2
        assert r"\x1b[2J\u202e" in result.stderr
        assert not any(character in result.output for character in CONTROL)


def test_hostile_file_name_is_escaped(write: Write) -> None:
    result = run("check", write("\x1b[2J.yaml", OPEN))
    assert result.stdout.startswith(r"\x1b[2J.yaml")
    assert document(run("check", "\x1b[2J.yaml", "--format", "json"))["reports"][0]["file"] == "\x1b[2J.yaml"


def test_program_runs_as_a_module(write: Write) -> None:
    done = real("check", write("trapped.yaml", TRAPPED))
    assert (done.returncode, done.stderr) == (1, b"")
    assert b"heater: TRAPPED" in done.stdout


@pytest.mark.parametrize("command", [["check"], ["check", "--format", "json"], ["trace"], ["remedies"]])
def test_same_layout_gives_the_same_bytes_whatever_the_seed_of_hashes(write: Write, command: list[str]) -> None:
    school = Path(__file__).parents[1] / "systems" / "school-shared-tanks.yaml"
    write("f.yaml", school.read_text(encoding="utf-8"))
    written = {real(*command, "f.yaml", PYTHONHASHSEED=seed).stdout for seed in ("0", "1")}
    assert len(written) == 1
    assert written != {b""}


def test_same_faults_come_in_the_same_order_whatever_the_seed_of_hashes(write: Write) -> None:
    several = Path(__file__).parent / "faults" / "several-at-once.yaml"
    write("several-at-once.yaml", several.read_text(encoding="utf-8"))
    for seed in ("0", "1"):
        done = real("check", "several-at-once.yaml", PYTHONHASHSEED=seed)
        assert done.stderr == several.with_suffix(".out").read_bytes()


@pytest.mark.parametrize("encoding", ["ascii", "cp1252"])
def test_any_title_can_be_written_in_any_alphabet(write: Write, encoding: str) -> None:
    named = TRAPPED.replace("heater:", "heizung北:").replace("-> heater", "-> heizung北")
    write("f.yaml", f"title: Café 北 → 140 °F\n{named}")
    for command in ("check", "trace", "remedies"):
        done = real(command, "f.yaml", PYTHONIOENCODING=encoding)
        assert (done.returncode, done.stderr) == (1, b"")
    done = real("check", "none北.yaml", PYTHONIOENCODING=encoding)
    assert (done.returncode, b"Traceback" in done.stderr) == (2, False)


def test_reader_that_goes_away_gets_no_traceback(write: Write) -> None:
    write("f.yaml", TRAPPED)
    command = [sys.executable, "-m", "plumbnet", "check", *["f.yaml"] * 300]
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE) as process:  # noqa: S603  # ours
        assert process.stdout is not None
        assert process.stderr is not None
        assert process.stdout.readline() == b"f.yaml\n"
        process.stdout.close()
        assert process.stderr.read() == b""
        assert process.wait() != 0
