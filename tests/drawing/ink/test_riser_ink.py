from matplotlib.text import Text

from plumbnet.drawing.ink.pen import Pen
from plumbnet.drawing.ink.riser_ink import over_marks, under_marks
from plumbnet.drawing.riser.stacking.riser_marks import BreakMark, CaptionMark, CardMark, FloorMark
from plumbnet.report.figures.colours import PALETTES

PEN = Pen(PALETTES["dark"], 1.0)


def words(shapes: object) -> list[str]:
    return [each.get_text() for each in shapes if isinstance(each, Text)]  # type: ignore[attr-defined]  # an iterator


def test_floor_lines_take_the_colour_of_the_theme() -> None:
    line, height = under_marks(FloorMark(0.0, 100.0, 50.0, "10 ft"), PEN)
    assert line.get_edgecolor()[:3] == tuple(int(PEN.palette.faint[at : at + 2], 16) / 255 for at in (1, 3, 5))  # type: ignore[attr-defined]  # a patch
    assert words([height]) == ["10 ft"]


def test_a_card_is_a_sheaf_below_and_its_count_and_names_above() -> None:
    card = CardMark((0.0, 0.0, 100.0, 60.0), "A  × 12", ("rooms/1-12",))
    assert len(list(under_marks(card, PEN))) == 6
    assert words(over_marks(card, PEN)) == ["A  × 12", "rooms/1-12"]


def test_a_break_goes_through_every_riser() -> None:
    mark = BreakMark(0.0, 70.0, (30.0, 40.0), ("20 ft to 90 ft:", "8 levels alike"))
    assert words(under_marks(mark, PEN)) == ["20 ft to 90 ft:", "8 levels alike"]
    assert len(list(over_marks(mark, PEN))) == 2 * 3


def test_a_caption_is_words_alone() -> None:
    caption = CaptionMark(0.0, 50.0, ("rooms/", "1-12"))
    assert list(under_marks(caption, PEN)) == []
    assert words(over_marks(caption, PEN)) == ["rooms/", "1-12"]
