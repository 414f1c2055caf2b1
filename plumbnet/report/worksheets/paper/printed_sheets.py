"""Worksheets and keys to a PDF on Letter or A4: a worksheet a sheet with its picture across it, two keys a sheet."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from io import BytesIO
from itertools import product

from matplotlib.figure import Figure
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import (
    BaseDocTemplate,
    Flowable,
    Frame,
    HRFlowable,
    NextPageTemplate,
    PageBreak,
    PageTemplate,
    Spacer,
)
from reportlab.platypus import Paragraph as Text

from plumbnet.drawing import PicturePlace
from plumbnet.report.figures import bound
from plumbnet.report.page import SIZES, Drawn, Laid, PdfPaper, Slot, fonts, lettered, pdf_document, with_pictures
from plumbnet.report.text import CAUTION
from plumbnet.report.worksheets.paper.paper_blocks import (
    SMALL,
    key_findings,
    key_head,
    key_traces,
    sheet_head,
    sheet_task,
    sheet_words,
)
from plumbnet.report.worksheets.worksheet_content import Key, Worksheet

PictureFor = Callable[[Sequence[PicturePlace]], Figure | None]
"""Draws a picture for the best of some places; None where it could be read in none of them."""
TITLE = "Worksheets on heated water and its way out"
_MARGIN, _FOOT = 36.0, 30.0
_LEGEND = 88.0
"""Room that a legend takes at most."""
_BETWEEN_KEYS = 22.0
_UNDER_PICTURE = 3.0
_UPRIGHT, _ACROSS = "upright", "across"
_POINTS_PER_INCH = 72.0
_BOUNDLESS = 1e6


def worksheets_pdf(
    sheets: Sequence[Worksheet],
    keys: Sequence[Key],
    paper: PdfPaper,
    pictures: Mapping[int, PictureFor],
    answers: Mapping[int, PictureFor],
) -> bytes:
    """The PDF; `pictures` draw the piping by the number of the worksheet, `answers` what stands on the keys.

    A sheet lies across where its picture asks for it. A key has its picture where two keys then have room on a sheet.
    """
    fonts()
    setter = _Setter(SIZES[paper])
    story = [*setter.sheets(sheets, pictures), *setter.keys(keys, answers)]
    written = BytesIO()
    templates = [setter.template(name) for name in setter.order]
    pdf_document(written, SIZES[paper], TITLE, "worksheets", templates).build(story)
    if not setter.figures:
        return written.getvalue()
    return with_pictures(written.getvalue(), bound(setter.figures, title=TITLE), setter.laid)


@dataclass
class _Setter:
    """Sets worksheets and keys on paper of a size; gathers the pictures drawn, and where each comes to lie."""

    size: tuple[float, float]
    figures: list[Figure] = field(default_factory=list)
    laid: list[Laid] = field(default_factory=list)
    order: tuple[str, str] = (_UPRIGHT, _ACROSS)
    """The two sorts of sheet, that of the first sheet first."""

    def room(self, name: str) -> tuple[float, float]:
        """Width and height of a sheet within its margins."""
        wide, high = self._size(name)
        return wide - 2 * _MARGIN, high - 2 * _MARGIN - _FOOT + _MARGIN / 2

    def _size(self, name: str) -> tuple[float, float]:
        wide, high = self.size
        return (wide, high) if name == _UPRIGHT else (high, wide)

    def template(self, name: str) -> PageTemplate:
        """A sheet with the caution at its foot."""
        width, height = self.room(name)
        frame = Frame(_MARGIN, self._size(name)[1] - _MARGIN - height, width, height, 0, 0, 0, 0, id=name)

        def foot(canvas: Canvas, _document: BaseDocTemplate) -> None:
            caution = Text(lettered(CAUTION), SMALL)
            high = caution.wrapOn(canvas, width, _FOOT)[1]
            caution.drawOn(canvas, _MARGIN, _MARGIN / 2 + (_FOOT - _MARGIN / 2 - high) / 2)

        return PageTemplate(id=name, frames=[frame], onPage=foot, pagesize=self._size(name))

    def sheets(self, sheets: Sequence[Worksheet], pictures: Mapping[int, PictureFor]) -> Iterator[Flowable]:
        """A sheet of paper for each worksheet."""
        for number, sheet in enumerate(sheets):
            figure = self._drawn(sheet, pictures[sheet.number]) if sheet.number in pictures else None
            across = figure is not None and _width(figure) > self.room(_UPRIGHT)[0] + 1.0
            name = _ACROSS if across else _UPRIGHT
            if number:
                yield from (NextPageTemplate(name), PageBreak())
            elif across:
                self.order = (_ACROSS, _UPRIGHT)
            yield from sheet_head(sheet)
            yield from [self._slot(figure)] if figure is not None else sheet_words(sheet)
            yield from sheet_task(sheet, self.room(name)[0], is_tight=across)

    def _drawn(self, sheet: Worksheet, picture: PictureFor) -> Figure | None:
        """The picture on a sheet upright or across, with its legend if there is any way."""
        figure = picture([self._place(sheet, name) for name in (_UPRIGHT, _ACROSS)])
        return figure or picture([self._place(sheet, _ACROSS, has_legend=False)])

    def _place(self, sheet: Worksheet, name: str, *, has_legend: bool = True) -> PicturePlace:
        """What a sheet has left for its picture."""
        width, height = self.room(name)
        words = _height([*sheet_head(sheet), *sheet_task(sheet, width, is_tight=name == _ACROSS)], width)
        return PicturePlace(width, max(height - words - _LEGEND * has_legend, 1.0), has_legend=has_legend)

    def _slot(self, figure: Figure) -> Slot:
        width, height = (float(size) for size in figure.get_size_inches())
        self.figures.append(figure)
        return Slot(Drawn(len(self.figures) - 1, width, height), self.laid, highest=_BOUNDLESS)

    def keys(self, keys: Sequence[Key], answers: Mapping[int, PictureFor]) -> Iterator[Flowable]:
        """A sheet of paper for every two keys."""
        for at in range(0, len(keys), 2):
            yield from (NextPageTemplate(_UPRIGHT), PageBreak())
            yield from self._beside(keys[at : at + 2], answers)

    def _beside(self, pair: Sequence[Key], answers: Mapping[int, PictureFor]) -> Iterator[Flowable]:
        """Keys that share a sheet, each with as much of it as has room, the same for both rather than all for one."""
        width, height = self.room(_UPRIGHT)
        versions = [list(self._versions(key, answers.get(key.number))) for key in pair]
        choices = sorted(product(*(range(len(each)) for each in versions)), key=lambda one: (max(one), sum(one)))
        room = height - _BETWEEN_KEYS * (len(pair) - 1)
        fitting = (one for one in choices if sum(versions[which][at].height for which, at in enumerate(one)) <= room)
        chosen = next(fitting, choices[-1])
        for which, at in enumerate(chosen):
            if which:
                yield HRFlowable(width, 0.5, spaceBefore=_BETWEEN_KEYS / 2, spaceAfter=_BETWEEN_KEYS / 2)
            yield from self._set(versions[which][at])

    def _versions(self, key: Key, picture: PictureFor | None) -> Iterator["_KeyVersion"]:
        """A key from all of it to the answer alone."""
        width, height = self.room(_UPRIGHT)
        head, traces, findings = key_head(key), key_traces(key.in_short), key_findings(key)
        full = [*head, *traces, *findings]
        left = (height - _BETWEEN_KEYS) / 2 - _height(full, width) - _UNDER_PICTURE
        figure = None if picture is None or left <= 0.0 else picture([PicturePlace(width, left, has_legend=False)])
        if figure is not None:
            yield _KeyVersion(head, figure, [*traces, *findings], width)
        yield _KeyVersion(head, None, [*traces, *findings], width)
        yield _KeyVersion(head, None, traces, width)
        yield _KeyVersion(head, None, key_traces(key.in_short[:1]), width)
        yield _KeyVersion(head, None, [], width)

    def _set(self, version: "_KeyVersion") -> Iterator[Flowable]:
        yield from version.above
        if version.figure is not None:
            yield self._slot(version.figure)
            yield Spacer(1.0, _UNDER_PICTURE)
        yield from version.below


@dataclass(frozen=True)
class _KeyVersion:
    """What of a key is set: above its picture, the picture, below it."""

    above: list[Flowable]
    figure: Figure | None
    below: list[Flowable]
    width: float

    @property
    def height(self) -> float:
        """What it takes of a sheet."""
        drawn = (
            0.0 if self.figure is None else float(self.figure.get_size_inches()[1]) * _POINTS_PER_INCH + _UNDER_PICTURE
        )
        return drawn + _height([*self.above, *self.below], self.width)


def _width(figure: Figure) -> float:
    return float(figure.get_size_inches()[0]) * _POINTS_PER_INCH


def _height(pieces: Sequence[Flowable], width: float) -> float:
    """Height of pieces one below the other, with all their space."""
    return sum(
        float(piece.wrap(width, _BOUNDLESS)[1]) + float(piece.getSpaceBefore()) + float(piece.getSpaceAfter())
        for piece in pieces
    )
