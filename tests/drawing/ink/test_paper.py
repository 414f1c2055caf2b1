import pytest

from plumbnet.drawing.ink.paper import SMALLEST_SCALE, PaperSize, paper_for

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
