"""What is set on sheets to the same with breaks before what must not be torn apart: no heading alone, no single row."""

from collections.abc import Iterator, Sequence

from reportlab.platypus import CondPageBreak, Flowable, Table, TableStyle
from reportlab.platypus import Paragraph as Text

_AT_LEAST_LINES = 2
"""Lines of a text that stand under its heading."""
_ROWS = 2
"""Rows of a table that stand under its head at the foot of a sheet, and on top of the next."""
_SHORT = 0.3
"""Of the height of a sheet: a table that is no taller stands on one."""
_TALL, _MUCH = 0.5, 0.4
"""Of the height of a sheet: rows that are taller together, and texts, may be parted."""
_BOUNDLESS = 1e6


def kept(flow: Sequence[Flowable], width: float, height: float) -> Iterator[Flowable]:
    """The flow with a break before each piece that asks to stay with what follows, if not both have room.

    Sheets are `width` wide and `height` high, in points. What follows need not have room whole: some lines of a text
    and some rows of a table are enough; a picture is never parted.
    """
    held: list[Flowable] = []
    for piece in flow:
        if isinstance(piece, Table):
            _hold_rows(piece, width, height)
        held.append(piece)
        if not _stays(piece):
            yield from _together(held, width, height)
            held = []
    yield from held


def _stays(piece: Flowable) -> bool:
    """Whether a piece asks to stay with what follows, by itself or by its style."""
    return bool(getattr(piece, "keepWithNext", getattr(getattr(piece, "style", None), "keepWithNext", 0)))


def _together(held: Sequence[Flowable], width: float, height: float) -> Iterator[Flowable]:
    if len(held) > 1:
        yield CondPageBreak(min(_needed(held, width, height), height))
    for piece in held:
        piece.keepWithNext = 0
        yield piece


def _needed(held: Sequence[Flowable], width: float, height: float) -> float:
    """Room for all, or, of what takes much of a sheet, for some of it and whatever cannot be parted."""
    so_far, whole = 0.0, 0.0
    for piece in held[:-1]:
        so_far += _height(piece, width)
        whole = whole if isinstance(piece, Text) else so_far
    last = _first_height(held[-1], width, height)
    if not isinstance(held[-1], Text | Table):
        whole = so_far + last
    return max(whole, min(so_far + last, _MUCH * height))


def _height(piece: Flowable, width: float) -> float:
    return float(piece.wrap(width, _BOUNDLESS)[1]) + float(piece.getSpaceBefore()) + float(piece.getSpaceAfter())


def _first_height(piece: Flowable, width: float, height: float) -> float:
    """Height of what must stand under a heading."""
    whole = _height(piece, width)
    if isinstance(piece, Table) and not _is_short(piece, width, height):
        return float(piece.getSpaceBefore()) + sum(_row_heights(piece, width)[: 1 + _ROWS])
    if isinstance(piece, Text):
        return min(whole, float(piece.getSpaceBefore()) + _AT_LEAST_LINES * float(piece.style.leading))
    return whole


def _hold_rows(table: Table, width: float, height: float) -> None:
    """Have no sheet end with the head and one row, nor begin with the last row; a short table is never parted."""
    heights = _row_heights(table, width)
    if _is_short(table, width, height):
        table.setStyle(TableStyle([("NOSPLIT", (0, 0), (-1, -1))]))
        return
    for first, last in ((0, _ROWS), (len(heights) - _ROWS, len(heights) - 1)):
        if 0 <= first < last < len(heights) and sum(heights[first : last + 1]) < _TALL * height:
            table.setStyle(TableStyle([("NOSPLIT", (0, first), (-1, last))]))


def _is_short(table: Table, width: float, height: float) -> bool:
    return sum(_row_heights(table, width)) < _SHORT * height


def _row_heights(table: Table, width: float) -> list[float]:
    table.wrap(width, _BOUNDLESS)
    return [float(height) for height in vars(table)["_rowHeights"]]  # the library tells them in no other way
