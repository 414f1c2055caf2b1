"""Items and links to a schematic: symbols on a sheet, joined by level and upright lines. It knows no report.

A caller fills a `Schematic` (`items`) and has it drawn (`figure`). What its words mean, in the order of the work: -
item: what has a symbol and words beside it; link: a pipe between the ports of two items; service: what it carries. -
tone: the name of a shade of the palette, for an area or for words that stand out. - joint: an item where pipes meet,
drawn as dots; stack: accessories that stand on a host, its mount the place of it. - station: an item, a piece of a
joint, or a bend, in a column; arc: a link between stations, always to the right. - waypoint: where an arc passes a
column; hop: its step to the next column; wrap: where it turns round a station. - footprint: how a station stands,
with the tips at which its arcs join it; layers: all of these in their order. - channel: the room between two columns;
net: arcs that share an upright there; track: the place of an upright. - run: the level line of a joint; spot: where
pipes meet it; fork: where pipes part that leave one port together. - placement, junction, route: an item, a joint, a
pipe on paper; arrangement: all of them. - mark: a stroke of a symbol; area: a shaded zone on paper; way: a band along
pipes; composition: all to be drawn.
"""

from plumbnet.drawing.dxf_file import NoDxf, schematic_dxf
from plumbnet.drawing.figure import SHEETS, Sheet, schematic_figure
from plumbnet.drawing.fitted_picture import PicturePlace, fitted_figure
from plumbnet.drawing.ink import TooDense, is_dense_riser
from plumbnet.drawing.lettering import name_lines, shortened
from plumbnet.drawing.palette import Dash, Hatch, LineStyle, Palette, Service, Shade

__all__ = [
    "SHEETS",
    "Dash",
    "Hatch",
    "LineStyle",
    "NoDxf",
    "Palette",
    "PicturePlace",
    "Service",
    "Shade",
    "Sheet",
    "TooDense",
    "fitted_figure",
    "is_dense_riser",
    "name_lines",
    "schematic_dxf",
    "schematic_figure",
    "shortened",
]
