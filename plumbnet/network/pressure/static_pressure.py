"""Zones to standing pressures (widest path) and cold-water temperatures, all at datum."""

import heapq
import math
from collections import deque
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import TypeAlias

from plumbnet.layout.model import End, Source
from plumbnet.network.piping import Crossing, Gate, Zone, Zoning
from plumbnet.network.pressure.supply_order import circling, held_shut, ranks_of

Supply: TypeAlias = tuple[Zone, Source, float]
"""A supply with the zone it stands in and its static head."""
Seeds: TypeAlias = tuple[tuple[Zone, float], ...]
"""Zones of supplies and the pressures they give there."""


@dataclass(frozen=True, slots=True)
class StaticPressures:
    """The state of every zone with no fixture open.

    `static_pa` gauge at datum, with each main at its highest; `cut_in_pa` the pressure its pumps let it fall to,
    `usual_pa` that with each main as it is as a rule, `least_pa` the lowest that its supplies let it fall to; `cold_k`
    the coldest supply that reaches it; None for a zone that no water reaches. `cut_off` are the zones that only a shut
    valve joins to a supply: they keep the pressure they had while it stood open (of several in a row, while all did).
    `circling` are the boosters that feed their own inlet and lift nothing.
    """

    static_pa: list[float | None]
    cut_in_pa: list[float | None]
    usual_pa: list[float | None]
    least_pa: list[float | None]
    cold_k: list[float | None]
    cut_off: frozenset[Zone]
    circling: tuple[str, ...] = ()

    def at(self, zone: Zone) -> float:
        """Static pressure of a zone, gauge at datum; minus infinity where no water is."""
        static = self.static_pa[zone]
        return -math.inf if static is None else static

    def levels_pa(self, zone: Zone) -> tuple[float, float, float, float] | None:
        """Static, cut-in, usual and least pressure of a zone, gauge at datum; None where no water is."""
        static, cut_in, usual, least = (
            each[zone] for each in (self.static_pa, self.cut_in_pa, self.usual_pa, self.least_pa)
        )
        if static is None or cut_in is None or usual is None or least is None:
            return None
        return static, cut_in, usual, least


def standing_pressures(zoning: Zoning) -> StaticPressures:
    """Static pressure of every zone: the widest path from the supplies.

    A gate passes the pressure before it, less what it takes to open; a reducer passes at most its set; a
    booster adds its rise. A zone to which water comes in no other way is filled through a bypass the wrong way, or
    back through a pump without a check. Near-linear in the number of gates, once more for each reducer found held shut
    in a circle with a booster.
    """
    supplies = list(_supplies(zoning))
    ranks = _settled_ranks(zoning, supplies)
    found: dict[Seeds, tuple[list[float | None], frozenset[Zone]]] = {}

    def reached(pressure_pa: Callable[[Source], float]) -> tuple[list[float | None], frozenset[Zone]]:
        """Searched once for all pressures that are the same at every supply, as most are."""
        seeds = _seeds(supplies, pressure_pa)
        if seeds not in found:
            found[seeds] = _reached_pressures(zoning, ranks, list(seeds))
        return found[seeds]

    static, cut_off = reached(lambda source: source.pressure_pa)
    cut_in, usual, least = (reached(each)[0] for each in (lambda source: source.cut_in_pa, _usual_pa, _least_pa))
    idle = tuple(gate.part for gate in circling(zoning, ranks))
    return StaticPressures(static, cut_in, usual, least, _coldest(zoning, supplies), cut_off, idle)


def _seeds(supplies: list[Supply], pressure_pa: Callable[[Source], float]) -> Seeds:
    return tuple((zone, pressure_pa(source) + head_pa) for zone, source, head_pa in supplies)


def _settled_ranks(zoning: Zoning, supplies: list[Supply]) -> list[int]:
    """Ranks of the zones once every reducer is left out that is found held shut in a circle with a booster."""
    seeds, held = _seeds(supplies, lambda source: source.pressure_pa), frozenset[Gate]()
    while True:
        ranks = ranks_of(zoning, held)
        static, _ = _reached_pressures(zoning, ranks, list(seeds))
        found = held_shut(zoning, ranks, static, [zone for zone, _ in seeds]) - held
        if not found:
            return ranks
        held |= found


