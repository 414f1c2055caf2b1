"""What a page holds."""

from matplotlib.figure import Figure

from plumbnet.report.page.page_content import WIDE_IN, PagePicture


def test_wide_pictures_lie_across_unless_they_are_meant_small() -> None:
    assert PagePicture("t", "w", Figure).is_wide(WIDE_IN + 1.0)
    assert not PagePicture("t", "w", Figure).is_wide(WIDE_IN)
    assert not PagePicture("t", "w", Figure, is_small=True).is_wide(WIDE_IN + 1.0)
