"""Pictures for worksheets: the piping alone, which says nothing of the answer, and the schematic that tells it."""

from plumbnet.analysis import Report
from plumbnet.drawing import name_lines, schematic_figure
from plumbnet.drawing.items import BlockRow, Schematic
from plumbnet.layout.model import System
from plumbnet.report.figures import PALETTES, Theme, saved, settled
from plumbnet.report.schematic import LEGEND, diagram_of, schematic_svg
from plumbnet.report.text import CAUTION

_THEME: Theme = "bw"
"""Worksheets go through the copier."""


def piping_svg(system: System, *, number: int) -> str:
    """The piping with the names of its parts, as SVG; no pressure, no verdict, nothing marked.

    `number` is that of the worksheet, and stands in the title block.
    """
    names = {name: name_lines(name) for name in system.parts}
    block = (BlockRow("worksheet", str(number)), BlockRow("file", system.record.file))
    schematic = Schematic(system.title, diagram_of(system, names), block, legend=LEGEND, caution=CAUTION)
    with settled():
        figure = schematic_figure(schematic, PALETTES[_THEME])
    return saved(figure, "svg", title=system.title).decode()


def answer_svg(report: Report) -> str:
    """The schematic with zones, stops and the way out, as SVG."""
    return schematic_svg(report, theme=_THEME)
