from dataclasses import replace

from drawing_board import sketch

from plumbnet.drawing.ink.sheet import block_width, extent, sheet_for
from plumbnet.drawing.lettering import width
from plumbnet.report.text.heater_text import CAUTION

HOUSE = sketch("street -> cv -> heater -> tap.hot")


def test_sheet_holds_drawing_legend_block_and_caution() -> None:
    page = sheet_for(HOUSE.composition, HOUSE.schematic)
    left, top, right, bottom = page.box
    drawing = extent(HOUSE.composition)
    assert left < drawing[0] < drawing[2] < right
    assert top < drawing[1] < drawing[3] < page.legend_at[1] < bottom
    assert " ".join(page.cautions) == CAUTION
    legend = sum(max(entry.width for entry in column) for column in page.columns)
    assert legend + block_width(HOUSE.schematic.block) < right - left


def test_sheet_is_as_wide_as_a_long_title() -> None:
    title = "W" * 90
    page = sheet_for(HOUSE.composition, replace(HOUSE.schematic, title=title))
    assert page.box[2] - page.box[0] > width(title, 10.0, bold=True)


def test_extent_holds_every_word_and_tag() -> None:
    composed = HOUSE.composition
    left, top, right, bottom = extent(composed)
    for box in [
        *(placement.words_box for placement in composed.arrangement.placements),
        *(area.tag_box for area in composed.areas),
    ]:
        assert left <= box[0] <= box[2] <= right
        assert top <= box[1] <= box[3] <= bottom
