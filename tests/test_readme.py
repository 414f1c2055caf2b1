"""What the README shows is what the program prints."""

import re
from pathlib import Path

import pytest
from typer.testing import CliRunner

from plumbnet.cli import app

README = Path(__file__).parent.parent / "README.md"
BLOCKS = re.findall(r"```(\w+)\n(.*?)```", README.read_text(encoding="utf-8"), re.DOTALL)
EXAMPLE = next(text for language, text in BLOCKS if language == "yaml")
SHOWN = [text for language, text in BLOCKS if language == "text"]


@pytest.mark.parametrize(("command", "shown"), [("check", SHOWN[0]), ("trace", SHOWN[1])])
def test_readme_shows_what_the_example_prints(
    command: str, shown: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    Path("house.yaml").write_text(EXAMPLE, encoding="utf-8")
    assert CliRunner().invoke(app, [command, "house.yaml"]).output == shown


def test_readme_names_every_command() -> None:
    commands = {command.callback.__name__ for command in app.registered_commands if command.callback is not None}
    text = README.read_text(encoding="utf-8")
    assert {name for name in commands if f"plumbnet {name}" not in text} == set()


def test_readme_example_has_ten_lines() -> None:
    assert EXAMPLE.count("\n") == 10
