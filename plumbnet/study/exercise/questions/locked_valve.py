"""Which valve, if it were shut, would close a heater."""

from collections.abc import Iterator

from plumbnet.layout.model import Role
from plumbnet.rules.facts import HeaterFacts, RungFacts
from plumbnet.study.exercise.answer import Choice
from plumbnet.study.exercise.question import Asked, World, heaters, question, reducer_note

_TAKES = tuple(role.value for role in (Role.STREET, Role.AIR, Role.TANK, Role.EXPANSION_RELIEF))
OUTCOMES = {2: _TAKES, 3: _TAKES, 4: _TAKES, 5: _TAKES}
LEANS = {0: {"hot_valve": 0.9, "tap_valve": 0.9, "heater_valve": 0.5, "tank_valve": 0.6, "mixing": 0.0}}
_FEWEST = 3
"""Valves that there must be for it to be a question."""


@question("locked-valve", OUTCOMES, fewest=dict.fromkeys(OUTCOMES, 3), leans=LEANS, as_it_is=True)
def locked_valve(world: World) -> Iterator[Asked]:
    """Which valve, if it were shut, would leave the growing water nowhere to go?"""
    valves = tuple(name for name, part in world.report.system.parts.items() if part.is_valve())
    for heater in heaters(world):
        alone = [names[0] for names in heater.closes_if_shut.sets if len(names) == 1]
        takes = [rung for rung in heater.ladder if rung.role.value in _TAKES]
        if len(alone) == 1 and len(valves) >= _FEWEST and takes and alone[0] in valves:
            yield _asked(world, heater, takes[0], alone[0], valves)


def _asked(world: World, heater: HeaterFacts, takes: RungFacts, valve: str, valves: tuple[str, ...]) -> Asked:
    prompt = (
        f"Water that grows in {heater.name} has somewhere to go now. Which one valve, if it were shut, would end that?"
        f"{reducer_note(world)}"
    )
    because = (
        f"All that can take the growth, {takes.outlet} first, lies behind {valve}.",
        "Whoever shuts it for a repair keeps the heater off until it is open again.",
    )
    return Asked(prompt, (Choice("The valve is", valves, valve),), takes.role.value, because, heater.name)
