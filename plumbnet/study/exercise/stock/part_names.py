"""Names that say what a part is and not where it stands, and an order of the list that is left to chance."""

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import replace
from random import Random
from types import MappingProxyType

from plumbnet.study.exercise.stock.stock import Stock
from plumbnet.study.exercise.stock.stretch import Stretch, part_of

WORDS: Mapping[str, str] = MappingProxyType(
    {
        "booster_pump": "booster",
        "check_valve": "check",
        "circulator": "pump",
        "double_check": "double-check",
        "dual_check": "dual-check",
        "expansion_relief": "spill",
        "expansion_tank": "tank",
        "filter": "filter",
        "heat_trap": "heat-trap",
        "meter": "meter",
        "pressure_reducer": "reducer",
        "reduced_pressure_assembly": "rp",
        "relief_valve": "relief",
        "softener": "softener",
        "storage_heater": "heater",
        "tankless_heater": "heater",
        "tee": "tee",
        "vacuum_breaker": "vacuum-breaker",
        "vacuum_relief_valve": "vacuum-relief",
        "valve": "valve",
        "vented_dual_check": "vented-check",
    }
)
"""What parts are called by their kinds; those of other kinds keep their names, which are those of rooms or plants."""


def neutral_names(stock: Stock, chance: Random) -> dict[str, str]:
    """A new name for every part: a number behind the word where there are several, dealt by chance."""
    alike: dict[str, list[str]] = defaultdict(list)
    for name in stock.parts:
        if (word := WORDS.get(stock.kind(name))) is not None:
            alike[word].append(name)
    names = {name: name for name in stock.parts}
    for word, group in alike.items():
        numbers = chance.sample(range(1, len(group) + 1), len(group))
        names |= {name: word if len(group) == 1 else f"{word}-{n}" for name, n in zip(group, numbers, strict=True)}
    return names


def renamed(stock: Stock, names: Mapping[str, str], chance: Random) -> Stock:
    """The stock under new names, its list shuffled.

    Heights stay where a gauge would show them; that of a device in line would tell the floor that it is on.
    """
    in_line = {stop for stretch in stock.stretches if stretch.place is not None for stop in stretch.devices}
    order = chance.sample(list(stock.parts), len(stock.parts))
    parts = {names[name]: _without_height(stock.parts[name], drop=name in in_line) for name in order}
    stretches = tuple(_renamed(stretch, names) for stretch in stock.stretches)
    hangers = {names[tee]: places for tee, places in stock.hangers.items()}
    return replace(stock, parts=parts, stretches=stretches, hangers=hangers)


def _without_height(fields: Mapping[str, object], *, drop: bool) -> dict[str, object]:
    return {key: value for key, value in fields.items() if not drop or key != "elevation"}


def _renamed(stretch: Stretch, names: Mapping[str, str]) -> Stretch:
    stops = tuple(names[part_of(stop)] + stop.removeprefix(part_of(stop)) for stop in stretch.stops)
    return replace(stretch, stops=stops)
