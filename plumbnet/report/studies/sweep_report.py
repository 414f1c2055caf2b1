"""A sweep as text: what each event would change, the worst first, and how many events change nothing."""

from collections.abc import Iterable, Iterator, Sequence

from plumbnet.report.output import record_blocks
from plumbnet.report.prose import MOST_NAMED, Block, Heading, Paragraph, Table, document_text, names_in_short
from plumbnet.report.text import CAUTION, counted, events_in_words
from plumbnet.study.contingency import AlikeEvents, Outcome, Pairs, Sweep, Turn

_NOTHING = "none"
_OWN = "each its own"


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
    rows = found.alike_changing[:top]
    if rows:
        yield _table("event", ((events_in_words(row), [one.outcome for one in row.events]) for row in rows))
    yield Paragraph(_count(found, sum(len(row.events) for row in rows)))
    if top is None and found.idle_count:
        yield Heading("What changes nothing")
        yield Table(("event", "of", "parts"), tuple(_idle(row) for row in found.alike_idle))
    if found.pairs is not None:
        yield from _pairs(found.pairs, top)
    yield from record_blocks(found.report)
    yield Paragraph(CAUTION)


def _pairs(pairs: Pairs, top: int | None) -> Iterator[Block]:
    yield Heading("Pairs of events")
    yield Paragraph("What two events change together that neither changes alone.")
    rows = [(pair.title, [pair.outcome]) for pair in pairs.found[:top]]
    if rows:
        yield _table("events", rows)
    yield Paragraph(_pair_count(pairs, len(rows)))


def _idle(row: AlikeEvents) -> tuple[str, str, str]:
    many = f" ({len(row.parts)})" if len(row.parts) > 1 else ""
    return row.words, row.kind.replace("_", " "), names_in_short(row.parts) + many


def _table(name: str, rows: Iterable[tuple[str, Sequence[Outcome]]]) -> Table:
    cells = ((title, _turns(outcomes), _errors(outcomes)) for title, outcomes in rows)
    return Table((name, "heaters", "new errors"), tuple(cells))


def _turns(outcomes: Sequence[Outcome]) -> str:
    """Heaters that turn alike together; of several events each turns its own, or all turn the same."""
    if outcomes[0].refused:
        return f"cannot be computed: {outcomes[0].refused}"
    alike: dict[str, list[str]] = {}
    for one in outcomes:
        for turn in one.turns:
            alike.setdefault(f"{turn.before.value} to {turn.after.value}", []).append(turn.heater)
    told = [f"{names_in_short(heaters)}: {turned}" for turned, heaters in alike.items()]
    own = len({one.turns for one in outcomes}) > 1
    return _few(told, own=own)


def turn_in_words(turn: Turn) -> str:
    """A heater and its verdict before and after."""
    return f"{turn.heater}: {turn.before.value} to {turn.after.value}"


def _errors(outcomes: Sequence[Outcome]) -> str:
    """Errors that are new, each once with all the parts that it is about."""
    alike: dict[str, list[str]] = {}
    for one in outcomes:
        for error in one.errors:
            alike.setdefault(error.name, []).append(error.part)
    told = [f"{name} ({names_in_short(parts)})" for name, parts in alike.items()]
    own = len({one.errors for one in outcomes}) > 1
    return _few(told, own=own)


def _few(told: Sequence[str], *, own: bool) -> str:
    """The first of what is told, and where each event has its own, that it is so."""
    words = [*told, _OWN] if own else told
    more = f"; and {len(words) - MOST_NAMED} more" if len(words) > MOST_NAMED else ""
    return f"{'; '.join(words[:MOST_NAMED])}{more}" or _NOTHING


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
