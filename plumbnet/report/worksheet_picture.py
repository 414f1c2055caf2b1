"""Pictures for worksheets: the piping alone, which says nothing of the answer, and the schematic that tells it."""

from matplotlib.figure import Figure

from plumbnet.analysis.report import Report
from plumbnet.layout.system import System
from plumbnet.report.drawing.ink import Pen
from plumbnet.report.drawing.legend import entries
from plumbnet.report.drawing.lettering import folded
from plumbnet.report.drawing.model import model_of
from plumbnet.report.drawing.paint import Layout, laid_out, paint
from plumbnet.report.drawing.paper import Paper
from plumbnet.report.drawing.placing import placed
from plumbnet.report.drawing.remarks import Remarks
from plumbnet.report.drawing.schematic import schematic_svg
from plumbnet.report.drawing.service import services
from plumbnet.report.drawing.sheet import Row, Sheet, draw_sheet, extent, sheet
from plumbnet.report.palette import PALETTES, Theme
from plumbnet.report.picture import saved, settled

_POINTS_PER_INCH = 72.0
_THEME: Theme = "bw"
"""Worksheets go through the copier."""
_NOTHING = Remarks((), frozenset(), ())


def piping_svg(system: System, *, number: int) -> str:
    """The piping with the names of its parts, as SVG; no pressure, no verdict, nothing marked.

    `number` is that of the worksheet, and stands in the title block.
    """
    with settled():
        layout = _layout(system)
        block = [Row("worksheet", str(number)), Row("file", system.record.file)]
        page = sheet(extent(layout), system.title, entries(layout.placed, layout.remarks), block)
        figure = _figure(layout, page)
    return saved(figure, "svg", title=system.title).decode()


def answer_svg(report: Report) -> str:
    """The schematic with zones, stops and the way out, as SVG."""
    return schematic_svg(report, theme=_THEME)


def _layout(system: System) -> Layout:
    names = {name: folded(name) for name in system.parts}
    model = model_of(system, services(system), notes=names, verdicts={}, ringed=())
    return laid_out(model, placed(model), _NOTHING)


def _figure(layout: Layout, page: Sheet) -> Figure:
    paper = Paper.natural(page.box)
    left, top, right, bottom = page.box
    figure = Figure(
        (paper.width / _POINTS_PER_INCH, paper.height / _POINTS_PER_INCH), facecolor=PALETTES[_THEME].ground
    )
    axes = figure.add_axes((0.0, 0.0, 1.0, 1.0))
    axes.set_xlim(left, right)
    axes.set_ylim(bottom, top)
    axes.axis("off")
    pen = Pen(PALETTES[_THEME], paper.scale)
    paint(axes, layout, pen)
    draw_sheet(axes, page, pen)
    return figure
