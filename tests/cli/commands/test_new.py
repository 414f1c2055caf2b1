"""The command `new`."""

from pathlib import Path

import pytest
from running import Write, run

from plumbnet.layout.authoring.starters import starter, starter_names


@pytest.mark.parametrize("name", starter_names())
def test_starter_is_printed_or_written_and_then_checks_clean(name: str, write: Write) -> None:
    write("other", "")
    assert run("new", name).stdout == starter(name).decode()
    result = run("new", name, "-o", "mine.yaml")
    assert (result.output, result.exit_code) == ("", 0)
    assert Path("mine.yaml").read_bytes() == starter(name)
    assert run("check", "mine.yaml").exit_code == 0


def test_file_that_is_there_is_never_written_over(write: Write) -> None:
    write("mine.yaml", "my work")
    result = run("new", "house", "-o", "mine.yaml")
    assert result.output.startswith("mine.yaml is there already")
    assert result.exit_code == 2
    assert Path("mine.yaml").read_text(encoding="utf-8") == "my work"


def test_folder_that_is_not_there_is_one_sentence(write: Write) -> None:
    write("other", "")
    result = run("new", "house", "-o", "no/such.yaml")
    assert result.output.startswith("no/such.yaml cannot be written")
    assert result.output.endswith(" no such file or directory\n")
    assert result.exit_code == 2


def test_starter_that_there_is_not_suggests_the_nearest() -> None:
    result = run("new", "huose")
    assert result.output.endswith('"huose": did you mean "house"?\n')
    assert result.exit_code == 2
    result = run("new", "castle")
    assert result.output.endswith("; there is boiler, house, recirculation\n")
