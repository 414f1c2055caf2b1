"""Zones to standing pressures (widest path) and cold-water temperatures, all at datum."""

import heapq
import math
from collections import deque
from collections.abc import Iterator
from dataclasses import dataclass

from plumbnet.layout.part import Source
from plumbnet.layout.system import End
from plumbnet.network.piping import Gate
from plumbnet.network.ranks import circling, held_shut, ranks_of
from plumbnet.network.zones import Crossing, Zone, Zoning


@dataclass(frozen=True, slots=True)
class Standing:
    """The state of every zone with no fixture open.

    `static_pa` gauge at datum, `lowest_pa` the pressure its pumps let it fall to, `cold_k` the coldest
    supply that reaches it; None for a zone that no water reaches. `cut_off` are the zones that only a shut
    valve joins to a supply: they keep the pressure they had while it stood open (of several
    in a row, while all did). `circling` are the boosters that feed their own inlet and lift nothing.
    """

    static_pa: list[float | None]
    lowest_pa: list[float | None]
    cold_k: list[float | None]
    cut_off: frozenset[Zone]
    circling: tuple[str, ...] = ()

    def at(self, zone: Zone) -> float:
        """Static pressure of a zone, gauge at datum; minus infinity where no water is."""
        static = self.static_pa[zone]
        return -math.inf if static is None else static


def standing(zoning: Zoning) -> Standing:
    """Static pressure of every zone: the widest path from the supplies.

    A gate passes the pressure before it, less what it takes to open; a reducer passes at most its set; a
    booster adds its rise. A zone to which water comes in no other way is filled through a bypass the wrong way, or
    back through a pump without a check. Near-linear in the number of gates, once more for each reducer found held shut
    in a circle with a booster.
    """
    supplies = list(_supplies(zoning))
    seeds, held = [(zone, s.pressure_pa + head) for zone, s, head in supplies], frozenset[Gate]()
    while True:
        ranks = ranks_of(zoning, held)
        static, cut_off = _reached_pressures(zoning, ranks, seeds)
        found = held_shut(zoning, ranks, static, [zone for zone, _ in seeds]) - held
        if not found:
            break
        held |= found
    lowest, _ = _reached_pressures(zoning, ranks, [(zone, s.lowest_pa + head) for zone, s, head in supplies])
    idle = tuple(gate.part for gate in circling(zoning, ranks))
    return Standing(static, lowest, _coldest(zoning, supplies), cut_off, idle)


def _supplies(zoning: Zoning) -> Iterator[tuple[Zone, Source, float]]:
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


def _coldest(zoning: Zoning, supplies: list[tuple[Zone, Source, float]]) -> list[float | None]:
    """Temperature of the coldest supply that reaches each zone; where only a shut valve leads, through it."""
    cold: list[float | None] = [None] * zoning.zone_count
    coldest_first = sorted(supplies, key=lambda supply: (supply[1].temperature_k, supply[0]))
    for through_shut in (False, True):
        seen: set[Zone] = set()
        for zone, source, _ in coldest_first:
            for reached in spread(zoning, zone, seen, through_shut=through_shut):
                if cold[reached] is None:
                    cold[reached] = source.temperature_k
    return cold


def spread(zoning: Zoning, start: Zone, seen: set[Zone], *, through_shut: bool) -> Iterator[Zone]:
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
