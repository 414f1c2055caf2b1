"""Shapes and words of a figure are entities of DXF at the same places."""

import pytest
from ezdxf.filemanagement import new
from matplotlib.patches import PathPatch
from matplotlib.path import Path

from plumbnet.drawing.dxf_entities import (
    MM_PER_POINT,
    DxfPlace,
    add_outline,
    linetype_of,
    outlines_of,
    plain_words,
    weight_of,
)
from plumbnet.drawing.ink.pen import line, text


def test_line_keeps_its_ends_upside_down_and_its_width() -> None:
    (outline,) = outlines_of(line([(0, 0), (72, 0), (72, 36)], "#ff0080", 1.0), DxfPlace((0.0, 72.0)))
    assert [at for point in outline.points for at in point] == pytest.approx([0, 25.4, 25.4, 25.4, 25.4, 12.7])
    assert (outline.edge, outline.fill, outline.weight, outline.is_closed) == (0xFF0080, None, 35, False)


def test_curve_is_short_straights_and_filled_shape_is_a_hatch() -> None:
    curved = PathPatch(Path([(0, 0), (0, 50), (50, 50), (50, 0)], [1, 4, 4, 4]), facecolor="none", edgecolor="k")
    (outline,) = outlines_of(curved, DxfPlace((0.0, 0.0)))
    assert len(outline.points) > 20
    assert min(y for _, y in outline.points) == pytest.approx(-37.5 * MM_PER_POINT, abs=0.05)
    document = new()
    closed = PathPatch(Path([(0, 0), (9, 0), (9, 9), (0, 0)], [1, 2, 2, 79]), facecolor="#123456", edgecolor="none")
    for each in outlines_of(closed, DxfPlace((0.0, 0.0))):
        add_outline(document.modelspace(), each, "0")
    assert [(one.dxftype(), one.rgb) for one in document.modelspace()] == [("HATCH", (0x12, 0x34, 0x56))]


def test_hole_in_a_shape_is_not_filled() -> None:
    corners = [(0, 0), (9, 0), (9, 9), (0, 0), (4, 1), (8, 1), (8, 5), (4, 1)]
    ring = PathPatch(Path(corners, [1, 2, 2, 79, 1, 2, 2, 79]), facecolor="#123456", edgecolor="k")
    document = new()
    for each in outlines_of(ring, DxfPlace((0.0, 0.0))):
        add_outline(document.modelspace(), each, "0")
    assert [one.dxftype() for one in document.modelspace()] == ["HATCH", "LWPOLYLINE", "LWPOLYLINE"]
    assert len(document.modelspace()[0].paths) == 2


def test_dashes_are_a_line_type_made_once() -> None:
    document = new()
    (outline,) = outlines_of(line([(0, 0), (72, 0)], "#000000", 2.0, (6.0, 3.0)), DxfPlace((0.0, 0.0)))
    assert outline.dash == pytest.approx((6 * MM_PER_POINT, 3 * MM_PER_POINT))
    assert linetype_of(document, outline.dash) == linetype_of(document, outline.dash) == "dash-2.12-1.06"


def test_weight_is_one_that_dxf_has() -> None:
    assert [weight_of(points) for points in (0.35, 1.0, 2.0, 20.0)] == [13, 35, 70, 211]


def test_words_print_as_they_are_written() -> None:
    assert plain_words("50 %%d ^J \x1b") == r"50 % %d ^ J \x1b"
    assert text((0, 0), "a", 7.0, colour="k").get_fontsize() == 7.0
