"""Reviews in chapters: one file, or several under a cover."""

from pathlib import Path

from conftest import system

import plumbnet
from plumbnet.layout.yaml.fault import Fault
from plumbnet.report.output.writer import Unread
from plumbnet.report.page.page_content import PageFrame
from plumbnet.report.prose.prose_blocks import Points, Table
from plumbnet.report.review.review_chapters import CHAPTERS_OF_A_FILE, review_page
from plumbnet.report.review.reviewed_files import ReviewedFiles
from plumbnet.study.review.review_sheet import Review, review_of

HOUSE = "street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief"


def review(**said: str) -> Review:
    return review_of(plumbnet.check(system(HOUSE)), **said)


def test_one_file_has_its_own_title_and_chapters() -> None:
    page = review_page(ReviewedFiles((review(reviewer="R. Hale", date="30 November 2026"),)))
    assert page.title == "Review: drawn.yaml"
    assert page.under == (
        "File: drawn.yaml",
        "Rules: General practice (general)",
        "Reviewed by: R. Hale",
        "Date: 30 November 2026",
    )
    keys = [chapter.key for chapter in page.chapters]
    assert keys == ["cover", "comments", "piping", "requirements", "site", "assumptions", "record"]
    assert set(keys) < {name for name, _, _ in CHAPTERS_OF_A_FILE}
    record = page.chapters[-1].blocks[0]
    assert isinstance(record, Table)
    assert ("reviewed by", "R. Hale") in record.rows
    rows = {row[0]: row[1] for row in record.rows}
    assert rows["program"].startswith("plumbnet ")
    assert (rows["file"], rows["date"]) == ("drawn.yaml", "30 November 2026")


def test_several_files_stand_under_a_table_and_each_opens_a_sheet() -> None:
    bad = Unread(str(Path("b.yaml")), (Fault(1, 1, "not a layout"),), "b.yaml:1:1: not a layout")
    page = review_page(ReviewedFiles((review(), review()), (bad,)))
    assert page.title == "Review of 3 files"
    files = page.chapters[0]
    assert (files.key, files.title) == ("files", "Files")
    table, _, refused = files.blocks
    assert isinstance(table, Table)
    assert table.rows[0] == ("drawn.yaml", "general", "trapped", "1", "2", "3")
    assert refused == Points(("b.yaml:1:1: not a layout",))
    opening = [chapter.title for chapter in page.chapters if chapter.opens_sheet]
    assert opening == ["1. drawn.yaml: Cover", "2. drawn.yaml: Cover"]
    assert len({chapter.key for chapter in page.chapters}) == len(page.chapters)


def test_board_stands_behind_the_piping_of_its_file() -> None:
    frame = PageFrame("The board", "It holds 2 states.", "<p>", "sha256-x")
    keys = [chapter.key for chapter in review_page(ReviewedFiles((review(), review())), {1: frame}).chapters]
    assert keys.index("f2-board") == keys.index("f2-piping") + 1
    assert "f1-board" not in keys
