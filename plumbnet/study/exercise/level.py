"""Levels of difficulty: what each teaches, and how likely each building block is in its layouts."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Recipe:
    """The shares, from 0 to 1, of layouts that have each thing."""

    meter_check: float = 0.0
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
    """A check valve in the cold pipe of the heaters alone."""
    heater_valve: float = 0.3
    hot_valve: float = 0.3
    """A valve behind the heaters, in the hot pipe."""
    tap_valve: float = 0.2
    """A valve before one of the taps."""
    tank_tee: float = 1.0
    tank: float = 0.0
    tank_valve: float = 0.4
    """Of the tanks, those that have a valve of their own."""
    spill: float = 0.0
    """An expansion relief valve in place of a tank."""
    tankless: float = 0.0
    circulation: float = 0.0
    bare: float = 0.0
    """Heaters without a relief valve: a danger to be found."""
    shared: float = 0.0
    """Several heaters between shared headers."""
    heights: float = 0.0
    """Heaters in a basement or an attic, taps on several floors."""
    mixing: float = 0.0
    boiler: float = 0.0
    """An indirect heater on a boiler with its heating circuit."""


@dataclass(frozen=True, slots=True)
class Level:
    """A level of difficulty: its number, what it teaches, and the recipe of its layouts."""

    number: int
    teaches: str
    recipe: Recipe


LEVELS = {
    1: Level(
        1, "one heater, and a check valve or none", Recipe(backflow=0.35, own_check=0.35, assembly=0.0, tank_tee=0.0)
    ),
    2: Level(
        2,
        "meters with checks, pressure reducers with and without bypass, expansion tanks",
        Recipe(meter_check=0.35, high_main=0.25, reducer=0.3, backflow=0.15, treatment=0.2, own_check=0.15, tank=0.5),
    ),
    3: Level(
        3,
        "circulation loops and tankless heaters",
        Recipe(
            meter_check=0.4,
            high_main=0.15,
            reducer=0.25,
            backflow=0.2,
            treatment=0.2,
            own_check=0.1,
            tank=0.45,
            spill=0.1,
            tankless=0.6,
            circulation=0.55,
        ),
    ),
    4: Level(
        4,
        "several heaters on shared headers, and heights",
        Recipe(
            meter_check=0.35,
            high_main=0.15,
            reducer=0.25,
            backflow=0.25,
            treatment=0.3,
            own_check=0.1,
            tank=0.6,
            tankless=0.2,
            circulation=0.3,
            shared=0.85,
            heights=0.7,
        ),
    ),
    5: Level(
        5,
        "boilers and their circuits, mixing valves, and codes that differ",
        Recipe(
            meter_check=0.35,
            high_main=0.15,
            reducer=0.3,
            backflow=0.2,
            treatment=0.2,
            own_check=0.15,
            tank=0.5,
            spill=0.2,
            tankless=0.3,
            circulation=0.25,
            heights=0.3,
            mixing=0.45,
            bare=0.06,
            boiler=0.45,
        ),
    ),
}
"""The levels, by number."""
