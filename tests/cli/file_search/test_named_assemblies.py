"""`--with`: assemblies from files that the command line names, in every command that takes layouts."""

import inspect
from pathlib import Path

import pytest
from every_command import app
from typer.testing import CliRunner

from plumbnet.cli.file_search.named_assemblies import SHELF

SHELF_FILE = """\
plumbnet: 1
assemblies:
  house: {ports: {in: stop.in}, parts: {stop: valve, m: {kind: meter, check: true}, h: heater-of-nothing, tap: fixture},
          runs: [stop -> m -> h -> tap.hot]}
"""
GOOD = SHELF_FILE.replace("heater-of-nothing", "{kind: storage_heater, volume: 40 gal, setpoint: 120 degF}")
LAYOUT = """\
plumbnet: 1
parts: {street: {kind: main, pressure: 60 psi}, t: tee, houses: {use: house, times: 2}}
runs: [street -> t, t -> houses/each]
"""


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    Path("row.yaml").write_text(LAYOUT, encoding="utf-8")
    Path("good.yaml").write_text(GOOD, encoding="utf-8")
    Path("bad.yaml").write_text(SHELF_FILE, encoding="utf-8")
    return tmp_path


def told(*words: str) -> str:
    return CliRunner().invoke(app, list(words)).output


@pytest.mark.parametrize(
    "words",
    [
        ("check", "row.yaml"),
        ("trace", "row.yaml", "houses/2/h"),
        ("size", "row.yaml", "houses/2/h"),
        ("remedies", "row.yaml", "houses/2/h"),
        ("whatif", "row.yaml", "--close", "houses/2/stop"),
        ("review", "row.yaml"),
        ("compare", "row.yaml", "row.yaml"),
        ("survey", "row.yaml"),
    ],
)
def test_layout_uses_the_assemblies_that_are_named(folder: Path, words: tuple[str, ...]) -> None:
    assert "no assembly is named house" in told(*words)
    assert "no assembly is named" not in told(*words, "--with", "good.yaml")
    assert folder.is_dir()


def test_what_is_wrong_there_names_that_file(folder: Path) -> None:
    assert folder.is_dir()
    first, *_ = told("check", "row.yaml", "--with", "bad.yaml").splitlines()
    assert first.startswith('bad.yaml:3:88: unknown kind "heater-of-nothing"')
    assert first.endswith("(assembly house, as houses/1 and 1 more, asked for in line 2 of row.yaml)")


def test_a_submitted_file_never_makes_the_program_read_another(folder: Path) -> None:
    Path("asking.yaml").write_text(f"with: good.yaml\n{LAYOUT}", encoding="utf-8")
    assert 'a layout has no field "with"' in told("check", "asking.yaml")
    assert folder.is_dir()


def test_a_set_that_comes_with_the_program_is_named_by_its_name(folder: Path) -> None:
    assert folder.is_dir()
    assert '--with "twin-heater": no such file or directory: did you mean "twin-heaters"?' in told(
        "check", "row.yaml", "--with", "twin-heater"
    )
    result = CliRunner().invoke(app, ["check", "row.yaml", "--with", "no-such-thing"])
    assert result.exit_code == 2
    assert "the command plumbnet assemblies lists the sets that come with it" in result.output


def test_nothing_is_left_for_the_next_command(folder: Path) -> None:
    assert folder.is_dir()
    told("check", "row.yaml", "--with", "good.yaml")
    assert "no assembly is named house" in told("check", "row.yaml")


def test_commands_that_read_no_layout_do_not_have_it() -> None:
    assert "--with" not in told("kinds", "--help")
    assert "--with" in told("draw", "--help")
    assert not SHELF.get()


def test_functions_of_commands_stay_as_they_are() -> None:
    from plumbnet.cli.commands.check import check  # noqa: PLC0415  when the commands are there

    assert "with_files" not in inspect.signature(check).parameters
