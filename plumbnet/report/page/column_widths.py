"""Rows of cells to the widths of their columns: what each asks for, the widest narrowed until all stand on the page."""

from collections.abc import Sequence

from reportlab.pdfbase.pdfmetrics import stringWidth

from plumbnet.report.page.pdf_letters import BOLD, fonts
from plumbnet.report.page.pdf_styles import CELL_POINTS, PADDING

_SPARE = 1.0  # of a point, so that no word is broken for a rounding


def column_widths(rows: Sequence[Sequence[str]], width: float) -> list[float]:
    """Widths in points of the columns of rows, `width` together; the last takes what is left over.

    >>> column_widths([("a", "b")], 100.0)[1] > 80.0
    True
    """
    fonts()
    wanted = [max(_wanted(row[column]) for row in rows) for column in range(len(rows[0]))]
    widths = [min(each, _widest(wanted, width)) for each in wanted]
    widths[-1] += max(0.0, width - sum(widths))
    return widths


def _wanted(cell: str) -> float:
    lines = cell.split("\n")
    return max(stringWidth(line, BOLD, CELL_POINTS) for line in lines) + 2.0 * PADDING + _SPARE


def _widest(wanted: Sequence[float], width: float) -> float:
    """The width that no column may pass, so that all together come to `width` at most."""
    left, columns = width, len(wanted)
    for each in sorted(wanted):
        if each * columns > left:
            return left / columns
        left -= each
        columns -= 1
    return max(wanted)
