"""A picture that a notebook shows and a program saves."""

from dataclasses import dataclass
from pathlib import Path

from plumbnet.library.picture_form import form_of
from plumbnet.report.figures import FORMS, Form
from plumbnet.report.output import write_whole
from plumbnet.report.schematic import DrawnForm


@dataclass(frozen=True, slots=True, repr=False)
class Picture:
    """A picture as the bytes of an SVG, PDF, PNG or DXF file, the same for the same layout."""

    content: bytes
    form: DrawnForm

    def __repr__(self) -> str:
        return f"<Picture: {self.form}, {len(self.content)} bytes>"

    def _repr_svg_(self) -> str | None:
        """The drawing itself, without what stands before it in a file: some notebooks set it into their page."""
        if self.form != "svg":
            return None
        text = self.content.decode()
        return text[text.index("<svg") :]

    def _repr_png_(self) -> bytes | None:
        """The file, which a notebook shows as it is."""
        return self.content if self.form == "png" else None

    def save(self, path: str | Path) -> None:
        """Write the file whole. Raises OSError where it cannot be written; one that was there stays then."""
        write_whole(Path(path), self.content)


def form_wanted(form: Form | None, path: str | Path | None) -> Form:
    """The form asked for, or that of the path's ending; SVG where nothing says. Raises UnknownForm."""
    if form is not None or path is None:
        return form or "svg"
    return form_of(path, FORMS)


def pictured(content: bytes, form: DrawnForm, path: str | Path | None) -> Picture:
    """A picture of that content, written to the path where there is one. Raises OSError."""
    picture = Picture(content, form)
    if path is not None:
        picture.save(path)
    return picture
