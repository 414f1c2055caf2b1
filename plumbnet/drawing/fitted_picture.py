"""A schematic to a figure as wide as its place, the piping filling it, with names that can be read and a small legend.

No title block stands round it, and no caution: what it is set into has these.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from matplotlib.axes import Axes
from matplotlib.figure import Figure

from plumbnet.drawing.ink import Composition, Pen, composition, draw_legend, extent, legend_for, paint_composition
from plumbnet.drawing.items import Diagram, Schematic
from plumbnet.drawing.lettering import LABEL_SIZE
from plumbnet.drawing.palette import Palette

LEAST_PT = 7.0
"""Size on paper of the smallest name of a part."""
LEGEND_SCALE = 0.9
"""Size of the legend, of that which it has in a drawing."""
_LARGEST = 1.5
"""Times its natural size that the piping is drawn at most, however much room there is."""
_SMALLEST = 0.62
"""Of their natural size: symbols smaller than that ask for a wider place, where there is one."""
_MOST_LETTERS = 21.0
"""Size of letters, in units of the drawing, beside which its symbols are still seen: a third of their natural size."""
_PROBE = 13.0
_STEP = 1.08
_ROUNDING = 1e-6
_PAD = 6.0
_POINTS_PER_INCH = 72.0


@dataclass(frozen=True, slots=True)
class PicturePlace:
    """Room for a picture, in points: how wide it is to be, and how high the piping may come; with its legend below."""

    width: float
    highest: float
    has_legend: bool = True


@dataclass(frozen=True, slots=True)
class _Fitted:
    """A composition in a place, and the points of paper that a unit of it takes; whether its names can be read."""

    composed: Composition
    scale: float
    place: PicturePlace
    is_legible: bool


def fitted_figure(schematic: Schematic, palette: Palette, places: Sequence[PicturePlace]) -> Figure | None:
    """The schematic in the first of `places` in which its symbols stay large enough, else where they are largest.

    Where all of it is wider than its place it is drawn smaller, with letters so much larger in it that the names of
    parts, those of joints too, keep seven points on paper. None where they would not in any place.
    """
    fitted = list[_Fitted]()
    for place in places:
        fitted.append(_fitted(schematic, place))
        if fitted[-1].is_legible and fitted[-1].scale >= _SMALLEST:
            return _figure(fitted[-1], schematic, palette)
    legible = [one for one in fitted if one.is_legible]
    return _figure(max(legible, key=lambda one: one.scale), schematic, palette) if legible else None


def _fitted(schematic: Schematic, place: PicturePlace) -> _Fitted:
    """The drawing in its place; letters grow in it until they can be read there, or are too large for its symbols."""
    size = _letters(schematic, place.width)
    while True:
        composed = _composed(schematic, size)
        _, top, _, bottom = extent(composed)
        scale = min(place.width / _width(composed), place.highest / (bottom - top + 2 * _PAD), _LARGEST)
        is_legible = scale * size >= LEAST_PT - _ROUNDING
        if is_legible or size >= _MOST_LETTERS:
            return _Fitted(composed, scale, place, is_legible=is_legible)
        size = min(size * _STEP, _MOST_LETTERS)


def _letters(schematic: Schematic, width: float) -> float:
    """The size of letters at which the drawing, as wide as it then is, brings them to their size on paper.

    The width grows by about the same with each point of letters.
    """
    narrow = _width(_composed(schematic, LABEL_SIZE))
    if narrow <= width:
        return LABEL_SIZE
    slope = (_width(_composed(schematic, _PROBE)) - narrow) / (_PROBE - LABEL_SIZE)
    gain = width / LEAST_PT - slope
    return min((narrow - slope * LABEL_SIZE) / gain if gain > 0.0 else _MOST_LETTERS, _MOST_LETTERS)


def _composed(schematic: Schematic, size: float) -> Composition:
    """The composition with all names in letters of a size; those of joints, which stand back elsewhere, as well."""
    diagram = schematic.diagram
    items = {
        name: replace(item, letter_size=size * (LABEL_SIZE / 6.0 if item.symbol.is_joint else 1.0))
        for name, item in diagram.items.items()
    }
    shadings = tuple(replace(shading, letter_size=size) for shading in schematic.shadings)
    lettered = Diagram(items, diagram.links, diagram.origins)
    return composition(replace(schematic, diagram=lettered, shadings=shadings))


def _width(composed: Composition) -> float:
    left, _, right, _ = extent(composed)
    return right - left + 2 * _PAD


def _figure(fitted: _Fitted, schematic: Schematic, palette: Palette) -> Figure:
    """The piping in the middle of its width, the legend below it."""
    left, top, right, bottom = extent(fitted.composed)
    piping = (bottom - top + 2 * _PAD) * fitted.scale
    told = legend_for(fitted.composed, schematic.legend, fitted.place.width / LEGEND_SCALE)
    below = told.height * LEGEND_SCALE + _PAD if fitted.place.has_legend else 0.0
    height = piping + below
    figure = Figure((fitted.place.width / _POINTS_PER_INCH, height / _POINTS_PER_INCH), facecolor=palette.ground)
    spare = (fitted.place.width / fitted.scale - (right - left)) / 2
    axes = _axes(figure, below / height, piping / height)
    axes.set_xlim(left - spare, right + spare)
    axes.set_ylim(bottom + _PAD, top - _PAD)
    paint_composition(axes, fitted.composed, Pen(palette, fitted.scale))
    if below:
        under = _axes(figure, 0.0, told.height * LEGEND_SCALE / height)
        under.set_xlim(0.0, fitted.place.width / LEGEND_SCALE)
        under.set_ylim(told.height, 0.0)
        draw_legend(under, told, Pen(palette, LEGEND_SCALE))
    return figure


def _axes(figure: Figure, bottom: float, height: float) -> Axes:
    axes = figure.add_axes((0.0, bottom, 1.0, height))
    axes.axis("off")
    return axes
