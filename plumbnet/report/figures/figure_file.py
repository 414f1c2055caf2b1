"""A matplotlib figure to the bytes of an SVG, PDF or PNG file, the same bytes for the same figure."""

import warnings
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from io import BytesIO
from typing import Literal

from matplotlib import rc_context, rcdefaults, rcParams
from matplotlib.artist import Artist
from matplotlib.axis import Axis
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.backends.backend_pdf import PdfPages
from matplotlib.figure import Figure
from matplotlib.text import Text

from plumbnet.layout.yaml import visible

Form = Literal["svg", "pdf", "png"]
"""How a picture is written."""
FORMS: tuple[Form, ...] = ("svg", "pdf", "png")
PNG_DPI = 150
"""Dots per inch of a PNG."""

_NO_CLOCK: dict[Form, dict[str, None]] = {
    "svg": {"Date": None, "Creator": None},
    "pdf": {"CreationDate": None, "Creator": None, "Producer": None},
    "png": {"Software": None},
}


@contextmanager
def settled() -> Iterator[None]:
    """Inside, figures are made and written as the house does it, whatever the reader's own settings are.

    Text stays text, no `$` in it starts a formula, and signs that the font lacks raise no warning.
    """
    with rc_context(), warnings.catch_warnings():
        rcdefaults()
        rcParams["svg.hashsalt"] = "plumbnet"
        rcParams["svg.fonttype"] = "none"
        rcParams["pdf.fonttype"] = 42
        rcParams["text.parse_math"] = False
        warnings.filterwarnings("ignore", message="Glyph .* missing from", category=UserWarning)
        yield


def saved(figure: Figure, form: Form, *, title: str) -> bytes:
    """The figure as a file that carries `title`; free of dates, versions and chance.

    What does not print is made visible in every text of the figure, line by line, and no `$` starts a formula.
    """
    with settled():
        _make_words_plain(figure)
        FigureCanvasAgg(figure)
        buffer = BytesIO()
        metadata = {"Title": visible(title), **_NO_CLOCK[form]}
        figure.savefig(buffer, format=form, metadata=metadata, dpi=PNG_DPI, facecolor=figure.get_facecolor())
    return buffer.getvalue()


def bound(figures: Iterable[Figure], *, title: str) -> bytes:
    """Figures as the pages of one PDF, in which they share their fonts; as `saved` in everything else."""
    buffer = BytesIO()
    metadata = {"Title": visible(title), **_NO_CLOCK["pdf"]}
    with settled(), PdfPages(buffer, metadata=metadata) as pages:
        for figure in figures:
            _make_words_plain(figure)
            pages.savefig(figure, facecolor=figure.get_facecolor())
    return buffer.getvalue()


def _make_words_plain(figure: Figure) -> None:
    for text in _texts(figure):
        _make_plain(text)


def _texts(artist: Artist) -> Iterator[Text]:
    """All texts that are drawn; an axis that is not would have to make its ticks first."""
    for child in artist.get_children():
        if isinstance(child, Text):
            yield child
        if not (isinstance(child, Axis) and not child.axes.axison):
            yield from _texts(child)


def _make_plain(text: Text) -> None:
    text.set_parse_math(False)
    words = text.get_text()
    plain = "\n".join(visible(line) for line in words.split("\n"))
    if plain != words:
        text.set_text(plain)
