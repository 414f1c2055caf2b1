"""A file that may hold a survey, in whatever state somebody has left it: refused in a sentence, or started over."""

import os
import sqlite3
import sys
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest

from plumbnet.report.output.writer import Fate
from plumbnet.report.survey.survey_book import Book
from plumbnet.report.survey.survey_entry import SurveyEntry
from plumbnet.report.survey.survey_file import DAMAGED, START_OVER, Unusable, is_survey, told_in_words
from plumbnet.report.survey.survey_query import SurveyQuery
from plumbnet.report.survey.survey_sums import sums
from plumbnet.report.survey.survey_tables import TABLES
from plumbnet.study.whatif.bulk_changes import Supposed

ASKED = SurveyQuery(None, None, Supposed())
PAGE = 4096


@pytest.fixture
def survey(tmp_path: Path) -> Path:
    """A survey of forty files, over several pages."""
    file = tmp_path / "s.sqlite"
    heater = {"name": "heater", "kind": "boiler", "verdict": "open"}
    with Book(str(file), ASKED) as book:
        book.add(SurveyEntry(f"{one}.yaml", "ab", Fate.CHECKED, {"title": "x" * 400}, (heater,)) for one in range(40))
        book.finish()
    assert file.stat().st_size > 8 * PAGE
    return file


def written(file: Path, at: int, content: bytes) -> None:
    with file.open("r+b") as opened:
        opened.seek(at)
        opened.write(content)


DAMAGES: dict[str, Callable[[Path], None]] = {
    "cut short": lambda file: os.truncate(file, file.stat().st_size // 2),
    "cut within its first page": lambda file: os.truncate(file, 1000),
    "cut behind its head": lambda file: os.truncate(file, 100),
    "a page of noise": lambda file: written(file, 6 * PAGE, b"\xa5" * PAGE),
    "every table's page of noise": lambda file: written(file, PAGE, b"\0\xff" * (3 * PAGE)),
    "its schema's page of noise": lambda file: written(file, 100, b"\xff" * (PAGE - 100)),
    "pages of a size that there is not": lambda file: written(file, 16, b"\x13\x37"),
    "of a format that there is not": lambda file: written(file, 18, b"\x09\x09"),
}


@pytest.mark.parametrize("damage", DAMAGES)
def test_damaged_survey_is_told_and_left_until_it_is_thrown_away(damage: str, survey: Path) -> None:
    DAMAGES[damage](survey)
    before = survey.read_bytes()
    with pytest.raises(Unusable) as told, Book(str(survey), ASKED) as book:
        sums(book.file, is_supposed=False)
    assert str(told.value) in {DAMAGED, f"it may only be read; {START_OVER}"}
    assert survey.read_bytes() == before
    with Book(str(survey), ASKED, anew=True) as book:
        assert book.file.execute("SELECT count(*) FROM file").fetchone() == (0,)
        book.add([SurveyEntry("a.yaml", "ab", Fate.CHECKED, {})])
    assert sorted(each.name for each in survey.parent.iterdir()) == ["s.sqlite"]


@pytest.mark.parametrize("at", [0, 15, 68])
def test_file_that_no_longer_says_that_it_is_a_survey_is_left_as_it_is(at: int, survey: Path) -> None:
    written(survey, at, b"!!")
    before = survey.read_bytes()
    assert not is_survey(survey)
    for anew in (False, True):
        with pytest.raises(Unusable, match="it is no survey, and is left as it is"):
            Book(str(survey), ASKED, anew=anew)
    assert survey.read_bytes() == before


CHANGES = {
    "DROP TABLE heater": r"\(heater and heater_file\)",
    "DROP VIEW trapped": r"\(trapped\)",
    "ALTER TABLE note RENAME COLUMN text TO words": r"\(note\)",
    "DROP TABLE error; CREATE TABLE error (file, text)": r"\(error and error_file\)",
}


@pytest.mark.parametrize("change", CHANGES)
def test_other_tables_under_our_own_name_are_refused_until_they_are_thrown_away(change: str, survey: Path) -> None:
    with closing(sqlite3.connect(survey)) as file:
        file.executescript(change)
    with pytest.raises(Unusable, match=CHANGES[change]) as told:
        Book(str(survey), ASKED)
    assert str(told.value).endswith(START_OVER)
    with Book(str(survey), ASKED, anew=True) as book:
        made = {sql for (sql,) in book.file.execute("SELECT sql FROM sqlite_master WHERE sql IS NOT NULL")}
    assert made == set(TABLES)


def test_what_somebody_has_added_of_his_own_is_left_alone(survey: Path) -> None:
    with closing(sqlite3.connect(survey)) as file:
        file.executescript("CREATE VIEW mine AS SELECT path FROM file; CREATE TABLE notes (path, remark)")
    with Book(str(survey), ASKED) as book:
        assert book.file.execute("SELECT count(*) FROM mine").fetchone() == (40,)


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ("DELETE FROM survey", "it does not say what it answers"),
        ("INSERT INTO survey SELECT * FROM survey", "it does not say what it answers"),
        ("UPDATE survey SET to_each = 'no JSON'", 'with other changes ("no JSON", not none)'),
        ("UPDATE survey SET to_each = '[7]'", 'with other changes ("[7]", not none)'),
        ("UPDATE survey SET rules = 7", 'with other rules ("7", not none)'),
    ],
)
def test_question_that_somebody_else_has_written_is_another(change: str, said: str, survey: Path) -> None:
    with closing(sqlite3.connect(survey)) as file:
        file.executescript(change)
    with pytest.raises(Unusable) as told:
        Book(str(survey), ASKED)
    assert said in str(told.value)
    assert str(told.value).endswith(START_OVER)


def test_survey_that_is_at_work_is_not_thrown_away(survey: Path) -> None:
    with Book(str(survey), ASKED), pytest.raises(Unusable, match="another survey is at work on it"):
        Book(str(survey), ASKED, anew=True)
    with closing(sqlite3.connect(survey)) as file:
        assert file.execute("SELECT count(*) FROM file").fetchone() == (40,)


@pytest.mark.skipif(sys.platform == "win32", reason="has no such files")
def test_what_is_no_file_is_refused_and_not_waited_for(tmp_path: Path) -> None:
    pipe = tmp_path / "pipe"
    os.mkfifo(pipe)
    for path in (pipe, Path("/dev/null")):
        with pytest.raises(Unusable, match="it is no file that can hold a survey"):
            Book(str(path), ASKED)


def test_empty_file_is_one_in_which_a_survey_may_be_made(tmp_path: Path) -> None:
    (tmp_path / "s.sqlite").touch()
    for _ in range(2):
        with Book(str(tmp_path / "s.sqlite"), ASKED) as book:
            book.finish()
    assert is_survey(tmp_path / "s.sqlite")


def test_what_the_library_says_otherwise_is_kept() -> None:
    with pytest.raises(Unusable, match=r"^something new$"), told_in_words():
        raise sqlite3.OperationalError("something new")
    with pytest.raises(Unusable, match=r"^it cannot be written: no space left on device$"), told_in_words():
        raise OSError(28, "No space left on device")
