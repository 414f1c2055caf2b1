"""Room for pictures on the pages of a PDF, and the pictures, as vectors, laid into it afterwards."""

from collections.abc import Iterable
from dataclasses import dataclass
from io import BytesIO

from pypdf import PdfReader, PdfWriter, Transformation
from reportlab.platypus import Flowable

_POINTS_PER_INCH = 72.0


@dataclass(frozen=True, slots=True)
class Drawn:
    """A picture by its number, with its natural size."""

    number: int
    width_in: float
    height_in: float


@dataclass(frozen=True, slots=True)
class Laid:
    """Where a picture lies: page from 1, lower left corner in points, how large it is of its natural size."""

    page: int
    left: float
    bottom: float
    scale: float
    number: int


class Slot(Flowable):
    """Room for a picture, as large as the sheet allows and never larger than it was drawn.

    Once it is set, `laid` holds where.
    """

    def __init__(self, drawn: Drawn, laid: list[Laid], *, highest: float) -> None:
        super().__init__()
        self.drawn, self.laid, self.highest = drawn, laid, highest
        self.scale, self.indent = 1.0, 0.0

    def wrap(self, width: float, _height: float) -> tuple[float, float]:
        """The room it takes."""
        wide, high = self.drawn.width_in * _POINTS_PER_INCH, self.drawn.height_in * _POINTS_PER_INCH
        self.scale = min(1.0, width / wide, self.highest / high)
        self.indent = (width - self.scale * wide) / 2.0
        return width, self.scale * high

    def draw(self) -> None:
        """Note where it lies."""
        left, bottom = self.canv.absolutePosition(self.indent, 0.0)
        self.laid.append(Laid(self.canv.getPageNumber(), left, bottom, self.scale, self.drawn.number))


def with_pictures(document: bytes, pictures: bytes, laid: Iterable[Laid]) -> bytes:
    """A PDF with the pictures, each a page of another PDF, in their places."""
    writer, drawn = PdfWriter(clone_from=BytesIO(document)), PdfReader(BytesIO(pictures))
    for one in laid:
        place = Transformation().scale(one.scale).translate(one.left, one.bottom)
        writer.pages[one.page - 1].merge_transformed_page(drawn.pages[one.number], place)
    for page in writer.pages:
        page.compress_content_streams()
    written = BytesIO()
    writer.write(written)
    return written.getvalue()
