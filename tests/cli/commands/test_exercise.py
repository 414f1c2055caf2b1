"""The command `exercise`."""

import json
from pathlib import Path

import pytest
from pypdf import PdfReader
from running import OPEN, Write, real, run

from plumbnet.boards.live.followed_file import FollowedFile
from plumbnet.boards.one_lesson import OneLesson
from plumbnet.cli.board_pages.live_page import LivePage
from plumbnet.cli.playing import tapping
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


@pytest.mark.parametrize(("options", "wide"), [((), 612), (("--units", "metric"), 595)])
def test_pdf_is_on_the_paper_of_its_units_or_on_that_asked_for(
    options: tuple[str, ...], wide: int, write: Write
) -> None:
    write("other", "")
    assert run("exercise", "-o", "class.pdf", *options).exit_code == 0
    (page,) = PdfReader("class.pdf").pages
    assert round(float(page.mediabox[2])) == wide


def test_pdf_without_a_file_is_refused_in_a_sentence() -> None:
    result = run("exercise", "--format", "pdf")
    assert result.exit_code == 2
    assert "name it with -o" in result.output


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
    assert result.stdout.endswith("2 of 2 right at once.\n")


def test_wrong_answers_do_not_count() -> None:
    (one,) = exercises(1, 1, about="verdict")
    wrong = {"open": "trapped", "trapped": "open"}[one.asked.blanks[0].answer("us")]
    result = run("exercise", "--play", "--about", "verdict", given=f"{wrong}\n{wrong}\n\n")
    assert f"The answer is {one.asked.blanks[0].answer('us')}." in result.stdout
    assert result.stdout.endswith("0 of 1 right at once.\n")


@pytest.mark.parametrize("given", ["", "eh?\n"])
def test_end_of_what_is_typed_ends_it_calmly(given: str) -> None:
    result = run("exercise", "--play", given=given)
    assert result.exit_code == 0
    assert result.stdout.endswith("0 of 0 right at once.\n")


def test_bytes_that_are_no_text_are_not_understood_and_do_no_harm() -> None:
    result = real("exercise", "--play", given=b"\xff\xfe\x1b[2J\n" + b"a" * 100_000 + b"\n\n")
    assert result.returncode == 0
    assert b"That is not understood" in result.stdout
    assert b"Traceback" not in result.stderr
    assert b"\x1b" not in result.stdout


QUESTION = """plumbnet-questions: 1
title: Third week
questions:
  - {layout: house.yaml, about: verdict, options: {open: back it goes, trapped: nowhere}}
"""


@pytest.fixture
def own(write: Write) -> str:
    write("house.yaml", OPEN)
    return write("week.yaml", QUESTION)


def test_questions_of_ones_own_are_asked_on_paper_in_turn_with_dealt_ones(own: str) -> None:
    alone = run("exercise", "--from", own).stdout
    assert alone.count("# Worksheet") == 1
    assert "Third week, question 1." in alone
    assert "- \\[ \\] a) back it goes" in alone
    mixed = run("exercise", "--from", own, "--variants", "2", "--key").stdout
    told = [line for line in mixed.splitlines() if "Seed 1, number" in line or "Third week" in line]
    assert [line.rpartition(". ")[2] for line in told] == [
        "Third week, question 1.",
        "Seed 1, number 1.",
        "Seed 1, number 2.",
    ]


def test_page_to_tap_on_may_be_asked_for_of_dealt_ones_and_of_ones_own(own: str) -> None:
    page = run("exercise", "--from", own, "--format", "board").stdout
    assert '"word":"back it goes"' in page
    assert run("exercise", "--from", own, "--format", "board", "-o", "tap.html").output == ""
    assert Path("tap.html").read_text(encoding="utf-8") == page
    assert run("board", own, "-o", "lesson.html").output == ""
    assert Path("lesson.html").read_text(encoding="utf-8") == page


@pytest.mark.parametrize("words", [("--about", "verdict"), ("--from", "week.yaml")])
def test_page_to_tap_on_is_served_and_keeps_the_answers_where_it_is_to_be_played(
    own: str, monkeypatch: pytest.MonkeyPatch, words: tuple[str, str]
) -> None:
    served = []

    def serve(followed: FollowedFile[OneLesson], _live: LivePage) -> None:
        served.append((followed.path, len(followed.shown.posed), followed.shown.keeper.file))

    monkeypatch.setattr(tapping, "serve", serve)
    assert run("exercise", *words, "--play", "--format", "board", "--results", "ada.yaml").output == ""
    assert served == [(Path(own) if "--from" in words else None, 1, "ada.yaml")]


def test_question_of_ones_own_is_played_in_its_own_words(own: str) -> None:
    told = run("exercise", "--from", own, "--play", given="nowhere\nback it goes\n\n").stdout
    assert "You found the way of the growth shut; nothing between heater and street stands against it" in told
    assert told.endswith("0 of 1 right at once, 1 more at the second try.\n")


def test_mistake_in_a_file_of_questions_is_told_with_its_caret(write: Write) -> None:
    write("house.yaml", OPEN)
    result = run("exercise", "--from", write("week.yaml", QUESTION.replace("verdict", "verdikt")))
    assert result.exit_code == 2
    assert 'did you mean "verdict"?\n' in result.output
    assert "^~~~~~~" in result.output


def test_picture_of_what_is_asked_is_drawn_and_opened(own: str, monkeypatch: pytest.MonkeyPatch) -> None:
    opened: list[str] = []

    def in_vain(path: str) -> int:
        opened.append(path)
        return 1

    monkeypatch.setattr("typer.launch", in_vain)
    result = run("exercise", "--from", own, "--play", "--picture", "now.svg")
    assert opened == ["now.svg"]
    assert b"</svg>" in Path("now.svg").read_bytes()
    assert "The picture is in now.svg." in result.output


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("--results", "a.yaml"), "--results is about answering; add --play\n"),
        (("--picture", "a.svg"), "--picture is about answering; add --play\n"),
        (
            ("--play", "--format", "board", "--picture", "a.svg"),
            "--picture is about answering in the terminal; leave it out: the page has each\n",
        ),
        (("--play", "--again", "a.yaml", "--results", "b.yaml"), "--again and --results cannot stand together\n"),
        (("--again", "a.yaml", "--from", "b.yaml"), "--again and --from cannot stand together\n"),
    ],
)
def test_options_that_say_nothing_together_are_refused(words: tuple[str, ...], told: str) -> None:
    result = run("exercise", *words)
    assert (result.exit_code, result.output) == (2, told)


def test_file_of_questions_is_written_over_by_no_worksheet_and_no_picture(own: str) -> None:
    for words in (("-o", own), ("--play", "--picture", own)):
        result = run("exercise", "--from", own, *words)
        assert result.exit_code == 2
        assert "is the file that was read, and stays as it is; write to another name" in result.output
    assert Path(own).read_text(encoding="utf-8") == QUESTION
