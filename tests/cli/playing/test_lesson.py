from datetime import date
from pathlib import Path

import pytest
import typer

from plumbnet.cli.playing.lesson import Wanted, day_of, lesson_again, lesson_of, results_of

MARCH = date(2026, 3, 1)
MISSED = """plumbnet-results: 1
sittings:
- day: '2026-03-01'
  dealt: {}
  answers:
  - {exercise: 1, blank: 1, question: verdict, right: open, tries: [{given: trapped, held: way-out-overlooked}]}
"""


@pytest.fixture
def missed(tmp_path: Path) -> str:
    file = tmp_path / "ada.yaml"
    file.write_text(MISSED, encoding="utf-8")
    return str(file)


def test_dealt_lesson_is_as_long_as_it_was_asked_for() -> None:
    lesson = lesson_of(Wanted(1, 1, 2, "verdict", "us"))
    assert [one.exercise.origin.number for one in lesson.posed] == [1, 2]
    assert len(lesson_of(Wanted(1, 1, None, "verdict", "us")).posed) == 1


def test_what_was_missed_is_asked_in_another_house_once_it_is_due(missed: str) -> None:
    assert lesson_again(missed, 1, MARCH).nothing == "Nothing is due on 2026-03-01; the next is on 2026-03-02."
    (one,) = lesson_again(missed, 1, date(2026, 3, 2)).posed
    assert one.exercise.origin.in_words == "Missed on 2026-03-01, asked again."
    assert one.again is not None


def test_day_is_one_that_was_given(capsys: pytest.CaptureFixture[str]) -> None:
    assert day_of("2026-03-01") == MARCH
    with pytest.raises(typer.Exit):
        day_of("1st of March")
    assert capsys.readouterr().err == '--day "1st of March" is no date; write it like 2026-03-14\n'


def test_results_that_cannot_be_read_are_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(typer.Exit):
        results_of(str(tmp_path / "none.yaml"))
    assert "no such file" in capsys.readouterr().err


def test_question_that_its_level_does_not_have_is_told_and_the_others_are_asked(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "ada.yaml"
    answer = "  - {exercise: 2, blank: 1, question: tank, right: x, tries: [{given: y, held: size-beats-charge}]}\n"
    file.write_text(MISSED + answer, encoding="utf-8")
    (one,) = lesson_again(str(file), 1, date(2026, 3, 2)).posed
    assert one.exercise.question.name == "verdict"
    told = 'What was missed on 2026-03-01 is not asked again: level 1 has no question "tank".\n'
    assert capsys.readouterr().err.endswith(told)
