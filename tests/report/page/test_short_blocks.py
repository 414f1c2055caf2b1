"""Lists of names in every sort of block: in short, and what is drawn or worked stays."""

from matplotlib.figure import Figure

from plumbnet.report import prose
from plumbnet.report.page.page_content import Entry, PagePicture
from plumbnet.report.page.short_blocks import in_short

KNOWN = {f"r{number}" for number in range(9)}
LONG, SHORT = "of r1, r2, r3, r4 and r5", "of r1 to 5"


def test_lists_are_in_short_in_every_block_that_has_words() -> None:
    told = (prose.Paragraph(LONG, "label"),)
    assert in_short(prose.Heading(LONG, 3), KNOWN) == prose.Heading(SHORT, 3)
    assert in_short(prose.Paragraph(LONG, "label"), KNOWN) == prose.Paragraph(SHORT, "label")
    assert in_short(prose.Points((LONG, "x")), KNOWN) == prose.Points((SHORT, "x"))
    assert in_short(prose.Table(("what", LONG), (("a", LONG),)), KNOWN) == prose.Table(("what", LONG), (("a", SHORT),))
    assert in_short(Entry("MARK", "open", LONG, told, ("r1", "r2")), KNOWN) == Entry(
        "MARK", "open", SHORT, (prose.Paragraph(SHORT, "label"),), ("r1", "r2")
    )
    assert in_short(PagePicture(LONG, LONG, Figure, is_small=True), KNOWN) == PagePicture(
        SHORT, SHORT, Figure, is_small=True
    )


def test_lines_stand_as_they_are() -> None:
    assert in_short(prose.Lines((LONG,)), KNOWN) == prose.Lines((LONG,))
