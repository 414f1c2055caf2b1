"""The schematic of a report as a figure, at its natural size or on a sheet of paper, or as a file."""

from typing import Literal

from matplotlib.figure import Figure

from plumbnet.analysis import Report
from plumbnet.drawing import Sheet, schematic_dxf, schematic_figure
from plumbnet.report.figures import FORMS, PALETTES, Form, Theme, saved, settled
from plumbnet.report.schematic.revision_letters import RevisionLetters
from plumbnet.report.schematic.schematic_contents import schematic_of, title_of


def schematic(
    report: Report,
    *,
    theme: Theme = "light",
    date: str | None = None,
    riser: bool | None = None,
    sheet: Sheet = "natural",
) -> Figure:
    """The schematic of a report as a figure, at its natural size, on the smallest sheet it reads well on, or on one.

    A tall building is drawn as a riser diagram: `riser` asks for one wherever pipes rise past a storey, or for none.
    `date` is printed as it is given. Generic trade practice; the symbols claim conformity with no standard.
    """
    with settled():
        return schematic_figure(schematic_of(report, date, riser=riser), PALETTES[theme], sheet)


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


def schematic_file(  # noqa: PLR0913  each is an option of the drawing
    report: Report,
    form: DrawnForm,
    *,
    theme: Theme = "light",
    date: str | None = None,
    riser: bool | None = None,
    sheet: Sheet | None = None,
) -> bytes:
    """The schematic of a report as a file, drawn as `schematic` draws it.

    A PDF is on the smallest sheet that it reads well on where none is named.
    Raises NoDxf for a DXF where what writes it is not installed.
    """
    if form == "dxf":
        with settled():
            return schematic_dxf(schematic_of(report, date, riser=riser), PALETTES[theme], sheet or "natural")
    own: Sheet = "smallest" if form == "pdf" else "natural"
    figure = schematic(report, theme=theme, date=date, riser=riser, sheet=sheet or own)
    return saved(figure, form, title=title_of(report))