def _usual_pa(source: Source) -> float:
    return source.pressure_pa if source.usual_pa is None else source.usual_pa


def _least_pa(source: Source) -> float:
    return source.cut_in_pa if source.least_pa is None else source.least_pa


def _supplies(zoning: Zoning) -> Iterator[Supply]:
    piping = zoning.piping
    for name, part in piping.system.parts.items():
        source = part.source()
        if source is not None:
            node = piping.node_of[End(name, source.port)]
            yield zoning.zone_of[node], source, piping.heads_pa[node]


def _reached_pressures(
    zoning: Zoning, ranks: list[int], seeds: list[tuple[Zone, float]]
) -> tuple[list[float | None], frozenset[Zone]]:
    """Pressures by zone, and the zones reached only through shut valves.

    By the fewest of them; and of ways through as many, by the fewest that lead against a pump or through a bypass the
    wrong way, where water comes only if none comes otherwise.
    """
    static: list[float | None] = [None] * zoning.zone_count
    cut_off: set[Zone] = set()
    waiting = {(0, 0): seeds}
    while waiting:
        shut, back = key = min(waiting)
        reached = _widest(zoning, ranks, static, waiting.pop(key))
        for zone, pressure_pa in reached.items():
            static[zone] = pressure_pa
        cut_off.update(reached if shut else ())
        for zone, pressure_pa in reached.items():
            for crossing in zoning.out.get(zone, ()):
                if crossing.gate.is_shut:
                    waiting.setdefault((shut + 1, back), []).append((crossing.far, pressure_pa))
                elif crossing.way is not None and not crossing.is_forward:
                    lift_pa = _lift_pa(ranks, crossing)
                    waiting.setdefault((shut, back + 1), []).append((crossing.far, pressure_pa - lift_pa))
    return static, frozenset(cut_off)


def _lift_pa(ranks: list[int], crossing: Crossing) -> float:
    """What the pump of a gate adds; nothing where it feeds its own inlet."""
    return crossing.gate.rise_pa if ranks[crossing.near] != ranks[crossing.far] else 0.0


def _widest(
    zoning: Zoning, ranks: list[int], static: list[float | None], seeds: list[tuple[Zone, float]]
) -> dict[Zone, float]:
    """Widest paths from `seeds` into the zones that have no pressure yet."""
    found: dict[Zone, float] = {}
    queue: list[tuple[int, float, Zone]] = []

    def offer(zone: Zone, pressure_pa: float) -> None:
        if static[zone] is None and pressure_pa > found.get(zone, -math.inf):
            found[zone] = pressure_pa
            heapq.heappush(queue, (ranks[zone], -pressure_pa, zone))

    for zone, pressure_pa in seeds:
        offer(zone, pressure_pa)
    while queue:
        _, negative, zone = heapq.heappop(queue)
        if found[zone] != -negative:
            continue
        for crossing in zoning.out.get(zone, ()):
            if crossing.way is not None and crossing.is_forward:
                raised_pa = -negative - crossing.way.opens_pa + _lift_pa(ranks, crossing)
                offer(crossing.far, min(raised_pa, crossing.way.below_pa))
    return found


def _coldest(zoning: Zoning, supplies: list[Supply]) -> list[float | None]:
    """Temperature of the coldest supply that reaches each zone; where only a shut valve leads, through it."""
    cold: list[float | None] = [None] * zoning.zone_count
    coldest_first = sorted(supplies, key=lambda supply: (supply[1].temperature_k, supply[0]))
    for through_shut in (False, True):
        seen: set[Zone] = set()
        for zone, source, _ in coldest_first:
            for reached in spread_over_zones(zoning, zone, seen, through_shut=through_shut):
                if cold[reached] is None:
                    cold[reached] = source.temperature_k
    return cold


def spread_over_zones(zoning: Zoning, start: Zone, seen: set[Zone], *, through_shut: bool) -> Iterator[Zone]:
    """Zones not yet `seen` that water from `start` can reach, through shut valves too if wanted."""
    queue = deque([start])
    while queue:
        zone = queue.popleft()
        if zone in seen:
            continue
        seen.add(zone)
        yield zone
        for crossing in zoning.out.get(zone, ()):
            if crossing.way is not None or (through_shut and crossing.gate.is_shut):
                queue.append(crossing.far)
