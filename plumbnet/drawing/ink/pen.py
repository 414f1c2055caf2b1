"""Marks of a symbol to shapes of matplotlib, gathered in groups that carry the name of their part into the SVG."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.backend_bases import RendererBase
from matplotlib.patches import Patch, PathPatch
from matplotlib.path import Path
from matplotlib.text import Text

from plumbnet.drawing.palette import Dash, Palette, Service
from plumbnet.drawing.symbols import Disc, Fill, Letter, Mark, Point, Stroke


@dataclass(frozen=True, slots=True)
class Pen:
    """The colours to draw with, and how many points on paper one unit of the drawing takes."""

    palette: Palette
    scale: float = 1.0


_FONT = "sans-serif"
_ROUND = 0.5522847498307936
"""Length of the handles with which four cubic curves make a circle, in radii."""


class Group(Artist):
    """Shapes and words drawn together, in the SVG as one group with an id.

    `service` is that of a pipe, `symbol` the name of the one that it draws: a drawing with layers and blocks has use
    for them.
    """

    def __init__(
        self, gid: str, members: Sequence[Artist], zorder: float, *, service: Service | None = None, symbol: str = ""
    ) -> None:
        super().__init__()
        self.service, self.symbol = service, symbol
        self.set_gid(gid)
        self.set_zorder(zorder)
        self.members = list(members)

    def get_children(self) -> list[Artist]:
        """The members."""
        return self.members

    def draw(self, renderer: RendererBase) -> None:
        """Draw the members one after the other."""
        renderer.open_group("part", gid=self.get_gid())
        for member in self.members:
            member.draw(renderer)
        renderer.close_group("part")


class Cut(PathPatch):
    """A shape of which only what lies inside another path is drawn."""

    def __init__(self, path: Path, inside: Path, colour: str, width: float) -> None:
        super().__init__(path, facecolor="none", edgecolor=colour, linewidth=width)
        self.inside = inside


def add_group(axes: Axes, group: Group) -> None:
    """Put a group into axes, its members in data coordinates."""
    figure = axes.get_figure(root=False)
    for member in group.members:
        if figure is not None:
            member.set_figure(figure)
        member.axes = axes
        if not member.is_transform_set():
            member.set_transform(axes.transData)
        if isinstance(member, Cut):
            member.set_clip_path(member.inside, axes.transData)
    axes.add_artist(group)


def identifier(sort: str, name: str) -> str:
    """An id for the SVG, other for every other name, whatever signs the name holds.

    >>> identifier("part", "heater/relief"), identifier("part", "a_b")
    ('part-heater_2f_relief', 'part-a__b')
    """
    return f"{sort}-" + "".join(map(_safe, name))


def _safe(sign: str) -> str:
    if sign == "_":
        return "__"
    return sign if sign.isascii() and (sign.isalnum() or sign in "-.") else f"_{ord(sign):x}_"


def outlines(marks: Iterable[Mark], place: Callable[[Point], Point], pen: Pen) -> Iterator[Artist]:
    """The shapes of marks whose points `place` puts on paper."""
    for mark in marks:
        match mark:
            case Letter(x, y, words, size):
                at = place((x, y))
                yield text(at, words, size * pen.scale, colour=pen.palette.ink, is_bold=True)
            case Disc(x, y, radius, fill, width):
                yield patch(_circle(place, x, y, radius), pen, fill, width)
            case Stroke(points, is_closed, is_curved, fill, width):
                yield patch(_path([place(point) for point in points], is_closed, is_curved), pen, fill, width)


def patch(path: Path, pen: Pen, fill: Fill, width: float) -> PathPatch:
    """A shape of the symbol's colours."""
    face = {"none": "none", "ground": pen.palette.ground, "ink": pen.palette.ink}[fill]
    edge = pen.palette.ink if width else "none"
    return PathPatch(
        path, facecolor=face, edgecolor=edge, linewidth=width * pen.scale, joinstyle="miter", capstyle="butt"
    )


def line(points: Sequence[Point], colour: str, width: float, dash: Dash = (), scale: float = 1.0) -> PathPatch:
    """A line through points."""
    path = Path(points, [Path.MOVETO] + [Path.LINETO] * (len(points) - 1))
    return stroke(path, colour, width, dash, scale)


def stroke(path: Path, colour: str, width: float, dash: Dash = (), scale: float = 1.0) -> PathPatch:
    """A line along a path; dashes in points, drawn `scale` times as long."""
    shape = PathPatch(path, facecolor="none", edgecolor=colour, linewidth=width * scale, joinstyle="round")
    shape.set_capstyle("butt")
    if dash:
        # matplotlib counts dashes in line widths.
        shape.set_linestyle((0.0, [length / width for length in dash]))
    return shape


Across = Literal["left", "center", "right"]


def text(  # noqa: PLR0913  # what a word on paper has
    at: Point,
    words: str,
    size: float,
    *,
    colour: str,
    across: Across = "center",
    is_bold: bool = False,
    behind: str | None = None,
) -> Text:
    """Words with their middle, or the middle of their left or right edge, at a point; `behind` colours their ground."""
    ground = None if behind is None else {"boxstyle": "square,pad=0.1", "facecolor": behind, "edgecolor": "none"}
    return Text(
        at[0],
        at[1],
        words,
        fontsize=size,
        color=colour,
        horizontalalignment=across,
        verticalalignment="center_baseline" if "\n" not in words else "center",
        fontfamily=_FONT,
        fontweight="bold" if is_bold else "normal",
        linespacing=1.2,
        parse_math=False,
        bbox=ground,
    )


def filled(points: Sequence[Point], colour: str) -> Patch:
    """A filled shape without an outline."""
    return PathPatch(_path(points, is_closed=True, is_curved=False), facecolor=colour, edgecolor="none", linewidth=0.0)


def _path(points: Sequence[Point], is_closed: bool, is_curved: bool) -> Path:  # noqa: FBT001  # as the stroke has them
    codes = [Path.MOVETO] + [Path.CURVE4 if is_curved else Path.LINETO] * (len(points) - 1)
    if not is_closed:
        return Path(points, codes)
    return Path([*points, points[0]], [*codes, Path.CLOSEPOLY])


def _circle(place: Callable[[Point], Point], x: float, y: float, r: float) -> Path:
    k = r * _ROUND
    points = [
        (x + r, y), (x + r, y + k), (x + k, y + r), (x, y + r), (x - k, y + r), (x - r, y + k), (x - r, y),
        (x - r, y - k), (x - k, y - r), (x, y - r), (x + k, y - r), (x + r, y - k), (x + r, y),
    ]  # fmt: skip
    return Path(
        [place(point) for point in points] + [place(points[0])], [Path.MOVETO] + [Path.CURVE4] * 12 + [Path.CLOSEPOLY]
    )
