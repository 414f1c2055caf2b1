"""A drawing as wide as its place, in which names stay large enough to be read."""

import pytest
from drawing_board import sketch
from matplotlib.figure import Figure
from matplotlib.text import Text

from plumbnet.drawing.fitted_picture import LEAST_PT, PicturePlace, fitted_figure
from plumbnet.drawing.items.schematic import Schematic
from plumbnet.report.figures.colours import PALETTES

CHAIN = "street -> valve -> valve2 -> valve3 -> valve4 -> valve5 -> valve6 -> tee -> tap.cold"
WIDE, HIGH = 700.0, 400.0


def drawn(*places: PicturePlace, chain: str = CHAIN) -> Figure | None:
    return fitted_figure(Schematic("Chain", sketch(chain).diagram, ()), PALETTES["bw"], places)


def names(figure: Figure) -> list[Text]:
    """The words of the piping, which stands in the first axes, the legend in the second."""
    return [text for text in figure.axes[0].findobj(Text) if isinstance(text, Text) and text.get_text()]


def test_picture_is_as_wide_as_its_place() -> None:
    figure = drawn(PicturePlace(WIDE, HIGH))
    assert figure is not None
    assert figure.get_size_inches()[0] * 72 == pytest.approx(WIDE)


@pytest.mark.parametrize("width", [250.0, 320.0, WIDE])
def test_names_of_parts_and_of_joints_keep_their_size_in_a_narrow_place(width: float) -> None:
    figure = drawn(PicturePlace(width, HIGH))
    assert figure is not None
    told = {text.get_text(): float(text.get_fontsize()) for text in names(figure)}
    assert {"valve", "tap"} <= set(told)
    assert all(size >= LEAST_PT - 1e-6 for size in told.values())


def test_first_place_is_taken_in_which_symbols_stay_large_and_else_the_one_where_they_are_largest() -> None:
    narrow, wide, wider = (PicturePlace(width, HIGH) for width in (250.0, WIDE, 900.0))
    for places, taken in (((narrow, wide, wider), wide), ((wide, wider), wide), ((narrow,), narrow)):
        figure = drawn(*places)
        assert figure is not None
        assert figure.get_size_inches()[0] * 72 == pytest.approx(taken.width)


def test_nothing_is_drawn_where_names_could_not_be_read() -> None:
    assert drawn(PicturePlace(40.0, HIGH)) is None
    assert drawn(PicturePlace(WIDE, 8.0)) is None


def test_legend_stands_below_unless_none_is_wanted() -> None:
    told, silent = drawn(PicturePlace(WIDE, HIGH)), drawn(PicturePlace(WIDE, HIGH, has_legend=False))
    assert told is not None
    assert silent is not None
    assert (len(told.axes), len(silent.axes)) == (2, 1)
    assert told.get_size_inches()[1] > silent.get_size_inches()[1]
