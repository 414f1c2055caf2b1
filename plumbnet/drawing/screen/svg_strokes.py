"""Marks of a symbol to elements of SVG: paths by points, letters as outlines, classes in place of colours."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import lru_cache

from matplotlib.font_manager import FontProperties
from matplotlib.path import Path
from matplotlib.textpath import TextPath

from plumbnet.drawing.symbols import Disc, Letter, Mark, Point, Stroke

_STOUT = 1.5
"""From this width on a line is one that carries the meaning."""
_CODES = {
    int(code): sign for code, sign in ((Path.MOVETO, "M"), (Path.LINETO, "L"), (Path.CURVE3, "Q"), (Path.CURVE4, "C"))
}


def drawn_marks(marks: Iterable[Mark], place: Callable[[Point], Point]) -> Iterator[str]:
    """The elements of a symbol, each with the class of its fill: `ground`, `ink` or `none`, and `heavy` lines."""
    for mark in marks:
        match mark:
            case Stroke(points, is_closed, is_curved, fill, width):
                heavy = " heavy" if width >= _STOUT else ""
                data = path_data([place(point) for point in points], is_closed=is_closed, is_curved=is_curved)
                yield f'<path class="{fill}{heavy}" d="{data}"/>'
            case Disc(x, y, radius, fill):
                at_x, at_y = place((x, y))
                yield f'<circle class="{fill}" cx="{at_x:.1f}" cy="{at_y:.1f}" r="{radius:g}"/>'
            case Letter(x, y, text, size):
                yield f'<path class="letter" d="{_outlined(text, size, place((x, y)))}"/>'


def path_data(points: Sequence[Point], *, is_closed: bool = False, is_curved: bool = False) -> str:
    """Points as the data of a path: straight from one to the next, or cubic curves.

    >>> path_data([(0.0, 0.0), (4.04, 0.0)]), path_data([(0, 0), (1, 0), (1, 2)], is_closed=True)
    ('M0 0L4 0', 'M0 0L1 0L1 2Z')
    """
    first, *others = [f"{x:.1f} {y:.1f}".replace(".0", "") for x, y in points]
    rest = f"C{' '.join(others)}" if is_curved else "".join(f"L{point}" for point in others)
    return f"M{first}{rest}{'Z' if is_closed else ''}"


def outline_data(path: Path, at: Point = (0.0, 0.0), *, upward: bool = False) -> str:
    """A path of matplotlib as the data of one of SVG, moved to a point; letters are drawn `upward`."""
    sign = -1.0 if upward else 1.0
    found = []
    for vertices, code in path.iter_segments(simplify=False, curves=True):
        pairs = zip(vertices[::2], vertices[1::2], strict=True)
        points = " ".join(f"{at[0] + float(x):.1f} {at[1] + sign * float(y):.1f}" for x, y in pairs)
        found.append("Z" if code == Path.CLOSEPOLY else f"{_CODES[int(code)]}{points}")
    return "".join(found)


@lru_cache(maxsize=256)
def _outlined(text: str, size: float, at: Point) -> str:
    """Letters of a symbol as outlines: as text they would be read out as part of the name of what is touched."""
    path = TextPath((0.0, 0.0), text, size=size, prop=FontProperties(family="DejaVu Sans", weight="bold"))
    box = path.get_extents()
    middle = (at[0] - (float(box.x0) + float(box.x1)) / 2, at[1] + (float(box.y0) + float(box.y1)) / 2)
    return outline_data(path, middle, upward=True)
