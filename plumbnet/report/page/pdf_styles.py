"""Styles of paragraphs and tables in a PDF: sizes in points, colours of the light palette."""

from collections.abc import Mapping

from reportlab.lib.colors import HexColor
from reportlab.lib.styles import ParagraphStyle
from reportlab.platypus import TableStyle

from plumbnet.report.figures import PALETTES
from plumbnet.report.page.pdf_letters import BOLD, PLAIN

INK, FAINT, RULE = HexColor(PALETTES["light"].ink), HexColor(PALETTES["light"].faint), HexColor("#c9cdd2")
"""Colours of text, of what stands back, and of rules in tables."""
CELL_POINTS = 7.2
PADDING = 3.0
"""Points between a cell and its text, at either side."""

BODY = ParagraphStyle(
    "body",
    fontName=PLAIN,
    fontSize=8.8,
    leading=12.0,
    textColor=INK,
    spaceAfter=4.0,
    splitLongWords=1,
    allowWidows=0,
    allowOrphans=0,
)
UNDER = ParagraphStyle("under", BODY, textColor=FAINT, spaceAfter=0.0)
CAUTION_STYLE = ParagraphStyle(
    "caution", BODY, borderColor=INK, borderWidth=0.8, borderPadding=6.0, spaceBefore=14.0, spaceAfter=14.0
)
POINT = ParagraphStyle("point", BODY, leftIndent=12.0, bulletIndent=2.0, bulletFontName=PLAIN, bulletFontSize=8.8)
TOLD = ParagraphStyle("told", BODY, leftIndent=10.0, spaceAfter=2.0)
ENTRY = ParagraphStyle(
    "entry", BODY, fontName=BOLD, fontSize=9.4, leading=13.0, spaceBefore=8.0, spaceAfter=3.0, keepWithNext=1
)
CELL = ParagraphStyle("cell", BODY, fontSize=CELL_POINTS, leading=9.4, spaceAfter=0.0)
HEAD_STYLE = ParagraphStyle("head", CELL, fontName=BOLD)
UNDER_PICTURE = ParagraphStyle("under picture", UNDER, fontSize=7.6, spaceBefore=3.0, spaceAfter=10.0)
HEADINGS: Mapping[int, ParagraphStyle] = {
    level: ParagraphStyle(
        f"heading {level}",
        BODY,
        fontName=BOLD,
        fontSize=size,
        leading=size * 1.25,
        spaceBefore=before,
        spaceAfter=4.0,
        keepWithNext=1,
    )
    for level, size, before in ((1, 17.0, 0.0), (2, 13.5, 18.0), (3, 10.8, 12.0), (4, 9.6, 9.0), (5, 8.8, 8.0))
}
GRID = TableStyle(
    [
        ("FONTNAME", (0, 0), (-1, -1), PLAIN),
        ("VALIGN", (0, 0), (-1, -1), "TOP"),
        ("LINEBELOW", (0, 0), (-1, 0), 1.2, INK),
        ("LINEBELOW", (0, 1), (-1, -1), 0.4, RULE),
        ("LEFTPADDING", (0, 0), (-1, -1), PADDING),
        ("RIGHTPADDING", (0, 0), (-1, -1), PADDING),
        ("TOPPADDING", (0, 0), (-1, -1), 2.0),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 2.6),
    ]
)
