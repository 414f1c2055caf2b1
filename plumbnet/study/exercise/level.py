"""Levels of difficulty: what each teaches, and how likely each building block is in its layouts."""

from dataclasses import dataclass, replace


@dataclass(frozen=True, slots=True)
class Recipe:
    """The shares, from 0 to 1, of lists that have each thing; where it stands is left to chance."""

    second_meter: float = 0.0
    """A meter for the yard beside that of the service, one of the two with a check in it."""
    second_reducer: float = 0.0
    yard_check: float = 0.0
    """One more check valve, such as yards have."""
    vacuum_breaker: float = 0.0
    """One of those that yards have, which lets air in and no water back."""
    booster: float = 0.0
    """A pump that raises the pressure, with the check that such pumps have."""
    heat_trap: float = 0.0
    """A nipple that slows warm water and stops none."""
    vacuum_relief: float = 0.0
    """A valve that lets air in and no water out."""
    high_main: float = 0.0
    unreduced: float = 0.12
    """Of the high mains, those whose reducer was forgotten."""
    reducer: float = 0.0
    bypass: float = 0.5
    backflow: float = 0.0
    assembly: float = 0.7
    """Of the backflow preventers, those that are more than a check valve."""
    treatment: float = 0.0
    own_check: float = 0.0
    """A check valve such as stands in the cold pipe of the heaters alone."""
    heater_valve: float = 0.3
    hot_valve: float = 0.3
    """A valve such as stands behind the heaters, in the hot pipe."""
    tap_valve: float = 0.2
    """A valve such as stands before one of the taps."""
    tank: float = 0.0
    small_tank: float = 0.3
    """Of the tanks, those of any size; the others are of the upper half."""
    tank_valve: float = 0.4
    """Of the tanks, those that have a valve of their own."""
    overcharged: float = 0.0
    """Of the tanks, those that somebody charged to more than the line."""
    spill: float = 0.0
    """An expansion relief valve in place of a tank."""
    both: float = 0.0
    """Of the tanks, those that have an expansion relief valve somewhere besides."""
    tankless: float = 0.0
    circulation: float = 0.0
    bare: float = 0.0
    """Heaters without a relief valve of their own, which have one in the cold pipe: a danger to be found."""
    shared: float = 0.0
    """Several heaters between shared headers."""
    branch_checks: float = 0.3
    """Of the shared headers, those with check valves between them and their heaters."""
    annex: float = 0.0
    """A second heater, on a wing of its own."""
    annex_tankless: float = 0.2
    annex_check: float = 0.0
    heights: float = 0.0
    """Heaters in a basement or an attic, taps on several floors."""
    mixing: float = 0.0
    boiler: float = 0.0
    """A heater that a boiler warms, with its heating circuit."""
    plate: float = 0.4
    """Of the heaters on boilers, plate exchangers, which have no store."""
    solar: float = 0.0
    """A cylinder that the sun warms through the circuit of a collector."""
    cistern: float = 0.0
    """A cistern under the roof that the street fills, and a vent: water stands in the building by its height alone."""


@dataclass(frozen=True, slots=True)
class Level:
    """A level of difficulty: its number, what it teaches, and the recipe of its layouts."""

    number: int
    teaches: str
    recipe: Recipe


_USUAL = Recipe(
    yard_check=0.5, backflow=0.25, treatment=0.2, vacuum_breaker=0.15, heat_trap=0.15, vacuum_relief=0.15, tank=0.7
)
"""What houses of every level but the first have in common."""

LEVELS = {
    1: Level(
        1,
        "one heater, and check valves that stop its water or do not",
        Recipe(backflow=0.5, own_check=0.5, yard_check=0.6, assembly=0.0, heater_valve=0.5),
    ),
    2: Level(
        2,
        "meters with checks, pressure reducers with and without bypass, expansion tanks",
        replace(
            _USUAL,
            second_meter=0.4,
            second_reducer=0.2,
            high_main=0.2,
            reducer=0.3,
            own_check=0.4,
            overcharged=0.1,
            spill=0.3,
        ),
    ),
    3: Level(
        3,
        "circulation loops and tankless heaters",
        replace(
            _USUAL,
            second_meter=0.35,
            second_reducer=0.1,
            high_main=0.15,
            reducer=0.25,
            own_check=0.4,
            spill=0.3,
            tankless=0.6,
            circulation=0.6,
            annex=0.5,
        ),
    ),
    4: Level(
        4,
        "several heaters on shared headers, and heights",
        replace(
            _USUAL,
            second_meter=0.35,
            high_main=0.15,
            reducer=0.25,
            own_check=0.3,
            tankless=0.2,
            circulation=0.3,
            shared=0.85,
            booster=0.12,
            heights=0.7,
            annex=0.2,
            cistern=0.15,
        ),
    ),
    5: Level(
        5,
        "boilers and collectors with their circuits, mixing valves, and codes that differ",
        replace(
            _USUAL,
            second_meter=0.35,
            high_main=0.15,
            reducer=0.3,
            own_check=0.4,
            spill=0.3,
            tankless=0.3,
            circulation=0.25,
            heights=0.3,
            mixing=0.35,
            booster=0.12,
            bare=0.1,
            boiler=0.4,
            solar=0.2,
            annex=0.2,
        ),
    ),
}
"""The levels, by number."""
