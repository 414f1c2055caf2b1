"""A dossier to its page: the chapters in the order in which they are read, without those that are empty."""

from collections.abc import Callable, Iterator

from plumbnet.report.page.chapters import (
    assumptions_chapter,
    calculation,
    cover,
    cures,
    findings,
    how_far,
    ladders,
    piping,
    record_chapter,
    scenarios,
    together,
    verdicts,
)
from plumbnet.report.page.page_content import Chapter, Page, PageBlock, PageFrame
from plumbnet.report.page.short_blocks import in_short
from plumbnet.report.prose import Paragraph
from plumbnet.report.text import ALL_TOGETHER, CAUTION
from plumbnet.study.dossier import Dossier


def _cover(dossier: Dossier) -> Iterator[PageBlock]:
    yield from cover(dossier.report, date=dossier.date)


CHAPTERS: tuple[tuple[str, str, Callable[[Dossier], Iterator[PageBlock]]], ...] = (
    ("cover", "Cover", _cover),
    ("verdicts", "Verdicts", verdicts),
    ("piping", "Piping", piping),
    ("findings", "Findings", findings),
    ("ladders", "What opens as the pressure climbs", ladders),
    ("cures", "What would cure it", cures),
    ("together", ALL_TOGETHER, together),
    ("margins", "How far it holds", how_far),
    ("scenarios", "What if", scenarios),
    ("calculation", "Calculation", calculation),
    ("assumptions", "Assumptions", assumptions_chapter),
    ("record", "Record", record_chapter),
)
"""Every chapter: its name in links, its title, and what it holds of a dossier."""


TOUCHED = (
    "Touch a valve, a device or a pipe, and the answer stands at once. All of it was worked out beforehand by the "
    "program that wrote this page; nothing touched here changes what else it says."
)
"""What stands over a board."""
IN_SHORT = (
    "Long lists of parts are told in short on this page: as ranges of their names, or with how many more there are. "
    "The command plumbnet check with --format json tells every name, and plumbnet export writes all parts and pipes as "
    "tables."
)


def page(dossier: Dossier, board: PageFrame | None = None) -> Page:
    """The page of a dossier; with a board, on which its piping is touched, behind the piping."""
    system, rules = dossier.report.system, dossier.report.rules
    long = {key: tuple(blocks(dossier)) for key, _, blocks in CHAPTERS}
    short = {key: tuple(in_short(block, system.parts) for block in blocks) for key, blocks in long.items()}
    if short != long:
        short["record"] = (Paragraph(IN_SHORT), *short["record"])
    written = [Chapter(key, title, short[key]) for key, title, _ in CHAPTERS]
    if board is not None:
        written.insert(1 + [chapter.key for chapter in written].index("piping"), board_chapter(board))
    return Page(
        title=system.title or system.record.file,
        under=tuple(_under(dossier, rules.in_full)),
        caution=CAUTION,
        chapters=tuple(chapter for chapter in written if chapter.blocks),
    )


def board_chapter(board: PageFrame, key: str = "", before: str = "") -> Chapter:
    """The chapter of a board; `key` and `before` stand before its name in links and its title."""
    return Chapter(f"{key}board", f"{before}{board.title}", (Paragraph(TOUCHED), board))


def _under(dossier: Dossier, rules: str) -> Iterator[str]:
    report = dossier.report
    if report.scenario is not None:
        yield f"Scenario: {report.scenario}"
    yield f"File: {report.system.record.file}"
    yield f"Rules: {rules}"
    if dossier.date:
        yield f"Date: {dossier.date}"
