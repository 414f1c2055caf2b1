from dataclasses import replace

from drawing_board import sketch

from plumbnet.report.drawing.legend import entries
from plumbnet.report.drawing.lettering import width
from plumbnet.report.drawing.sheet import block_width, extent, rows, sheet, shortened
from plumbnet.report.text import CAUTION

HOUSE = sketch("street -> cv -> heater -> tap.hot")


def test_title_block_names_file_rules_date_and_verdicts() -> None:
    assert [(row.name, row.words) for row in rows(HOUSE.report, "2026-11-25")] == [
        ("file", "drawn.yaml"),
        ("rules", "General practice"),
        ("date", "2026-11-25"),
        ("heater", "SEALED"),
    ]


def test_no_date_is_printed_that_was_not_given() -> None:
    assert "date" not in {row.name for row in rows(HOUSE.report, None)}


def test_scenario_is_named() -> None:
    report = replace(HOUSE.report, scenario="stop shut")
    assert ("scenario", "stop shut") in {(row.name, row.words) for row in rows(report, None)}


def test_many_heaters_are_counted_rather_than_listed() -> None:
    runs = "\n".join(f"tee -> heater{n}" for n in range(1, 16))
    found = rows(sketch(f"street -> tee\n{runs}").report, None)
    assert found[-1].words == "and 3 more heaters"
    assert len(found) == 2 + 12 + 1


def test_long_words_are_cut_and_odd_signs_made_visible() -> None:
    assert shortened("short") == "short"
    assert shortened("x" * 100) == "x" * 61 + "..."
    assert shortened("a\x1b[2J") == "a\\x1b[2J"


def test_sheet_holds_drawing_legend_block_and_caution() -> None:
    layout = HOUSE.layout
    block = rows(HOUSE.report, None)
    page = sheet(extent(layout), "Title", entries(layout.placed, layout.remarks), block)
    left, top, right, bottom = page.box
    drawing = extent(layout)
    assert left < drawing[0] < drawing[2] < right
    assert top < drawing[1] < drawing[3] < page.foot < bottom
    assert " ".join(page.cautions) == CAUTION
    legend = sum(max(entry.width for entry in column) for column in page.columns)
    assert legend + block_width(block) < right - left


def test_sheet_is_as_wide_as_a_long_title() -> None:
    title = "W" * 90
    page = sheet((0.0, 0.0, 100.0, 100.0), title, [], rows(HOUSE.report, None))
    assert page.box[2] - page.box[0] > width(title, 10.0, bold=True)


def test_extent_holds_every_word_and_tag() -> None:
    layout = HOUSE.layout
    left, top, right, bottom = extent(layout)
    for box in [*(body.words_box for body in layout.placed.bodies), *(area.tag_box for area in layout.areas)]:
        assert left <= box[0] <= box[2] <= right
        assert top <= box[1] <= box[3] <= bottom
