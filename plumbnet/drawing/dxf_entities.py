"""Shapes and words of a figure to entities of DXF: outlines as polylines, fills as hatches, words as text; in mm."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from importlib import import_module
from typing import Any, Final

from matplotlib.colors import to_rgb
from matplotlib.patches import Patch
from matplotlib.path import Path
from matplotlib.text import Text
from matplotlib.transforms import Affine2D

from plumbnet.layout.yaml import visible

MM_PER_POINT: Final = 25.4 / 72.0
"""The sheet is drawn in points, as the SVG is."""
CAP_HEIGHT: Final = 0.729
"""Height of a capital of the drawing's font, in its size (DejaVu Sans, read off the font)."""
_FINE = 16.0  # curves are flattened to about a sixteenth of a point
_LINE_SPACING = 1.2
_ALIGN: Final = {"left": "MIDDLE_LEFT", "center": "MIDDLE_CENTER", "right": "MIDDLE_RIGHT"}

DxfPoint = tuple[float, float]


@dataclass(frozen=True, slots=True)
class DxfPlace:
    """How the drawing lies on its sheet: its point at the lower left corner, and the points that a unit takes."""

    corner: DxfPoint
    scale: float = 1.0

    def mm(self, point: DxfPoint) -> DxfPoint:
        """A point of the drawing, downwards, in mm from the lower left corner of the sheet."""
        mm_per_unit = self.scale * MM_PER_POINT
        return (point[0] - self.corner[0]) * mm_per_unit, (self.corner[1] - point[1]) * mm_per_unit


@dataclass(frozen=True, slots=True)
class Outline:
    """A polyline in mm, with its colours as 0xRRGGBB; None for none."""

    points: tuple[DxfPoint, ...]
    is_closed: bool
    edge: int | None
    fill: int | None
    weight: int
    """Width of the line in hundredths of a mm."""
    dash: tuple[float, ...] = ()
    """Lengths of line and gap in turn, in mm; empty for a line without gaps."""
    others: tuple[tuple[DxfPoint, ...], ...] = ()
    """Other outlines of the same fill: what lies within one and without another is not filled."""

    def moved(self, by: DxfPoint) -> "Outline":
        """The same less a point, rounded so that equal symbols are equal."""
        return replace(self, points=_moved(self.points, by), others=tuple(_moved(one, by) for one in self.others))


def _moved(points: tuple[DxfPoint, ...], by: DxfPoint) -> tuple[DxfPoint, ...]:
    return tuple((round(x - by[0], 3) + 0.0, round(y - by[1], 3) + 0.0) for x, y in points)


def outlines_of(shape: Patch, place: DxfPlace) -> Iterator[Outline]:
    """The polylines of a shape of the drawing."""
    edge = _colour(shape.get_edgecolor()) if shape.get_linewidth() else None
    fill, weight, dash = _colour(shape.get_facecolor()), weight_of(shape.get_linewidth()), _dash(shape)
    pieces = [(tuple(place.mm(at) for at in points), closed) for points, closed in _pieces(shape.get_path())]
    for number, (points, is_closed) in enumerate(pieces):
        others = () if number or fill is None else tuple(other for other, _ in pieces[1:])
        yield Outline(points, is_closed, edge, None if number else fill, weight, dash, others)


def _dash(shape: Patch) -> tuple[float, ...]:
    style: Any = shape.get_linestyle()
    return () if isinstance(style, str) else tuple(part * shape.get_linewidth() * MM_PER_POINT for part in style[1])


def _pieces(path: Path) -> Iterator[tuple[list[DxfPoint], bool]]:
    """The pieces of a path, curves as short straights, and whether each is closed."""
    polygons: Any = path.to_polygons(Affine2D().scale(_FINE), closed_only=False)
    for polygon in polygons:
        points = [(float(x) / _FINE, float(y) / _FINE) for x, y in polygon]
        is_closed = len(points) > 2 and points[0] == points[-1]  # noqa: PLR2004  a line there and back is none
        if len(points) > 1:
            yield (points[:-1] if is_closed else points), is_closed


