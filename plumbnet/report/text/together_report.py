"""Remedies made together, as sentences: what is done, what becomes of each heater, what a single event then does."""

from collections.abc import Iterator
from typing import TYPE_CHECKING

from plumbnet.report.prose import names_in_short
from plumbnet.rules import listed
from plumbnet.rules.facts import Facts, HeaterFacts

if TYPE_CHECKING:  # every check imports this module, and none needs what a dossier takes
    from plumbnet.study.contingency import AlikeEvents, Sweep
    from plumbnet.study.dossier import CuredWhole

ALL_TOGETHER = "All of these together"
MOST_EVENTS = 3
"""Single events that are named, the worst first."""


def chosen_in_words(whole: "CuredWhole") -> tuple[str, ...]:
    """What is done, a sentence to each remedy."""
    return tuple(one.title for one in whole.together.chosen)


def outcomes_in_words(whole: "CuredWhole") -> Iterator[str]:
    """What becomes of every heater, whom it leaves in trouble, and what single events would change then."""
    facts = whole.together.after.facts
    yield "; ".join(_outcome(facts, heater) for heater in facts.heaters).join(["Then ", "."])
    if whole.together.left:
        yield f"It leaves {listed(whole.together.left)} in trouble."
    if whole.swept is not None:
        yield _swept(whole.swept)


def _outcome(facts: Facts, heater: HeaterFacts) -> str:
    settles = "" if heater.settled_pa is None else f" at {facts.pressure(heater.settled_pa)} when all is hot"
    first = next(iter(heater.ladder), None)
    opens = "" if first is None else f", and {first.outlet} opens first, at {facts.pressure(first.opens_pa)}"
    return f"{heater.name} is {heater.verdict.value}{settles}{opens}"


def _swept(swept: "Sweep") -> str:
    worst = [events_in_words(row) for row in swept.alike_changing[:MOST_EVENTS]]
    count = f"Of {len(swept.events)} single events {len(swept.changing)} would change a verdict or bring an error"
    if not worst:
        return f"Of {len(swept.events)} single events none would change a verdict or bring an error."
    return f"{count}; the worst: {'; '.join(worst)}."


def events_in_words(row: "AlikeEvents") -> str:
    """The parts of events that are told together, how many where they are several, and what happens to them."""
    many = f" ({len(row.parts)} parts)" if len(row.parts) > 1 else ""
    return f"{names_in_short(row.parts)}{many}: {row.words}"
