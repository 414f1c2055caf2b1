"""A review as blocks."""

from conftest import system

import plumbnet
from plumbnet.report.page.page_content import Entry
from plumbnet.report.prose.prose_blocks import Heading, Paragraph, Table
from plumbnet.report.review.review_blocks import (
    SHEET_HEAD,
    comment_blocks,
    counts_in_words,
    requirement_blocks,
    sheet_lines,
    site_blocks,
)
from plumbnet.study.review.review_sheet import Review, review_of

HOUSE = "street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief"
SOUND = "street -> heater -> tap.hot\nheater.relief -> relief"
SAID = {"heater": "rating: 150 psi", "relief": "pressure: 150 psi, capacity: 50000 Btu/h, temperature: 210 degF"}


def review(runs: str, **parts: str) -> Review:
    return review_of(plumbnet.check(system(runs, **parts)))


def test_comments_say_what_about_what_and_by_which_clause() -> None:
    first, *_, last = comment_blocks(review(HOUSE))
    assert isinstance(first, Entry)
    assert isinstance(last, Entry)
    assert (first.mark, first.meaning) == ("1. error", "error")
    assert first.title.startswith("trapped-expansion: heater and cv, line ")
    assert first.lights == ("heater", "cv")
    assert last.mark.endswith(". cannot be told")
    assert last.told[0].text == "The file does not say the capacity of relief."


def test_layout_without_a_fault_has_no_comments() -> None:
    sound = review(SOUND, **SAID)
    assert list(comment_blocks(sound)) == [Paragraph("No comments.")]
    assert counts_in_words(sound).endswith(" not applicable and 0 cannot be told.")
    assert " met, 0 BROKEN, " in counts_in_words(sound)


def test_sheet_has_a_chapter_for_each_matter_and_what_bears_on_nothing_stands_last() -> None:
    blocks = list(requirement_blocks(review(HOUSE)))
    assert [one.text for one in blocks if isinstance(one, Heading)][:2] == ["Growth of heated water", "Relief valves"]
    growth = blocks[1]
    assert isinstance(growth, Table)
    assert growth.head == SHEET_HEAD
    answers = [row[4] for row in growth.rows]
    assert answers.index("BROKEN") < answers.index("not applicable") == len(answers) - answers.count("not applicable")
    (broken,) = (row for row in growth.rows if row[4] == "BROKEN")
    assert broken[0] == "1"
    assert broken[1].startswith("trapped-expansion: What a closed heater's water grows by is taken up, ")


def test_requirement_is_said_in_the_first_of_its_rows_alone() -> None:
    two = review("street -> tee -> tap1.cold\ntee -> tap2.cold", street="pressure: 79 psi", tap1="elevation: -9 ft")
    rows = [row for block in requirement_blocks(two) if isinstance(block, Table) for row in block.rows]
    at = next(number for number, row in enumerate(rows) if row[1].startswith("static-above-limit"))
    assert rows[at + 1][1:3] == ("", "")
    assert [row[4] for row in rows[at : at + 2]] == ["BROKEN", "met"]


def test_rows_become_lines_of_text() -> None:
    rows = [("2", "low: What is low.", "[Code]", "tap (line 3)", "BROKEN", "8 psi"), ("", "", "", "pot", "met", "")]
    assert list(sheet_lines(rows)) == [
        "low: What is low. [Code]",
        "     2  BROKEN          tap (line 3): 8 psi",
        "        met             pot",
    ]


def test_site_list_has_a_line_to_write_on() -> None:
    (table,) = site_blocks(review(SOUND))
    assert isinstance(table, Table)
    assert all(set(row[2]) == {"_"} for row in table.rows)


def test_what_two_codes_ask_stands_twice_each_with_its_own_clause() -> None:
    runs = "street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief\ntee -> cv2 -> boiler -> emitter"
    rules = {"water": "ipc-2021", "heating": "us-boiler"}
    both = review_of(plumbnet.check(system(runs), rules=rules))
    rows = [row for block in requirement_blocks(both) if isinstance(block, Table) for row in block.rows]
    asked = [row for row in rows if row[1].startswith("relief-missing: ")]
    assert [row[2].partition(" ")[0] for row in asked] == ["[IMC", "[IPC"]
    assert [row[3].partition(" ")[0] for row in asked] == ["boiler", "heater"]
