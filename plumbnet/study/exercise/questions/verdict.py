"""What becomes of a heater's growth."""

from collections.abc import Iterator

from plumbnet.rules import closed, stops_in_words
from plumbnet.rules.facts import HeaterFacts, Verdict
from plumbnet.study.exercise.answer import Choice
from plumbnet.study.exercise.question import Asked, World, heaters, question

MEANINGS = {
    "open": "it can go back to the street, or out into the open air",
    "controlled": "it cannot, and a tank or an expansion relief valve keeps the pressure within the limit",
    "trapped": "it cannot, and the pressure passes the limit until the safety relief valve opens",
    "sealed": "it cannot, and not even a safety relief valve opens: danger",
    "on-demand": "it cannot, and the heater fires only while water runs, so it does not grow with every tap shut",
}
_SIMPLE = ("open", "trapped")
_USUAL = ("open", "controlled", "trapped")
_ALL = ("open", "controlled", "trapped", "on-demand")
OUTCOMES = {1: _SIMPLE, 2: _USUAL, 3: _ALL, 4: _ALL, 5: (*_ALL, "sealed")}
LEANS = {
    "controlled": {"tank": 0.8},
    "on-demand": {"tankless": 1.0, "circulation": 0.1, "tank": 0.2},
    "sealed": {"bare": 1.0, "boiler": 0.1, "tank": 0.2},
}
_MOST_STOPS = 3


@question("verdict", OUTCOMES, leans=LEANS)
def verdict(world: World) -> Iterator[Asked]:
    """What becomes of the water that grows in a heater while every fixture is shut?"""
    for heater in heaters(world):
        words = tuple(word for word in MEANINGS if word in OUTCOMES[world.level])
        if heater.verdict.value in words:
            blank = Choice(f"{heater.name} is", words, heater.verdict.value, {word: MEANINGS[word] for word in words})
            prompt = f"Every fixture is shut, and {heater.name} heats up. What becomes of the water by which it grows?"
            yield Asked(prompt, (blank,), heater.verdict.value, tuple(_because(world, heater)), heater.name)


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
