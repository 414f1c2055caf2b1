"""What becomes of a heater's growth."""

from collections.abc import Iterator

from plumbnet.rules import closed, stops_in_words
from plumbnet.rules.facts import HeaterFacts, Verdict
from plumbnet.study.exercise.answer import Choice
from plumbnet.study.exercise.question import Asked, World, heaters, question, reducer_note

MEANINGS = {
    "open": "it can go back to the street, or out into the open air",
    "controlled": "it cannot, and a tank or an expansion relief valve keeps the pressure within the limit",
    "trapped": "it cannot, and the pressure passes the limit until the safety relief valve opens",
    "sealed": "it cannot, and not even a safety relief valve opens: danger",
    "on-demand": "it cannot, but the heater fires only while water runs, so that with every tap shut nothing grows",
}
_SIMPLE = ("open", "trapped")
_USUAL = ("open", "controlled", "trapped")
_ALL = ("open", "controlled", "trapped", "on-demand")
OUTCOMES = {1: _SIMPLE, 2: _USUAL, 3: _ALL, 4: _ALL, 5: (*_ALL, "sealed")}
_LOOPED = {"tankless": 0.9, "circulation": 0.95, "annex": 1.0, "annex_tankless": 0.2, "spill": 0.1}
_CHECKED = {
    "own_check": 0.7,
    "tank": 1.0,
    "bypass": 0.8,
    "yard_check": 0.7,
    "small_tank": 0.0,
    "overcharged": 0.0,
    "reducer": 0.6,
}
_SEALED = {"bare": 0.9, "own_check": 1.0, "yard_check": 1.0, "boiler": 0.15, "solar": 0.1, "annex_tankless": 0.1}
LEANS = {
    1: {"own_check": 0.7},
    2: _CHECKED,
    3: _CHECKED | _LOOPED,
    4: _CHECKED | _LOOPED,
    5: _CHECKED | _LOOPED | _SEALED,
}
_MOST_STOPS = 3
_THIN_PA = 35_000.0
"""A pressure so near the limit, some 5 psi, that the answer would hang on arithmetic."""
_IF_IT_CAN = ", if it can with no water drawn"


@question("verdict", OUTCOMES, fewest={1: 2, 2: 3, 3: 4, 4: 4, 5: 4}, leans=LEANS, is_narrowed=False)
def verdict(world: World) -> Iterator[Asked]:
    """What becomes of the water that grows in a heater while every fixture is shut?"""
    words = tuple(word for word in MEANINGS if word in OUTCOMES[world.level])
    for heater in heaters(world):
        if heater.verdict.value in words and not _is_thin(heater):
            blank = Choice(f"{heater.name} is", words, heater.verdict.value, {word: MEANINGS[word] for word in words})
            if_it_can = _IF_IT_CAN if Verdict.ON_DEMAND.value in words else ""
            prompt = (
                f"Every fixture is shut, and {heater.name} heats up{if_it_can}. "
                f"What becomes of the water by which it grows?{reducer_note(world)}"
            )
            yield Asked(prompt, (blank,), heater.verdict.value, tuple(_because(world, heater)), heater.name)


def _is_thin(heater: HeaterFacts) -> bool:
    """Whether what it comes to lies so near its limit that a sketch cannot tell on which side."""
    return (
        heater.settled_pa is not None
        and abs(heater.settled_pa - heater.limit_pa) < _THIN_PA
        and (heater.verdict in {Verdict.CONTROLLED, Verdict.TRAPPED})
    )


def _because(world: World, heater: HeaterFacts) -> Iterator[str]:
    facts = world.report.facts
    match heater.verdict:
        case Verdict.OPEN:
            way = next(rung for rung in heater.ladder if rung.role.is_way_out)
            opens = facts.pressure(way.opens_pa)
            yield f"Nothing stands against it on its way to {way.outlet}, which takes it at {opens}."
        case Verdict.TRAPPED | Verdict.SEALED:
            yield closed(facts, heater)
        case Verdict.CONTROLLED:
            stops = heater.stopped_by.sets[:_MOST_STOPS]
            yield f"Its way back is stopped{f' by {stops_in_words(stops)}' if stops else ''}."
            hot = "" if heater.settled_pa is None else f": all hot, it stands at {facts.pressure(heater.settled_pa)}"
            yield f"What is fitted holds it at or below {facts.pressure(heater.limit_pa)}{hot}."
        case Verdict.ON_DEMAND:
            stops = heater.stopped_by.sets[:_MOST_STOPS]
            yield f"Its way back is stopped{f' by {stops_in_words(stops)}' if stops else ''}."
            yield f"But no pump drives water through {heater.name}, so it fires only while a tap is open."
