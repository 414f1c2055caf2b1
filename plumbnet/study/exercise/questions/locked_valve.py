"""Which valve, shut by mistake, would close a heater, and so must be locked open."""

from collections.abc import Iterator

from plumbnet.rules.facts import HeaterFacts
from plumbnet.study.exercise.answer import Choice
from plumbnet.study.exercise.question import Asked, World, heaters, question

_HOUSE = ("stop", "tank-stop")
OUTCOMES = {2: _HOUSE, 3: _HOUSE, 4: (*_HOUSE, "heater-stop"), 5: _HOUSE}
_VALVES = {"hot_valve": 0.9, "tap_valve": 0.9}
_FREE = {"meter_check": 0.1, "backflow": 0.1, "own_check": 0.1, "bypass": 0.8, "heater_valve": 0.1, "tank": 0.2}
_HELD = {"tank": 1.0, "meter_check": 0.5, "backflow": 0.5, "own_check": 0.0}
LEANS = {
    "stop": _VALVES | _FREE,
    "tank-stop": _VALVES | _HELD | {"tank_valve": 0.9, "heater_valve": 0.2},
    "heater-stop": _VALVES | _HELD | {"tank_valve": 0.1, "heater_valve": 0.9},
}
_FEWEST = 3
"""Valves that there must be for it to be a question."""


@question("locked-valve", OUTCOMES, leans=LEANS, as_it_is=True)
def locked_valve(world: World) -> Iterator[Asked]:
    """Which valve, shut by mistake, would leave the growing water nowhere to go?"""
    valves = tuple(name for name, part in world.report.system.parts.items() if part.is_valve())
    for heater in heaters(world):
        alone = [names[0] for names in heater.closes_if_shut.sets if len(names) == 1]
        if len(alone) == 1 and len(valves) >= _FEWEST and heater.ladder:
            yield _asked(heater, alone[0], valves)


def _asked(heater: HeaterFacts, valve: str, valves: tuple[str, ...]) -> Asked:
    prompt = (
        f"The growth of {heater.name} has somewhere to go now. One valve, shut by mistake, would end that. "
        "Which one must be locked or tagged open?"
    )
    because = f"All that can take the growth, {heater.ladder[0].outlet} first, lies behind {valve}."
    return Asked(prompt, (Choice("The valve is", valves, valve),), valve, (because,), heater.name)
