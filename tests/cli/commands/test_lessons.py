"""The command `lessons`, and lessons taken by name."""

from pathlib import Path

import pytest
from running import Write, run

from plumbnet.study.exercise.answer import Measure
from plumbnet.study.training.question_file import questions_at
from plumbnet.study.training.shipped_lessons import lesson_bytes, lesson_names


def test_lessons_are_listed_and_each_is_told_as_its_file() -> None:
    told = run("lessons").stdout
    assert [name for name in lesson_names() if f"\n{name} " not in told] == []
    assert run("lessons", "check-and-meter").stdout == lesson_bytes("check-and-meter").decode()


@pytest.mark.parametrize(("name", "told"), [("check-and-metre", ': did you mean "check-and-meter"?'), ("x", "; the ")])
def test_lesson_there_is_not_is_refused_in_a_sentence(name: str, told: str) -> None:
    result = run("lessons", name)
    assert (result.exit_code, result.output.count("\n")) == (2, 1)
    assert f'no lesson is called "{name}"{told}' in result.output


@pytest.mark.parametrize("name", lesson_names())
def test_lesson_is_played_through_and_made_a_page_by_its_name(name: str, write: Write) -> None:
    write("other", "")
    posed = questions_at(name).posed
    blanks = [blank for one in posed for blank in one.worded.asked.blanks]
    typed = (
        "".join(f"{blank.answer(posed[0].exercise.origin.units)}\n" for blank in one.worded.asked.blanks) + "\n"
        for one in posed
    )
    told = run("exercise", "--from", name, "--play", given="".join(typed)).stdout
    assert told.endswith(f"\n{len(blanks)} of {len(blanks)} right at once.\n")
    assert any(isinstance(blank, Measure) for blank in blanks)
    assert run("board", name, "-o", "lesson.html").output == ""
    page = Path("lesson.html").read_text(encoding="utf-8")
    assert page.count('"prompt":"Your answer"') + page.count('"prompt":"The smallest') == len(posed)


def test_lesson_that_was_changed_is_asked_as_it_stands_in_the_file(write: Write) -> None:
    changed = lesson_bytes("check-and-meter").decode().replace("The house is asleep", "The inn is asleep")
    told = run("exercise", "--from", write("mine.yaml", changed)).stdout
    assert "The inn is asleep" in told
    assert told.count("# Worksheet") == 7


def test_file_of_the_name_of_a_lesson_stands_before_it(write: Write) -> None:
    asks = "plumbnet-questions: 1\nquestions: [{layout: open-house, about: verdict}]\n"
    told = run("exercise", "--from", write("check-and-meter", asks)).stdout
    assert told.count("# Worksheet") == 1


@pytest.mark.parametrize(
    ("name", "told"), [("check-and-metre", ': did you mean "check-and-meter"?\n'), ("x", "; the ")]
)
def test_neither_file_nor_lesson_is_one_sentence(name: str, told: str, write: Write) -> None:
    write("other", "")
    result = run("exercise", "--from", name)
    assert (result.exit_code, result.output.count("\n")) == (2, 1)
    assert f'"{name}": no such file, and no such lesson{told}' in result.output
