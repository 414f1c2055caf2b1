"""The schematic of a report as a figure, at its natural size or on a sheet of paper, or as a file."""

from typing import Literal

from matplotlib.figure import Figure

from plumbnet.analysis import Report
from plumbnet.drawing import schematic_dxf, schematic_figure
from plumbnet.report.figures import FORMS, PALETTES, Form, Theme, saved, settled
from plumbnet.report.schematic.revision_letters import RevisionLetters
from plumbnet.report.schematic.schematic_contents import schematic_of, title_of


def schematic(
    report: Report,
    *,
    theme: Theme = "light",
    date: str | None = None,
    riser: bool | None = None,
    on_paper: bool = False,
) -> Figure:
    """The schematic of a report as a figure, at its natural size or on the smallest sheet it reads well on.

    A tall building is drawn as a riser diagram: `riser` asks for one wherever pipes rise past a storey, or for none.
    `date` is printed as it is given. Generic trade practice; the symbols claim conformity with no standard.
    """
    with settled():
        return schematic_figure(schematic_of(report, date, riser=riser), PALETTES[theme], on_paper=on_paper)


def revision_schematic(report: Report, marked: RevisionLetters) -> Figure:
    """The schematic of one side of a comparison at its natural size, with what the revision moved marked in it."""
    with settled():
        return schematic_figure(schematic_of(report, None, marked), PALETTES["light"])


def schematic_svg(report: Report, *, theme: Theme = "light", date: str | None = None) -> str:
    """The schematic of a report as the text of an SVG; an id `part-...` for each part."""
    return schematic_file(report, "svg", theme=theme, date=date).decode()


DrawnForm = Form | Literal["dxf"]
"""How a schematic is written."""
DRAWN_FORMS: tuple[DrawnForm, ...] = (*FORMS, "dxf")


def schematic_file(
    report: Report, form: DrawnForm, *, theme: Theme = "light", date: str | None = None, riser: bool | None = None
) -> bytes:
    """The schematic of a report as a file, as `schematic` draws it; a PDF on a sheet where one is large enough.

    Raises NoDxf for a DXF where what writes it is not installed.
    """
    if form == "dxf":
        with settled():
            return schematic_dxf(schematic_of(report, date, riser=riser), PALETTES[theme])
    figure = schematic(report, theme=theme, date=date, riser=riser, on_paper=form == "pdf")
    return saved(figure, form, title=title_of(report))
