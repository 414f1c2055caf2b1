"""The chapter on the chosen remedies made together."""

from curing import RELIEVED, house

import plumbnet
from plumbnet.report.page.chapters.together_chapter import together
from plumbnet.report.page.page_content import PagePicture
from plumbnet.report.prose.prose_blocks import Points
from plumbnet.study.dossier.report_dossier import dossier

APART = "street -> cv -> tee -> heater -> tap.hot\nstreet -> cv2 -> tee2 -> heater2 -> tap2.hot"


def test_chapter_has_the_remedies_the_layout_then_and_its_ladders() -> None:
    blocks = list(together(dossier(plumbnet.check(house(APART, heater2=RELIEVED)))))
    (points,) = (block for block in blocks if isinstance(block, Points))
    assert len(points.texts) == 2
    assert [block.title for block in blocks if isinstance(block, PagePicture)] == [
        "With all of these",
        "Ladder of heater and heater2",
    ]


def test_chapter_is_empty_where_there_is_but_one_cure() -> None:
    assert list(together(dossier(plumbnet.check(house())))) == []
