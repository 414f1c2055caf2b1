"""The results of a class by belief, in words: who held what, and no marks."""

from collections.abc import Iterator, Sequence

from plumbnet.report.prose import Block, Heading, Paragraph, Table, document_text
from plumbnet.study.training import BeliefRow, Holding

CLASS_TITLE = "What a class believes"
_NOTHING = "Nobody held anything that can be told here."
_HOW_TO_READ = (
    "Of each apprentice: in how many questions it was held, of those in which it could be; * where it was held the "
    "last time, too."
)


def class_text(rows: Sequence[BeliefRow], apprentices: Sequence[str]) -> str:
    """The table for the terminal; ends with a line break."""
    return document_text([Heading(CLASS_TITLE, 1), *class_blocks(rows, apprentices)])


def class_blocks(rows: Sequence[BeliefRow], apprentices: Sequence[str]) -> Iterator[Block]:
    """A row to each belief, a column to each apprentice, and where the layout is that answers it."""
    if not rows:
        yield Paragraph(_NOTHING)
        return
    yield Table(("what is held", "by", *apprentices), tuple(_line(row, apprentices) for row in rows))
    yield Paragraph(_HOW_TO_READ)
    beliefs = [row.name for row in rows if row.is_belief]
    if beliefs:
        yield Paragraph(f"A layout that refutes one: plumbnet beliefs {' or '.join(beliefs)}.")


def _line(row: BeliefRow, apprentices: Sequence[str]) -> tuple[str, ...]:
    holdings = {one.apprentice: one for one in row.holdings}
    by = f"{len(row.held_by)} of {len(row.holdings)}"
    return (row.holds, by, *(_share(holdings.get(who)) for who in apprentices))


def _share(one: Holding | None) -> str:
    return "" if one is None else f"{one.held} of {one.could}{' *' if one.holds_last else ''}"
