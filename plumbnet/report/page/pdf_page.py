"""A page to a PDF on A4 or Letter: text that can be searched, chapters in the outline, pictures as vectors."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from io import BytesIO
from typing import Literal, TypeAlias

from matplotlib.figure import Figure
from reportlab.lib.pagesizes import A4, LETTER
from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import BaseDocTemplate, Frame, PageTemplate

from plumbnet.layout.yaml import visible
from plumbnet.report.figures import bound
from plumbnet.report.page.page_content import Page, PagePicture
from plumbnet.report.page.pdf_breaks import kept
from plumbnet.report.page.pdf_flow import ACROSS, UPRIGHT, PdfFlow
from plumbnet.report.page.pdf_letters import PLAIN, cut, fonts, in_the_font
from plumbnet.report.page.pdf_styles import FAINT
from plumbnet.report.page.picture_slot import Drawn, Laid, with_pictures

PdfPaper: TypeAlias = Literal["a4", "letter"]
SIZES: Mapping[PdfPaper, tuple[float, float]] = {"a4": A4, "letter": LETTER}
"""Width and height of a sheet that stands upright, in points."""
_MARGIN = 16.0 * mm
_FOOT = 8.0 * mm
_FOOT_POINTS = 7.0
_LONGEST_FOOT = 90


def to_pdf(page: Page, *, paper: PdfPaper = "a4") -> bytes:
    """The page as a PDF; the same bytes for the same page. Signs that the font lacks are written as escapes."""
    fonts()
    pictures = _pictures(page)
    figures = [picture.draw() for picture in pictures.values()]
    drawn = dict(zip(pictures, map(_drawn, range(len(figures)), figures), strict=True))
    sheets = _Sheets(page, drawn, SIZES[paper])
    total = sheets.set(0)[1]
    content, _, laid = sheets.set(total)
    if not figures:
        return content
    return with_pictures(content, bound(figures, title=page.title), laid)


def _pictures(page: Page) -> dict[tuple[int, int], PagePicture]:
    """The pictures by the place of their chapter and block."""
    return {
        (number, place): block
        for number, chapter in enumerate(page.chapters)
        for place, block in enumerate(chapter.blocks)
        if isinstance(block, PagePicture)
    }


def _drawn(number: int, figure: Figure) -> Drawn:
    width_in, height_in = (float(size) for size in figure.get_size_inches())
    return Drawn(number, width_in, height_in)


def pdf_document(
    written: BytesIO, size: tuple[float, float], title: str, subject: str, templates: Sequence[PageTemplate]
) -> BaseDocTemplate:
    """A document to be written on sheets of a size in points: the same bytes each time, its title in its window."""
    return BaseDocTemplate(
        written,
        pagesize=size,
        title=title,
        author="",
        subject=f"Thermal expansion: {subject}",
        creator="plumbnet",
        producer="plumbnet",
        lang="en",
        invariant=1,
        pageCompression=1,
        initialFontName=PLAIN,
        displayDocTitle=True,
        pageTemplates=list(templates),
    )


@dataclass(frozen=True)
class _Sheets:
    """A page on paper of a size in points."""

    page: Page
    drawn: Mapping[tuple[int, int], Drawn]
    size: tuple[float, float]

    def set(self, total: int) -> tuple[bytes, int, list[Laid]]:
        """The document less its pictures, how many sheets it has, and where pictures lie; the foot says `total`."""
        written, laid = BytesIO(), list[Laid]()
        wide, high = self.size
        flow = PdfFlow(self.page, self.drawn, wide - 2.0 * _MARGIN, high - 2.0 * _MARGIN, laid)
        templates = [self._template(UPRIGHT, (wide, high), total), self._template(ACROSS, (high, wide), total)]
        document = pdf_document(written, self.size, visible(self.page.title), "report", templates)
        document.build(list(kept(flow.story(), flow.width, flow.height)))
        return written.getvalue(), document.page, laid

    def _template(self, name: str, size: tuple[float, float], total: int) -> PageTemplate:
        wide, high = size
        frame = Frame(_MARGIN, _MARGIN, wide - 2.0 * _MARGIN, high - 2.0 * _MARGIN, 0, 0, 0, 0, id=name)
        return PageTemplate(id=name, frames=[frame], onPage=self._foot(size, total), pagesize=size)

    def _foot(self, size: tuple[float, float], total: int) -> Callable[[Canvas, BaseDocTemplate], None]:
        """Draws title and number of the sheet at its foot."""
        title = in_the_font(cut(self.page.title, _LONGEST_FOOT))

        def foot(canvas: Canvas, document: BaseDocTemplate) -> None:
            canvas.setFont(PLAIN, _FOOT_POINTS)
            canvas.setFillColor(FAINT)
            canvas.drawString(_MARGIN, _FOOT, title)
            canvas.drawRightString(size[0] - _MARGIN, _FOOT, f"{document.page} of {total}")

        return foot
