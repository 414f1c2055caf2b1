"""A report to its schematic: a figure at its natural size, the same on a sheet of paper, an SVG, or axes."""

from matplotlib.axes import Axes
from matplotlib.figure import Figure

from plumbnet.analysis.report import Report
from plumbnet.report.drawing.fold import MOST_PARTS, folded
from plumbnet.report.drawing.ink import Pen
from plumbnet.report.drawing.legend import entries
from plumbnet.report.drawing.model import model_of
from plumbnet.report.drawing.notes import notes
from plumbnet.report.drawing.paint import Layout, laid_out, paint
from plumbnet.report.drawing.paper import Paper, paper_for
from plumbnet.report.drawing.placing import placed
from plumbnet.report.drawing.remarks import remarks
from plumbnet.report.drawing.service import services
from plumbnet.report.drawing.sheet import Sheet, draw_sheet, extent, rows, sheet, shortened
from plumbnet.report.palette import PALETTES, Theme
from plumbnet.report.picture import Form, saved, settled

_POINTS_PER_INCH = 72.0
_LONGEST_TITLE = 90


def layout_of(report: Report) -> Layout:
    """The schematic of a report, laid out, quiet branches folded in one of more than 300 parts."""
    marked = remarks(report)
    model = model_of(
        report.system,
        services(report.system),
        notes=notes(report),
        verdicts={heater.name: heater.verdict for heater in report.heaters},
        ringed=marked.stops,
    )
    if len(model.items) > MOST_PARTS:
        model = folded(model, report.system, keep={name for way in marked.ways for name in way})
    return laid_out(model, placed(model), marked)


def schematic(report: Report, *, theme: Theme = "light", date: str | None = None, on_paper: bool = False) -> Figure:
    """The schematic of a report as a figure, at its natural size or on the smallest sheet it reads well on.

    `date` is printed as it is given. Generic trade practice; the symbols claim conformity with no standard.
    """
    with settled():
        layout = layout_of(report)
        page = _sheet(report, layout, date)
        paper = paper_for(page.box) if on_paper else Paper.natural(page.box)
        size = (paper.width / _POINTS_PER_INCH, paper.height / _POINTS_PER_INCH)
        figure = Figure(size, facecolor=PALETTES[theme].ground)
        _fill(figure.add_axes((0.0, 0.0, 1.0, 1.0)), layout, page, theme=theme, paper=paper)
    return figure


def schematic_svg(report: Report, *, theme: Theme = "light", date: str | None = None) -> str:
    """The schematic of a report as the text of an SVG; an id `part-...` for each part."""
    return schematic_file(report, "svg", theme=theme, date=date).decode()


def schematic_file(report: Report, form: Form, *, theme: Theme = "light", date: str | None = None) -> bytes:
    """The schematic of a report as a file; a PDF on a sheet of paper where one is large enough."""
    figure = schematic(report, theme=theme, date=date, on_paper=form == "pdf")
    return saved(figure, form, title=title_of(report))


def title_of(report: Report) -> str:
    """What stands above the drawing."""
    return shortened(report.system.title or report.system.record.file or "Schematic", _LONGEST_TITLE)


def draw_on(axes: Axes, report: Report, *, theme: Theme = "light", date: str | None = None) -> None:
    """Draw the schematic of a report into axes, as large as they allow; their limits are set anew."""
    with settled():
        layout = layout_of(report)
        page = _sheet(report, layout, date)
        left, top, right, bottom = page.box
        figure = axes.get_figure(root=True)
        dots = _POINTS_PER_INCH if figure is None else figure.dpi
        room = axes.get_window_extent()
        wide, high = (side / dots * _POINTS_PER_INCH for side in (room.width, room.height))
        scale = min(wide / (right - left), high / (bottom - top))
        _fill(axes, layout, page, theme=theme, paper=Paper(wide, high, scale))


def _sheet(report: Report, layout: Layout, date: str | None) -> Sheet:
    legend = entries(layout.placed, layout.remarks)
    return sheet(extent(layout), title_of(report), legend, rows(report, date))


def _fill(axes: Axes, layout: Layout, page: Sheet, *, theme: Theme, paper: Paper) -> None:
    left, top, right, bottom = page.box
    more_x = (paper.width / paper.scale - (right - left)) / 2
    more_y = (paper.height / paper.scale - (bottom - top)) / 2
    axes.set_xlim(left - more_x, right + more_x)
    axes.set_ylim(bottom + more_y, top - more_y)
    axes.axis("off")
    pen = Pen(PALETTES[theme], paper.scale)
    paint(axes, layout, pen)
    draw_sheet(axes, page, pen)