def _colour(colour: object) -> int | None:
    """A colour of matplotlib as 0xRRGGBB; None where nothing of it is seen."""
    if isinstance(colour, Sequence) and len(colour) > 3 and not colour[3]:  # noqa: PLR2004  red, green, blue, alpha
        return None
    red, green, blue = (round(255 * share) for share in to_rgb(colour))  # type: ignore[arg-type]  # what patches hold
    return red << 16 | green << 8 | blue


_WEIGHTS: Final = (0, 5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 53, 60, 70, 80, 90, 100, 106, 120, 140, 158, 200, 211)
"""Line weights that DXF has, in hundredths of a mm (group code 370; from memory)."""


def weight_of(points: float) -> int:
    """The line weight of DXF, in hundredths of a mm, that is nearest to a width in points."""
    return min(_WEIGHTS, key=lambda weight: abs(weight - 100 * points * MM_PER_POINT))


def add_outline(space: Any, outline: Outline, layer: str, *, by_layer: bool = False) -> None:  # noqa: ANN401  ezdxf
    """Put an outline into a space of a drawing, its fill first; lines of the layer's colour, dash and width."""
    if outline.fill is not None and len(outline.points) > 2:  # noqa: PLR2004  two points hold no area
        hatch = space.add_hatch(dxfattribs={"layer": layer, "true_color": outline.fill})
        for points in (outline.points, *outline.others):
            hatch.paths.add_polyline_path(points, is_closed=True)
    if outline.edge is not None:
        own: dict[str, Any] = {} if by_layer else {"true_color": outline.edge, "lineweight": outline.weight}
        if outline.dash and not by_layer:
            own["linetype"] = linetype_of(space.doc, outline.dash)
        space.add_lwpolyline(outline.points, close=outline.is_closed, dxfattribs={"layer": layer, **own})


def add_paper(space: Any, corners: tuple[DxfPoint, DxfPoint], colour: str, layer: str) -> None:  # noqa: ANN401  ezdxf
    """Put a sheet of a colour, from its lower left to its upper right corner, into a space of a drawing."""
    (left, foot), (right, top) = corners
    points = ((left, foot), (right, foot), (right, top), (left, top))
    add_outline(space, Outline(points, is_closed=True, edge=None, fill=_colour(colour), weight=0), layer)


def linetype_of(document: Any, dash: Sequence[float]) -> str:  # noqa: ANN401  ezdxf
    """The line type of a drawing that has such dashes, in mm; made where there is none yet."""
    name = "dash-" + "-".join(f"{length:.2f}" for length in dash)
    if name not in document.linetypes:
        parts = [-length if number % 2 else length for number, length in enumerate(dash)]
        document.linetypes.add(name, [sum(dash), *parts])
    return name


def add_words(space: Any, words: Text, place: DxfPlace, layer: str, style: str) -> None:  # noqa: ANN401  ezdxf
    """Put words into a space of a drawing, each line as text."""
    placed: Any = words.get_position()
    x, middle = place.mm((float(placed[0]), float(placed[1])))
    lines = words.get_text().split("\n")
    size = float(words.get_fontsize()) * MM_PER_POINT
    top = middle + (len(lines) - 1) / 2 * size * _LINE_SPACING
    for number, line in enumerate(lines):
        if not line.strip():
            continue
        at = (x, top - number * size * _LINE_SPACING)
        colour = _colour(words.get_color())
        own = {"layer": layer, "style": style, "true_color": colour}
        text = space.add_text(plain_words(line), height=size * CAP_HEIGHT, dxfattribs=own)
        text.set_placement(at, align=_align(words.get_horizontalalignment()))


def _align(across: str) -> Any:  # noqa: ANN401  ezdxf
    return import_module("ezdxf.enums").TextEntityAlignment[_ALIGN[across]]


def plain_words(words: str) -> str:
    r"""Words in which nothing prints as another sign: DXF reads %% and ^ as the beginning of one (from memory).

    >>> plain_words("50 %%d"), plain_words("a^J")
    ('50 % %d', 'a^ J')
    """
    return re.sub(r"%(?=%)", "% ", visible(words)).replace("^", "^ ")
