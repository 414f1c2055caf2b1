import pytest

from plumbnet.drawing.ink.paper import SMALLEST_SCALE, PaperSize, paper_for, paper_named

MM = 72 / 25.4


@pytest.mark.parametrize(
    ("box", "millimetres"),
    [
        ((0, 0, 700, 400), (297, 210)),
        ((0, 0, 400, 700), (210, 297)),
        ((-50, -50, 1150, 700), (420, 297)),
        ((0, 0, 1600, 1000), (594, 420)),
        ((0, 0, 3500, 2000), (1189, 841)),
    ],
)
def test_smallest_iso_sheet_that_reads_well(box: tuple[float, ...], millimetres: tuple[float, float]) -> None:
    left, top, right, bottom = box
    paper = paper_for((left, top, right, bottom))
    assert (paper.width / MM, paper.height / MM) == pytest.approx(millimetres)
    assert paper.scale >= SMALLEST_SCALE
    assert (right - left) * paper.scale <= paper.width
    assert (bottom - top) * paper.scale <= paper.height


def test_what_no_sheet_holds_gets_paper_of_its_own_size() -> None:
    assert paper_for((0, 0, 9000, 3000)) == PaperSize(9000, 3000, 1.0)


def test_a_sheet_by_its_name_holds_the_drawing_at_its_largest() -> None:
    paper = paper_named((0, 0, 2000, 1000), "11x17")
    assert (paper.width / 72, paper.height / 72) == pytest.approx((17, 11))
    assert paper.scale == pytest.approx((17 * 72 - 24) / 2000)
    assert paper.area == pytest.approx(17 * 11 * 72**2)
