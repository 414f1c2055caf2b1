"""A page to what the PDF library sets on its sheets: headings, paragraphs, tables, and room for pictures."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from reportlab.platypus import Flowable, NextPageTemplate, PageBreak, Table
from reportlab.platypus import Paragraph as Text

from plumbnet.report import prose
from plumbnet.report.figures import PALETTES
from plumbnet.report.page.column_widths import column_widths
from plumbnet.report.page.entry_marks import looks
from plumbnet.report.page.page_content import WIDE_IN, Chapter, Entry, Page, PageBlock, PagePicture
from plumbnet.report.page.pdf_letters import MONO, cut, lettered
from plumbnet.report.page.pdf_styles import (
    BODY,
    CAUTION_STYLE,
    CELL,
    ENTRY,
    GRID,
    HEAD_STYLE,
    HEADINGS,
    POINT,
    TOLD,
    UNDER,
    UNDER_PICTURE,
)
from plumbnet.report.page.picture_slot import Drawn, Laid, Slot
from plumbnet.report.prose import WrittenStep

UPRIGHT, ACROSS = "upright", "across"
"""Names of the two templates of sheets."""
_SHARE = 0.8
"""Of the height of a sheet that a picture takes at most, so that its heading stands over it."""


@dataclass(frozen=True)
class PdfFlow:
    """Sets one page on sheets that are `width` wide and `height` high within their margins, in points.

    `drawn` are the pictures by the place of their chapter and block; `laid` tells where they lie once all is set.
    """

    page: Page
    drawn: Mapping[tuple[int, int], Drawn]
    width: float
    height: float
    laid: list[Laid] = field(default_factory=list)

    def story(self) -> list[Flowable]:
        """Everything, in order."""
        page = self.page
        flow: list[Flowable] = [Text(lettered(page.title), HEADINGS[1])]
        flow += [Text(lettered(line), UNDER) for line in page.under]
        flow.append(Text(lettered(page.caution), CAUTION_STYLE))
        for number, chapter in enumerate(page.chapters):
            flow += self._chapter(number, chapter)
        return flow

    def _chapter(self, number: int, chapter: Chapter) -> Iterator[Flowable]:
        """A chapter; one that begins with a wide picture has sheets of its own, turned."""
        across = isinstance(chapter.blocks[0], PagePicture) and chapter.blocks[0].is_wide(
            self.drawn[number, 0].width_in
        )
        if across:
            yield from (NextPageTemplate(ACROSS), PageBreak())
        elif chapter.opens_sheet:
            yield PageBreak()
        yield PageOpening(chapter.key, chapter.title)
        yield Text(lettered(chapter.title), HEADINGS[2])
        for place, block in enumerate(chapter.blocks):
            yield from self._block(block, (number, place))
        if across:
            yield from (NextPageTemplate(UPRIGHT), PageBreak())

    def _block(self, block: PageBlock, place: tuple[int, int]) -> Iterator[Flowable]:
        match block:
            case PagePicture(title):
                slot = Slot(self.drawn[place], self.laid, highest=self._highest(place))
                slot.keepWithNext = 1
                yield slot
                yield Text(lettered(title), UNDER_PICTURE)
            case Entry() if not block.told:
                return
            case Entry():
                yield from _entry(block)
            case prose.Heading(text, level):
                yield Text(lettered(text), HEADINGS[level])
            case prose.Paragraph(text, label):
                yield Text(_labelled(text, label), BODY)
            case prose.Points(texts):
                yield from (Text(lettered(text), POINT, bulletText="•") for text in texts)
            case prose.Lines(lines):
                yield from (Text(_mono(line), CELL) for line in lines)
            case prose.Table(head, rows):
                yield self._table(head, rows, [[Text(lettered(cut(cell)), CELL) for cell in row] for row in rows])
            case prose.Steps(steps, first):
                plain = [_step(number, step) for number, step in enumerate(steps, first)]
                yield self._table(_STEPS, plain, [_set_step(row) for row in plain])

    def _highest(self, place: tuple[int, int]) -> float:
        """Height that a picture may take; one that lies across has the width of a sheet for it."""
        return _SHARE * (self.height if self.drawn[place].width_in <= WIDE_IN else self.width)

    def _table(self, head: Sequence[str], plain: Sequence[Sequence[str]], rows: Sequence[Sequence[Text]]) -> Table:
        """A table whose head comes again on every sheet and whose rows are never split."""
        widths = column_widths([head, *([cut(cell) for cell in row] for row in plain)], self.width)
        top = [Text(lettered(cell), HEAD_STYLE) for cell in head]
        return Table(
            [top, *map(list, rows)], colWidths=widths, repeatRows=1, style=GRID, spaceBefore=4.0, spaceAfter=8.0
        )


class PageOpening(Flowable):
    """The beginning of a chapter: it takes no room, and stands in the outline."""

    def __init__(self, key: str, title: str) -> None:
        super().__init__()
        self.key, self.title = key, title
        self.keepWithNext = 1

    def wrap(self, _width: float, _height: float) -> tuple[float, float]:
        """No room."""
        return 0.0, 0.0

    def draw(self) -> None:
        """Set the mark that the outline leads to."""
        self.canv.bookmarkHorizontal(self.key, 0.0, 40.0)
        self.canv.addOutlineEntry(self.title, self.key, 0)


_STEPS = ("Step", "What", "Formula", "With", "Result")


def _entry(entry: Entry) -> Iterator[Flowable]:
    shade = looks(PALETTES["light"]).get(entry.meaning)
    colours = f' color="{shade.edge}" backColor="{shade.fill}"' if shade else ""
    yield Text(f"<font{colours}>&nbsp;{lettered(entry.mark)}&nbsp;</font> {lettered(entry.title)}", ENTRY)
    told = [Text(_labelled(one.text, one.label), TOLD) for one in entry.told]
    for piece in told[:-1]:
        piece.keepWithNext = 1
    yield from told


def _labelled(text: str, label: str) -> str:
    return f"<b>{lettered(label)}:</b> {lettered(text)}" if label else lettered(text)


def _mono(text: str) -> str:
    return f'<font face="{MONO}">{lettered(text)}</font>'


def _step(number: int, step: WrittenStep) -> tuple[str, ...]:
    """The cells of a worked step; what and source, and the numbers, in lines of their own."""
    numbers = "\n".join(f"{each.symbol} = {each.with_unit}" for each in step.numbers)
    formula = f"{step.symbol} = {step.formula}"
    return str(number), f"{step.name}\n{step.source}", formula, numbers, step.result.with_unit


def _set_step(row: Sequence[str]) -> list[Text]:
    number, what, formula, numbers, result = row
    name, source = (lettered(line) for line in what.split("\n"))
    return [
        Text(number, CELL),
        Text(f'{name}<br/><font color="{PALETTES["light"].faint}">{source}</font>', CELL),
        Text(_mono(formula), CELL),
        Text("<br/>".join(_mono(line) for line in numbers.split("\n")), CELL),
        Text(f"<b>{lettered(result)}</b>", CELL),
    ]
