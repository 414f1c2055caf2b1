"""What an ordinary user may not do: each is a sentence, and what stands there stays."""

import os
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from ordinary_user import Answer, as_ordinary_user, common_folder, of_nobody
from running import OPEN, TRAPPED

from plumbnet.report.survey.survey_book import Book
from plumbnet.report.survey.survey_query import SurveyQuery
from plumbnet.study.whatif.bulk_changes import Supposed

pytestmark = pytest.mark.skipif(
    sys.platform != "linux" or os.geteuid() != 0, reason="only root can make what others may not touch, and be another"
)
STAYS = "; the file that was there stays as it is"
SURVEY = ("survey", "a.yaml", "--into")
TOLD = {
    (*SURVEY, "own/read-only"): "own/read-only: it may only be read\n",
    (*SURVEY, "own/read-only", "--anew"): "own/read-only: it cannot be written: permission denied\n",
    (*SURVEY, "own/closed"): "own/closed: it cannot be opened or made there\n",
    (*SURVEY, "own/closed", "--anew"): "own/closed: it cannot be opened or made there\n",
    (*SURVEY, "new"): "new: it cannot be opened or made there\n",
    (*SURVEY, "given"): "given: it may only be read\n",
    (*SURVEY, "given", "--anew"): "given: it cannot be written: permission denied\n",
    (*SURVEY, "shut/s"): "shut/s: it cannot be opened or made there\n",
    ("export", "a.yaml", "--force", "-o", "own"): f"own/parts.csv cannot be written: permission denied{STAYS}\n",
    ("export", "a.yaml", "--force", "-o", "."): f"parts.csv cannot be written: permission denied{STAYS}\n",
    ("new", "house", "-o", "new.yaml"): "new.yaml cannot be written: permission denied\n",
    ("check", "secret.yaml"): "secret.yaml: permission denied\n",
}
"""Command lines that end with status 2, each with all that it says."""
AMONG_OTHERS = ("check", "secret.yaml", "b.yaml", "shut", "--format", "summary")


@pytest.fixture(scope="module")
def found() -> Iterator[dict[tuple[str, ...], Answer]]:
    """What came of all of it, in a folder of root's and in one of his own, and that nothing there changed."""
    with common_folder() as folder:
        _furnish(folder)
        before = {path: path.read_bytes() for path in folder.rglob("*") if path.is_file()}
        lines = [*TOLD, AMONG_OTHERS]
        yield dict(zip(lines, as_ordinary_user(lines, folder=folder), strict=True))
        assert {path: path.read_bytes() for path in folder.rglob("*") if path.is_file()} == before


def _furnish(folder: Path) -> None:
    for name, text in (("a.yaml", OPEN), ("b.yaml", TRAPPED), ("secret.yaml", OPEN)):
        folder.joinpath(name).write_text(text, encoding="utf-8")
    (folder / "secret.yaml").chmod(0o600)
    (folder / "own").mkdir()
    of_nobody(folder / "own", 0o755)
    (folder / "shut").mkdir(0o700)
    for path, rights in ((folder / "own" / "read-only", 0o444), (folder / "own" / "closed", 0o600)):
        _survey_at(path)
        path.chmod(rights)
    _survey_at(folder / "given")
    of_nobody(folder / "given", 0o644)
    for path in (folder / "own" / "parts.csv", folder / "parts.csv"):
        path.write_bytes(b"old")
    of_nobody(folder / "parts.csv", 0o644)


def _survey_at(path: Path) -> None:
    with Book(str(path), SurveyQuery(None, None, Supposed())) as book:
        book.finish()


@pytest.mark.parametrize("line", TOLD, ids=" ".join)
def test_what_a_user_may_not_do_is_a_sentence(line: tuple[str, ...], found: dict[tuple[str, ...], Answer]) -> None:
    assert found[line] == (2, "", TOLD[line])


def test_layout_that_may_not_be_read_leaves_the_others_their_answers(found: dict[tuple[str, ...], Answer]) -> None:
    status, out, said = found[AMONG_OTHERS]
    assert status == 2
    assert "b.yaml: 1 trapped" in out
    assert said == "secret.yaml: permission denied\nshut: permission denied\n"
