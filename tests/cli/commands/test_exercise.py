"""The command `exercise`."""

import json
from pathlib import Path

import pytest
from running import Write, real, run

from plumbnet.study.exercise.generator import exercises


def test_worksheet_without_its_key_is_what_a_class_gets() -> None:
    result = run("exercise", "--seed", "4", "--level", "2", "--variants", "2")
    assert result.exit_code == 0
    assert result.stdout.count("# Worksheet") == 2
    assert "Key to" not in result.stdout


def test_keys_stand_behind_all_worksheets() -> None:
    text = run("exercise", "--seed", "4", "--level", "2", "--variants", "2", "--key").stdout
    assert text.count("# Key to") == 2
    assert text.rindex("# Worksheet 2") < text.index("# Key to worksheet 1")


def test_same_seed_gives_the_same_bytes_whatever_the_hashes() -> None:
    wanted = ("exercise", "--seed", "8", "--level", "4", "--about", "trapped-heaters", "--variants", "2", "--key")
    first, second = (real(*wanted, PYTHONHASHSEED=seed) for seed in ("0", "4711"))
    assert first.returncode == second.returncode == 0
    assert first.stdout == second.stdout != b""


@pytest.mark.parametrize("name", ["class.html", "class.htm", "CLASS.HTML"])
def test_ending_of_the_file_asks_for_a_page(name: str, write: Write) -> None:
    write("other", "")
    assert (run("exercise", "-o", name, "--key").output, Path(name).read_text(encoding="utf-8")[:15]) == (
        "",
        "<!DOCTYPE html>",
    )


def test_programs_get_layout_question_options_and_key() -> None:
    document = json.loads(run("exercise", "--format", "json", "--variants", "2").stdout)
    assert document["schema"] == 1
    first, second = document["exercises"]
    assert (first["number"], second["number"]) == (1, 2)
    (one, _) = exercises(1, 1, 2)
    assert first["layout"] == one.text
    assert first["blanks"][0]["key"] == one.asked.answer


def test_ending_of_the_file_asks_for_json(write: Write) -> None:
    write("other", "")
    assert run("exercise", "-o", "class.json").output == ""
    assert json.loads(Path("class.json").read_text(encoding="utf-8"))["exercises"]


def test_format_may_be_named(write: Write) -> None:
    write("other", "")
    assert run("exercise", "--format", "html").stdout.startswith("<!DOCTYPE html>")
    run("exercise", "-o", "class.html", "--format", "markdown")
    assert Path("class.html").read_text(encoding="utf-8").startswith("# Worksheet 1")


def test_pictures_stand_beside_the_markdown_and_are_named_in_it(write: Write) -> None:
    write("other", "")
    result = run("exercise", "-o", "my class.md", "--variants", "2", "--key")
    assert (result.output, result.exit_code) == ("", 0)
    text = Path("my class.md").read_text(encoding="utf-8")
    for name in ("class-1.svg", "class-2.svg", "class-key-1.svg", "class-key-2.svg"):
        assert f"(<my%20{name}>)" in text
        assert b"</svg>" in Path(f"my {name}").read_bytes()


def test_page_has_its_pictures_in_it(write: Write) -> None:
    write("other", "")
    run("exercise", "-o", "class.html", "--variants", "2", "--key")
    assert Path("class.html").read_text(encoding="utf-8").count('src="data:image/svg+xml;base64,') == 4
    assert not list(Path().glob("*.svg"))


def test_one_sort_of_question_may_be_asked_for() -> None:
    text = run("exercise", "--level", "2", "--variants", "2", "--about", "stopper").stdout
    assert text.count("which device stops it") == 2


def test_metric_worksheet_says_how_to_have_it_again() -> None:
    told = run("exercise", "--seed", "3", "--units", "metric", "--about", "stopper").stdout
    assert "Seed 3, number 1, metric units." in told
    assert " kPa, temperature " in told
    assert "Seed 3, number 1." in run("exercise", "--seed", "3").stdout


def test_question_the_level_does_not_have_is_refused_in_a_sentence() -> None:
    result = run("exercise", "--about", "tnk", "--level", "2")
    assert result.output.endswith('"tnk": did you mean "tank"?\n')
    assert result.exit_code == 2
    result = run("exercise", "--about", "xyz", "--level", "1")
    assert '"xyz"; it has ' in result.output
    assert result.output.endswith(" opens-first, stopper, verdict\n")


@pytest.mark.parametrize("level", ["0", "6", "x"])
def test_level_there_is_not_is_refused(level: str) -> None:
    result = run("exercise", "--level", level)
    assert result.exit_code == 2
    assert "Traceback" not in result.output


def test_file_that_cannot_be_written_is_one_sentence(tmp_path: Path) -> None:
    result = run("exercise", "-o", str(tmp_path / "no" / "such.md"))
    assert result.exit_code == 2
    assert result.output.count("\n") == 1


def test_answers_typed_are_judged_and_counted() -> None:
    dealt = exercises(1, 1, 2, about="verdict")
    first, second = (one.asked.blanks[0].answer("us") for one in dealt)
    given = f"{first.upper()}\n\n{second}\n\n"
    result = run("exercise", "--play", "--variants", "2", "--about", "verdict", given=given)
    assert result.exit_code == 0
    assert f"Right: {first}." in result.stdout
    assert result.stdout.endswith("2 of 2 right.\n")


def test_wrong_answers_do_not_count() -> None:
    (one,) = exercises(1, 1, about="verdict")
    wrong = {"open": "trapped", "trapped": "open"}[one.asked.blanks[0].answer("us")]
    result = run("exercise", "--play", "--about", "verdict", given=f"{wrong}\n\n")
    assert f"Not {wrong}: the answer is" in result.stdout
    assert result.stdout.endswith("0 of 1 right.\n")


@pytest.mark.parametrize("given", ["", "eh?\n"])
def test_end_of_what_is_typed_ends_it_calmly(given: str) -> None:
    result = run("exercise", "--play", given=given)
    assert result.exit_code == 0
    assert result.stdout.endswith("0 of 0 right.\n")


def test_bytes_that_are_no_text_are_not_understood_and_do_no_harm() -> None:
    result = real("exercise", "--play", given=b"\xff\xfe\x1b[2J\n" + b"a" * 100_000 + b"\n\n")
    assert result.returncode == 0
    assert b"That is not understood" in result.stdout
    assert b"Traceback" not in result.stderr
    assert b"\x1b" not in result.stdout
