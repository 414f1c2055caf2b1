"""A sweep as text: what each event would change, the worst first, and how many events change nothing."""

from collections.abc import Iterable, Iterator

from plumbnet.report.output import record_blocks
from plumbnet.report.prose import Block, Heading, Paragraph, Table, document_text
from plumbnet.report.text import CAUTION, counted
from plumbnet.study.contingency import Error, Outcome, Pairs, Sweep, Turn

_NOTHING = "none"
MOST_NAMED = 6
"""Heaters or findings named in one cell; the rest are counted."""


def sweep_text(found: Sweep, *, top: int | None = None) -> str:
    """The events that change something, at most `top` of them, and the pairs likewise; ends with a line break."""
    return document_text(list(_blocks(found, top)))


def _blocks(found: Sweep, top: int | None) -> Iterator[Block]:
    system, rules = found.report.system, found.report.rules
    yield Heading(f"{system.title or system.record.file}: every single event", 1)
    yield Paragraph(system.record.file, "file")
    if found.report.scenario is not None:
        yield Paragraph(found.report.scenario, "scenario")
    yield Paragraph(rules.in_full, "rules")
    rows = [(one.event.title, one.outcome) for one in found.changing[:top]]
    if rows:
        yield _table("event", rows)
    yield Paragraph(_count(found, len(rows)))
    if found.pairs is not None:
        yield from _pairs(found.pairs, top)
    yield from record_blocks(found.report)
    yield Paragraph(CAUTION)


def _pairs(pairs: Pairs, top: int | None) -> Iterator[Block]:
    yield Heading("Pairs of events")
    yield Paragraph("What two events change together that neither changes alone.")
    rows = [(pair.title, pair.outcome) for pair in pairs.found[:top]]
    if rows:
        yield _table("events", rows)
    yield Paragraph(_pair_count(pairs, len(rows)))


def _table(name: str, rows: Iterable[tuple[str, Outcome]]) -> Table:
    cells = ((title, _turns(one), _errors(one.errors)) for title, one in rows)
    return Table((name, "heaters", "new errors"), tuple(cells))


def _turns(one: Outcome) -> str:
    if one.refused:
        return f"cannot be computed: {one.refused}"
    return _few([turn_in_words(turn) for turn in one.turns], ", ")


def turn_in_words(turn: Turn) -> str:
    """A heater and its verdict before and after."""
    return f"{turn.heater}: {turn.before.value} to {turn.after.value}"


def _errors(errors: Iterable[Error]) -> str:
    return _few([f"{error.name} ({error.part})" for error in errors], ", ")


def _few(words: list[str], joint: str) -> str:
    more = f"{joint}and {len(words) - MOST_NAMED} more" if len(words) > MOST_NAMED else ""
    return f"{joint.join(words[:MOST_NAMED])}{more}" or _NOTHING


def _count(found: Sweep, shown: int) -> str:
    """How many events there are, how many of them are shown, and how many change nothing."""
    changing = len(found.changing)
    left = f" ({shown} shown)" if shown < changing else ""
    return (
        f"{counted(len(found.events), 'event')} tried, one at a time: {changing} would change a verdict or bring "
        f"an error{left}, {found.idle_count} would change nothing."
    )


def _pair_count(pairs: Pairs, shown: int) -> str:
    left = f" ({shown} shown)" if shown < len(pairs.found) else ""
    tried = f"{pairs.tried} pairs tried" if pairs.is_complete else f"{pairs.tried} of {pairs.possible} pairs tried"
    ended = "" if pairs.is_complete else "; the search ended there, for the rest would take too long"
    return f"{tried}: {len(pairs.found)} change something together{left}{ended}."
