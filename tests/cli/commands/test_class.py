"""The command `class`."""

from pathlib import Path

import pytest
from running import Write, run
from study_results import ADA, BEN

from plumbnet.study.training.results_file import Results, results_text


@pytest.fixture
def files(write: Write) -> tuple[str, str]:
    return write("ada.yaml", results_text(ADA)), write(
        "ben.yaml", results_text(BEN.model_copy(update={"name": "Ben B"}))
    )


def test_table_is_of_all_that_answered_by_their_names_or_their_files(files: tuple[str, str]) -> None:
    result = run("class", *files)
    assert result.exit_code == 0
    assert "Ben B" in result.stdout
    assert " ada " in result.stdout
    assert "A meter is no valve." in result.stdout


@pytest.mark.parametrize(("name", "begins"), [("t.csv", b"name,is_belief,"), ("t.html", b"<!DOCTYPE html>")])
def test_ending_of_the_file_says_how(name: str, begins: bytes, files: tuple[str, str]) -> None:
    assert run("class", *files, "-o", name).output == ""
    assert Path(name).read_bytes().startswith(begins)
    assert run("class", *files, "--format", "csv").stdout.encode().startswith(b"name,is_belief,")


def test_two_of_one_name_are_told(write: Write) -> None:
    both = write("a.yaml", results_text(Results(name="Ada"))), write("b.yaml", results_text(Results(name="Ada")))
    result = run("class", *both)
    assert result.exit_code == 2
    assert result.output == '"Ada" stands for two of these files; give each a name in its file, as name: Ada B.\n'


def test_file_that_is_none_is_told_with_its_place(write: Write) -> None:
    result = run("class", write("x.yaml", "plumbnet: 1\n"))
    assert result.exit_code == 2
    assert ':1:1: a results file has the key "plumbnet-results" at its top' in result.output
