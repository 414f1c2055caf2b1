"""A stock to a layout: every device somewhere that it might stand, every heater in one of their places, by chance."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from random import Random

from plumbnet.study.exercise.stock.stock import Stock
from plumbnet.study.exercise.stock.stretch import Spot, Stretch, part_of
from plumbnet.study.exercise.stock.usual_places import CHECKS, PLACES, is_usual

_TRIES = 12
"""Piping begun before the stock is taken to fit nowhere."""
_MOST_CHECKS = 2
"""Checks on the way to one heater."""
_EXCHANGED = frozenset({"heat_exchanger", "storage_heater", "tankless_heater"})
"""Kinds of heater that may stand in each other's place."""

_CIRCUIT = frozenset({Spot.CIRCUIT})


def placed(stock: Stock, chance: Random) -> tuple[Stretch, ...] | None:
    """The stretches with their devices placed anew; None where chance found no room for all of them."""
    for _ in range(_TRIES):
        found = _placed_once(stock, chance)
        if found is not None and all(_is_usual(stock, one) for one in found):
            exchanged = _exchanged(stock, found, chance)
            if _has_few_checks(stock, exchanged):
                return exchanged
    return None


def _is_usual(stock: Stock, stretch: Stretch) -> bool:
    return stretch.place is None or is_usual(stretch.place, [stock.kind(name) for name in stretch.devices])


def _placed_once(stock: Stock, chance: Random) -> tuple[Stretch, ...] | None:
    devices: list[list[str]] = [list(one.devices) if one.place is None else [] for one in stock.stretches]
    homes = {
        name: number for number, one in enumerate(stock.stretches) for name in one.devices if one.place is not None
    }
    first = next(number for number, one in enumerate(stock.stretches) if one.place is Spot.SERVICE)
    for kind in ("meter", "valve"):
        name = chance.choice([name for name in homes if stock.kind(name) == kind and not _is_kept(stock, homes[name])])
        devices[first].append(name)
        del homes[name]
    for name in chance.sample(list(homes), len(homes)):
        spot = _spot(stock, devices, name, homes[name], chance)
        if spot is None:
            return None
        number, index = spot
        devices[number].insert(index, name)
    return tuple(
        replace(one, stops=(one.stops[0], *inside, one.stops[-1]))
        for one, inside in zip(stock.stretches, devices, strict=True)
    )


def _spot(
    stock: Stock, devices: Sequence[Sequence[str]], name: str, home: int, chance: Random
) -> tuple[int, int] | None:
    """A stretch, by its number, and the index in it at which a device may be put in."""
    for number in _stretches(stock, name, home, chance):
        place, kinds = stock.stretches[number].place, [stock.kind(one) for one in devices[number]]
        indices = [
            index
            for index in range(len(kinds) + 1)
            if place is not None and is_usual(place, [*kinds[:index], stock.kind(name), *kinds[index:]])
        ]
        if indices:
            return number, chance.choice(indices)
    return None


def _stretches(stock: Stock, name: str, home: int, chance: Random) -> Iterator[int]:
    """The numbers of the stretches in which it may stand, in an order left to chance, place by place."""
    of_kind = _CIRCUIT if _is_kept(stock, home) else PLACES.get(stock.kind(name))
    places = stock.hangers.get(name) or of_kind
    if places is None:
        yield home
        return
    by_place: dict[Spot, list[int]] = {}
    for number, one in enumerate(stock.stretches):
        if one.place in places and part_of(one.stops[0]) != name:
            by_place.setdefault(one.place, []).append(number)
    for place in chance.sample(list(by_place), len(by_place)):
        yield from chance.sample(by_place[place], len(by_place[place]))


def _is_kept(stock: Stock, home: int) -> bool:
    """Whether what stands in a stretch stays in the circuit that it is part of."""
    return stock.stretches[home].place in _CIRCUIT


def _exchanged(stock: Stock, stretches: tuple[Stretch, ...], chance: Random) -> tuple[Stretch, ...]:
    """Heaters in each other's places, each with its own size and relief valve."""
    heaters = [name for name in stock.parts if stock.kind(name) in _EXCHANGED]
    to = dict(zip(heaters, chance.sample(heaters, len(heaters)), strict=True))
    return tuple(replace(one, stops=tuple(to.get(stop, stop) for stop in one.stops)) for one in stretches)


def _has_few_checks(stock: Stock, stretches: Sequence[Stretch]) -> bool:
    """Whether the way to no heater leads through more checks than anybody builds, at most one in its own pipe."""
    into = {one.end: one for one in stretches if one.place in {Spot.SERVICE, Spot.WING, Spot.FEED, Spot.BRANCH}}
    for name in into:
        checks, at, own = 0, name, 0
        while at in into:
            stretch = into[at]
            here = sum(stock.kind(device) in CHECKS for device in stretch.devices)
            checks, at = checks + here, stretch.start
            own += here if stretch.place in {Spot.FEED, Spot.BRANCH} else 0
        if checks > _MOST_CHECKS or own > 1:
            return False
    return True
