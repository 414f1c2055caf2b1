"""Pictures laid into the pages of a PDF."""

from io import BytesIO

import pytest
from matplotlib.figure import Figure
from pypdf import PdfReader
from reportlab.platypus import Flowable, SimpleDocTemplate

from plumbnet.report.figures.figure_file import bound
from plumbnet.report.page.picture_slot import Drawn, Laid, Slot, with_pictures


def test_picture_is_never_larger_than_drawn_and_never_higher_than_it_may_be() -> None:
    small, wide, high = (Slot(Drawn(0, *size), [], highest=300.0) for size in ((1.0, 1.0), (20.0, 1.0), (1.0, 20.0)))
    assert small.wrap(500.0, 700.0) == (500.0, 72.0)
    assert wide.wrap(500.0, 700.0) == pytest.approx((500.0, 25.0))
    assert high.wrap(500.0, 700.0) == pytest.approx((500.0, 300.0))


def test_pictures_come_to_their_page_as_text_and_vectors() -> None:
    figures = [Figure(figsize=(2.0, 1.0)) for _ in range(2)]
    for number, figure in enumerate(figures):
        figure.text(0.1, 0.5, f"picture {number}")
    written, laid = BytesIO(), list[Laid]()
    slots: list[Flowable] = [Slot(Drawn(number, 2.0, 1.0), laid, highest=600.0) for number in (1, 0)]
    SimpleDocTemplate(written, invariant=1).build(slots)
    reader = PdfReader(BytesIO(with_pictures(written.getvalue(), bound(figures, title="t"), laid)))
    assert [one.page for one in laid] == [1, 1]
    assert laid[0].bottom > laid[1].bottom
    (page,) = reader.pages
    words = page.extract_text()
    assert words.index("picture 1") < words.index("picture 0")
    assert len(page.images) == 0
