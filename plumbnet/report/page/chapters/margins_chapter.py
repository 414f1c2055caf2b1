"""The chapter of margins: how far each number may stray before a verdict or an error turns."""

from collections.abc import Iterator

from plumbnet.report.page.page_content import PageBlock
from plumbnet.report.prose import Paragraph
from plumbnet.report.studies import margins_blocks
from plumbnet.study.dossier import Dossier
from plumbnet.study.margins import MOST_MARGINS


def how_far(dossier: Dossier) -> Iterator[PageBlock]:
    """The blocks of the chapter; none where nothing heats water."""
    if not dossier.report.heaters:
        return
    if dossier.margins is None:
        few = f"Margins are looked for in layouts of up to {MOST_MARGINS} parts, and there where it does not take long"
        yield Paragraph(f"{few}; the command plumbnet margins looks in any.")
        return
    yield from margins_blocks(dossier.margins)
