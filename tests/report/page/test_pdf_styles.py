"""Styles of the PDF."""

from plumbnet.report.page.pdf_styles import BODY, CELL, HEADINGS


def test_every_level_of_heading_is_larger_than_what_stands_under_it_and_kept_with_it() -> None:
    sizes = [HEADINGS[level].fontSize for level in range(1, 6)]
    assert sizes == sorted(sizes, reverse=True)
    assert sizes[-1] >= BODY.fontSize > CELL.fontSize
    assert all(style.keepWithNext for style in HEADINGS.values())
