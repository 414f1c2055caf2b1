import os
import sqlite3
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest

from plumbnet.report.output.writer import Fate
from plumbnet.report.survey.survey_book import Book
from plumbnet.report.survey.survey_entry import SurveyEntry
from plumbnet.report.survey.survey_file import Unusable
from plumbnet.report.survey.survey_query import SurveyQuery
from plumbnet.report.survey.survey_tables import APPLICATION, VERSION
from plumbnet.study.whatif.bulk_changes import Supposed

ASKED = SurveyQuery(None, None, Supposed())


def entry(path: str, sha256: str | None = "ab") -> SurveyEntry:
    heater = {"name": "heater", "kind": "boiler", "verdict": "open"}
    return SurveyEntry(path, sha256, Fate.CHECKED, {"title": "House"}, (heater,), (), ({"text": "why", "line": 1},))


def rows(file: Path, query: str) -> list[tuple[object, ...]]:
    with closing(sqlite3.connect(file)) as connection:
        return connection.execute(query).fetchall()


def test_what_is_added_is_kept_at_once_and_read_by_others(tmp_path: Path) -> None:
    file = tmp_path / "s.sqlite"
    with Book(str(file), ASKED) as book:
        book.add([entry("a"), entry("b")])
        assert rows(file, "SELECT path, is_complete FROM file, survey") == [("a", 0), ("b", 0)]
        book.finish()
    assert rows(file, "SELECT is_complete FROM survey") == [(1,)]
    assert rows(file, "PRAGMA application_id") == [(APPLICATION,)]
    assert rows(file, "PRAGMA user_version") == [(VERSION,)]


def test_batch_that_cannot_be_kept_leaves_nothing_of_itself(tmp_path: Path) -> None:
    file = tmp_path / "s.sqlite"
    broken = SurveyEntry("c", "ab", Fate.CHECKED, {}, ({"name": "heater", "kind": None},))
    with Book(str(file), ASKED) as book:
        book.add([entry("a")])
        with pytest.raises(Unusable):
            book.add([entry("b"), broken])
    assert rows(file, "SELECT path FROM file") == [("a",)]


def test_entry_takes_the_place_of_the_one_before(tmp_path: Path) -> None:
    with Book(str(tmp_path / "s.sqlite"), ASKED) as book:
        book.add([entry("a")])
        book.add([entry("a", "cd")])
        assert (book.holds("a", "ab"), book.holds("a", "cd"), book.holds("b", "cd")) == (False, True, False)
        assert book.file.execute("SELECT count(*) FROM heater").fetchone() == (1,)
        assert book.file.execute("SELECT count(*) FROM error").fetchone() == (1,)


def test_file_to_be_looked_at_again_is_never_held(tmp_path: Path) -> None:
    with Book(str(tmp_path / "s.sqlite"), ASKED) as book:
        book.add([entry("a", None)])
        assert not book.holds("a", "")


def test_file_is_met_once_in_a_run(tmp_path: Path) -> None:
    for _ in range(2):
        with Book(str(tmp_path / "s.sqlite"), ASKED) as book:
            assert [book.is_met_again("a"), book.is_met_again("a"), book.is_met_again("b")] == [False, True, False]


def test_files_not_met_are_kept_and_marked_until_they_are_met(tmp_path: Path) -> None:
    file = tmp_path / "s.sqlite"
    for met, marked in ((("a", "b"), [1, 1]), (("b",), [0, 1]), (("a",), [1, 0])):
        with Book(str(file), ASKED) as book:
            for path in met:
                book.is_met_again(path)
                if not book.holds(path, "ab"):
                    book.add([entry(path)])
            book.finish()
        assert rows(file, "SELECT is_present FROM file ORDER BY path") == [(one,) for one in marked]


def test_name_that_is_no_unicode_is_kept_as_its_bytes_and_comes_back(tmp_path: Path) -> None:
    odd = os.fsdecode(b"plans/\xff.yaml")
    with Book(str(tmp_path / "s.sqlite"), ASKED) as book:
        book.add([entry(odd), entry("plans/\\xff.yaml")])
        assert book.holds(odd, "ab")
        (found,) = book.file.execute("SELECT path FROM file WHERE typeof(path) = 'blob'").fetchone()
        assert os.fsdecode(found) == odd


def test_text_that_is_no_unicode_is_made_visible(tmp_path: Path) -> None:
    with Book(str(tmp_path / "s.sqlite"), ASKED) as book:
        book.add([SurveyEntry("a", "ab", Fate.CHECKED, {"title": "\udcff"})])
        assert book.file.execute("SELECT title FROM file").fetchone() == ("\\udcff",)


def test_tables_of_another_version_are_refused_until_they_are_thrown_away(tmp_path: Path) -> None:
    file = tmp_path / "s.sqlite"
    with Book(str(file), ASKED):
        pass
    with closing(sqlite3.connect(file)) as connection:
        connection.execute("PRAGMA user_version = 7")
    with pytest.raises(Unusable, match="its tables are of version 7, not 2; with --anew the survey starts over"):
        Book(str(file), ASKED)
    with Book(str(file), ASKED, anew=True) as book:
        assert book.file.execute("PRAGMA user_version").fetchone() == (VERSION,)


def test_file_that_nobody_sees_is_made_where_none_is_named(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    with Book(None, ASKED) as book:
        book.add([entry("a")])
        book.finish()
    assert list(tmp_path.iterdir()) == []


def test_name_with_a_meaning_of_its_own_is_a_file_all_the_same(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    with Book(":memory:", ASKED):
        assert Path(":memory:").is_file()


def test_file_that_may_only_be_read_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    class ReadOnly(sqlite3.Connection):
        def execute(self, *given: Any) -> Any:  # noqa: ANN401  as it is
            super().execute("PRAGMA query_only = ON")
            return super().execute(*given)

    real = sqlite3.connect
    monkeypatch.setattr(sqlite3, "connect", lambda *given, **named: real(*given, factory=ReadOnly, **named))
    with pytest.raises(Unusable, match="it may only be read"):
        Book(str(tmp_path / "s.sqlite"), ASKED)
