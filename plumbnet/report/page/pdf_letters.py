"""Letters of a PDF: the fonts that come with the drawing library, and text in which nothing is markup or missing."""

from functools import cache
from pathlib import Path
from xml.sax.saxutils import escape

import matplotlib as mpl
from reportlab.lib.fonts import addMapping
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

from plumbnet.layout.yaml import visible

PLAIN, BOLD, MONO = "DejaVuSans", "DejaVuSans-Bold", "DejaVuSansMono"
"""Names of the fonts; their licence allows them to be embedded."""
LONGEST = 1200
"""Letters of one text in a cell of a table; a cell is never taller than a page."""

_FOLDER = Path(mpl.get_data_path()) / "fonts" / "ttf"


@cache
def fonts() -> None:
    """Make the fonts known to the PDF library."""
    for name in (PLAIN, BOLD, MONO):
        pdfmetrics.registerFont(TTFont(name, str(_FOLDER / f"{name}.ttf")))
    addMapping(PLAIN, 0, 0, PLAIN)
    addMapping(PLAIN, 1, 0, BOLD)


def lettered(text: str) -> str:
    r"""A text as the PDF library wants it: no markup in it, and a sign that the font lacks as an escape.

    >>> lettered("a <b> \u4e2d")
    'a &lt;b&gt; \\u4e2d'
    """
    return escape(in_the_font(text))


def in_the_font(text: str) -> str:
    """A text with signs of the font alone, others as an escape."""
    known = _known()
    return "".join(sign if ord(sign) in known else _escape(sign) for sign in visible(text))


def cut(text: str, longest: int = LONGEST) -> str:
    """A text of so many letters at most, three dots where there was more.

    >>> cut("a long text", 7)
    'a lo...'
    """
    return text if len(text) <= longest else f"{text[: longest - 3]}..."


def _escape(sign: str) -> str:
    return sign.encode("unicode_escape").decode("ascii")


@cache
def _known() -> frozenset[int]:
    """Signs that the plain font has, by their number."""
    font = TTFont(PLAIN, str(_FOLDER / f"{PLAIN}.ttf"))
    return frozenset(font.face.charToGlyph)
