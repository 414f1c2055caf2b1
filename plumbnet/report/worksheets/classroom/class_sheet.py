"""The results of a class by belief as a page."""

from collections.abc import Sequence

from plumbnet.report.page import Chapter, Page, PageForm, page_bytes
from plumbnet.report.text import CAUTION, counted
from plumbnet.report.worksheets.classroom.class_blocks import CLASS_TITLE, class_blocks
from plumbnet.study.training import BeliefRow


def class_page(rows: Sequence[BeliefRow], apprentices: Sequence[str], form: PageForm, *, is_metric: bool) -> bytes:
    """The table as HTML or PDF, that on A4 where it is metric and else on Letter."""
    chapter = Chapter("beliefs", "Who held what", tuple(class_blocks(rows, apprentices)))
    page = Page(CLASS_TITLE, (counted(len(apprentices), "apprentice"),), CAUTION, (chapter,))
    return page_bytes(page, form, is_metric=is_metric)
