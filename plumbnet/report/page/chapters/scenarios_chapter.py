"""The chapter of scenarios: what becomes of each heater in every what-if of the file."""

from collections.abc import Iterator
from dataclasses import replace

from plumbnet.report.page.page_content import PageBlock
from plumbnet.report.prose import Heading, Paragraph
from plumbnet.report.studies import side_by_side
from plumbnet.study.dossier import Dossier


def scenarios(dossier: Dossier) -> Iterator[PageBlock]:
    """The blocks of the chapter; none where the file has no scenario."""
    if dossier.whatifs:
        for block in side_by_side(dossier.whatifs):
            yield replace(block, level=block.level + 1) if isinstance(block, Heading) else block
    for name, reason in dossier.refused.items():
        yield Paragraph(f"nothing can be computed: {reason}", name)
