"""What the growing water tries, in turn and by number: the way there, and what becomes of it or why it fails."""

import textwrap
from collections import defaultdict
from collections.abc import Iterator, Sequence

from plumbnet.analysis.water_walk import Conduct, Gated, Meeting, Refusing, Taking, Try, WalkStep, WaterWalk
from plumbnet.report.prose import names_in_short, spoken
from plumbnet.report.text import WIDTH
from plumbnet.report.trace.gate_phrases import gated
from plumbnet.report.trace.outlet_phrases import refusing, taking
from plumbnet.rules.facts import Facts

MOST_ALIKE = 3
"""Tries that come to the same by parts of one kind before the rest of them are told in one line."""
MOST_PARTS = 12
"""Parts on a way that are all named; of a longer one the first and the last few."""
_CONDUCT = {
    Conduct.SPREADS: "lets it go every way",
    Conduct.LETS_THROUGH: "lets it through",
    Conduct.ENDS: "is shut, a dead end",
    Conduct.IS_FULL: "is full: its air is gone, and it takes nothing",
    Conduct.IS_PLUGGED: "is plugged: it opens at no pressure, DANGER",
}
_INDENT = " " * 5


def walked(facts: Facts, walk: WaterWalk) -> Iterator[str]:
    """What the water of a heater tries, each under its number; many alike are told by the first."""
    if not walk.tries:
        yield "The growing water comes to nothing: no pipe leads from here."
        return
    yield "What the growing water tries, in turn:"
    for number, sentences in enumerate(tries_in_words(facts, walk), 1):
        for place, text in enumerate(sentences):
            lead = f"{number:>3}. " if place == 0 else _INDENT
            yield from textwrap.wrap(
                text, WIDTH, initial_indent=lead, subsequent_indent=_INDENT, break_on_hyphens=False
            )


def tries_in_words(facts: Facts, walk: WaterWalk) -> Iterator[list[str]]:
    """The sentences of each try in turn; of many alike those of the first, and the names of the rest."""
    found = walk.tries
    alike: dict[tuple[str, str], list[Try]] = defaultdict(list)
    for one in found:
        alike[_alike(facts, one)].append(one)
    for one in found:
        others = alike[_alike(facts, one)]
        if len(others) <= MOST_ALIKE:
            yield _sentences(facts, one)
        elif one is others[0]:
            rest = [name for other in others[1:] for name in _names(other)]
            yield [*_sentences(facts, one), f"Likewise {names_in_short(rest)}."]


def _names(one: Try) -> tuple[str, ...]:
    """What a try comes to."""
    return (*one.shut, *one.nowhere) if one.met is None else (one.way[-1].part,)


def _sentences(facts: Facts, one: Try) -> list[str]:
    return [*_way(facts, one), *_outcome(facts, one)]


def _alike(facts: Facts, one: Try) -> tuple[str, str]:
    """What tries that are told in one have in common: what becomes of the water, and at which kind of part."""
    if one.met is None:
        return "", "an end" if one.way or one.start else "the ends"
    return _met(facts, one.met), one.way[-1].kind


def _way(facts: Facts, one: Try) -> Iterator[str]:
    """How the water comes there, and what lets it pass on the way."""
    if len(one.way) > 1 or (one.way and one.met is None):
        yield f"{_begin(one)}: {' > '.join(_in_short([step.part for step in one.way]))}."
    passed = one.way if one.met is None else one.way[:-1]
    for step in passed:
        if isinstance(step.met, Gated):
            yield f"{_sentence(facts, step)}."


def _begin(one: Try) -> str:
    return f"Out of its {one.by} connection" if one.by else f"From {one.start}"


def _in_short(parts: Sequence[str]) -> list[str]:
    if len(parts) <= MOST_PARTS:
        return list(parts)
    few = MOST_PARTS // 3
    return [*parts[:few], f"({len(parts) - 2 * few} more)", *parts[-few:]]


def _outcome(facts: Facts, one: Try) -> Iterator[str]:
    """What becomes of it at the end of the way."""
    if one.met is not None:
        begin = f"{_begin(one)}: " if len(one.way) == 1 else ""
        yield f"{begin}{_sentence(facts, one.way[-1])}."
        return
    beyond = "" if one.way or not one.start else f" beyond {one.start}"
    if one.shut:
        names = names_in_short(one.shut)
        yield f"{names}{beyond}: shut, {'a dead end' if len(one.shut) == 1 else 'dead ends'}."
    if one.nowhere:
        yield f"{names_in_short(one.nowhere)}{beyond}: capped, or back to where it has been."


def _sentence(facts: Facts, step: WalkStep) -> str:
    return f"{step.part}, {spoken(step.kind)}, {_met(facts, step.met)}"


def _met(facts: Facts, met: Meeting) -> str:
    match met:
        case Taking() as outlet:
            return taking(facts, outlet)
        case Refusing() as outlet:
            return refusing(outlet)
        case Gated() as part:
            return gated(facts, part)
        case conduct:
            return _CONDUCT[conduct]
