"""The chapter on the chosen remedies made together: what is done, the layout then, its ladders, single events."""

from collections.abc import Iterator

from plumbnet.report.page.chapters.picture_chapters import drawn, ladder_pictures
from plumbnet.report.page.page_content import PageBlock, PagePicture
from plumbnet.report.prose import Paragraph, Points
from plumbnet.report.text import chosen_in_words, outcomes_in_words
from plumbnet.study.dossier import Dossier


def together(dossier: Dossier) -> Iterator[PageBlock]:
    """The blocks of the chapter; none where there are not two cures to be made."""
    whole = dossier.whole
    if whole is None:
        return
    yield Paragraph("The first cure of each list, or fewer that cure as many, made to one copy of this layout.")
    yield Points(chosen_in_words(whole))
    yield from (Paragraph(text) for text in outcomes_in_words(whole))
    picture = drawn(whole.together.after, "With all of these", is_small=True)
    if isinstance(picture, PagePicture):
        yield picture
    yield from ladder_pictures(whole.together.after)
