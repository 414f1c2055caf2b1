"""The schematic of a layout as a picture."""

from pathlib import Path

from plumbnet.analysis import Report
from plumbnet.api import Layout, as_report
from plumbnet.drawing import Sheet
from plumbnet.library.picture import Picture, pictured
from plumbnet.library.picture_form import form_of
from plumbnet.report.figures import Theme
from plumbnet.report.schematic import DRAWN_FORMS, DrawnForm, schematic_file


def draw(  # noqa: PLR0913  each is an option of the call
    layout: Layout | Report,
    path: str | Path | None = None,
    *,
    form: DrawnForm | None = None,
    theme: Theme = "light",
    date: str | None = None,
    riser: bool | None = None,
    sheet: Sheet | None = None,
) -> Picture:
    """The schematic: piping, trapped zones, what stops the water, the way out; a notebook shows it.

    `layout` is a report, or what `check` makes one of. With a `path` it is written there as well, as its ending says:
    .svg, .pdf, .png or .dxf. `date` is printed as it is given. A tall building is drawn as a riser diagram, level on
    level, what is alike drawn once; `riser` asks for one, or for none. `sheet` is what it
    is drawn on: "natural" for paper of its own size, "smallest" for the smallest ISO sheet it reads well on (what a
    PDF is, left out), or one by its name, as "a3" and "11x17". The symbols are generic trade practice and claim
    conformity with no standard. Raises UnknownForm for another ending, NoDxf where what writes a DXF is not installed,
    TooDense where nobody could read what would be drawn, OSError where it cannot be written, and what `check` does.

    >>> picture = draw("systems/open-house.yaml")
    >>> picture.form, b'id="part-house-stop"' in picture.content
    ('svg', True)
    """
    wanted = form or ("svg" if path is None else form_of(path, DRAWN_FORMS))
    report = as_report(layout)
    content = schematic_file(report, wanted, theme=theme, date=date, riser=riser, sheet=sheet)
    return pictured(content, wanted, path)
