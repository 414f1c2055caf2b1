"""What the README shows is what the program prints."""

import inspect
import json
import re
import shutil
import sqlite3
import subprocess
import sys
from contextlib import closing
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest
import yaml
from conftest import PSI
from every_command import app
from shown import as_kept
from typer.testing import CliRunner

import plumbnet
from plumbnet.rules.rule_profile import read_profile
from plumbnet.study.training.question_file import questions_at
from plumbnet.study.training.results_file import read_results

README = Path(__file__).parent.parent / "README.md"
BLOCKS: list[tuple[str, str]] = re.findall(r"```(\w+)\n(.*?)```", README.read_text(encoding="utf-8"), re.DOTALL)
EXAMPLE = next(text for language, text in BLOCKS if language == "yaml")
SHOWN = [text for language, text in BLOCKS if language == "text"]


@pytest.mark.parametrize(("command", "shown"), [("check", SHOWN[0]), ("trace", SHOWN[1])])
def test_readme_shows_what_the_example_prints(
    command: str, shown: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    Path("house.yaml").write_text(EXAMPLE, encoding="utf-8")
    assert as_kept(CliRunner().invoke(app, [command, "house.yaml"]).output) == shown


def test_readme_names_every_command() -> None:
    commands = {command.name or command.callback.__name__ for command in app.registered_commands if command.callback}
    text = README.read_text(encoding="utf-8")
    assert {name for name in commands if f"plumbnet {name}" not in text} == set()


def test_readme_example_has_ten_lines() -> None:
    assert EXAMPLE.count("\n") == 10


def block(language: str, beginning: str) -> str:
    return next(text for kind, text in BLOCKS if kind == language and text.startswith(beginning))


def test_hook_before_a_commit_runs_over_the_files_it_names() -> None:
    (repo,) = yaml.safe_load(block("yaml", "repos:"))["repos"]
    (hook,) = repo["hooks"]
    files = [f"systems/{path.name}" for path in sorted((README.parent / "systems").iterdir())]
    chosen = [file for file in files if re.search(hook["files"], file)]
    assert 30 < len(chosen) < len(files)
    program, *arguments = hook["entry"].split()
    assert program == "plumbnet"
    result = CliRunner().invoke(app, [*arguments, "systems/open-house.yaml", "systems/bakery-tank-right.yaml"])
    assert result.exit_code == 0
    assert CliRunner().invoke(app, [*arguments, "systems/house-with-check.yaml"]).exit_code == 1


def test_step_on_a_build_server_writes_both_files_and_passes_the_status_on(tmp_path: Path) -> None:
    (tmp_path / "systems").mkdir()
    for name in ("open-house", "house-with-check"):
        text = (README.parent / "systems" / f"{name}.yaml").read_text(encoding="utf-8")
        (tmp_path / "systems" / f"{name}.yaml").write_text(text, encoding="utf-8")
    script = block("bash", "status=0").replace("plumbnet check", f'"{sys.executable}" -m plumbnet check')
    done = subprocess.run(["bash", "-e", "-c", script], cwd=tmp_path, check=False)  # noqa: S603, S607  # the README's own
    assert done.returncode == 1
    assert len(json.loads((tmp_path / "plumbnet.sarif").read_text(encoding="utf-8"))["runs"][0]["artifacts"]) >= 2
    assert ET.parse(tmp_path / "plumbnet.xml").getroot().tag == "testsuites"  # noqa: S314  # our own output


def test_profile_of_ones_own_and_acceptance_are_read() -> None:
    own = read_profile(block("yaml", "profile:").encode(), file="ours.yaml")
    assert own.distribution_limit.value_pa == pytest.approx(70 * PSI)
    with_acceptance = EXAMPLE.replace("sink: fixture", "yard-hydrant: fixture").replace("sink.", "yard-hydrant.")
    assert plumbnet.read_bytes((with_acceptance + block("yaml", "accept:")).encode()).accept


def test_file_of_questions_and_results_are_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(README.parent)
    file = tmp_path / "third-week.yaml"
    file.write_text(block("yaml", "plumbnet-questions").replace("systems/", f"{README.parent}/systems/"))
    first, second = (one.worded.asked.blanks[0].answer("us") for one in questions_at(str(file)).posed)
    assert (first, second) == ("nowhere, until the relief valve lifts", "dual-check")
    results = read_results(block("yaml", "plumbnet-results").encode(), file="ada.yaml")
    assert [answer.first_held for _, answer in results.answers] == ["meter-is-no-valve"]


def test_pictures_are_there() -> None:
    names = re.findall(r"\]\((systems/[^)]+)\)", README.read_text(encoding="utf-8"))
    assert len(names) == 3
    for name in names:
        assert (README.parent / name).read_bytes().startswith(b"\x89PNG")


def test_lines_of_python_do_what_they_say(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(README.parent)
    exec("\n".join(text for language, text in BLOCKS if language == "python"), {})  # noqa: S102  # the README's own
    told, *shown = capsys.readouterr().out.splitlines()
    assert told.startswith("heater open 427474.95")
    (second,) = [text for language, text in BLOCKS if language == "python" and text.startswith("made")]
    said = re.findall(r"^print\(.*\)  # (.*?)(?:: the heater.*)?$", second, re.MULTILINE)
    assert shown == said != []


def test_calls_from_python_are_those_that_the_package_offers() -> None:
    text = README.read_text(encoding="utf-8")
    section = text[text.index("## In Python") : text.index("## The file")]
    calls = re.findall(r"^\| `(\w+)\((.*)\)` \|", section, re.MULTILINE)
    assert len(calls) == 15
    for name, arguments in calls:
        parameters = list(inspect.signature(getattr(plumbnet, name)).parameters)
        assert arguments.split(", ") == parameters[: arguments.count(",") + 1], name


def test_survey_of_the_systems_answers_the_queries_shown(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    shutil.copytree(README.parent / "systems", tmp_path / "systems")
    monkeypatch.chdir(tmp_path)
    program, *arguments = block("bash", "plumbnet survey").split()
    assert program == "plumbnet"
    assert CliRunner().invoke(app, arguments).exit_code == 1
    assert "with the what-if" in Path("meters.svg").read_text(encoding="utf-8")
    with closing(sqlite3.connect("meters.sqlite")) as file:
        shown = [file.execute(query).fetchall() for query in block("sql", "SELECT").split(";") if query.strip()]
    assert len(shown) == 3
    assert all(rows for rows in shown)
    assert ("systems/open-house.yaml", 20, "heater", "meter") in shown[0]
