"""Where heated water can go, by the definitions: over every way the highest threshold, over all ways the lowest."""

from collections import defaultdict
from dataclasses import replace
from itertools import combinations

import networkx as nx

from oracles.standing_water import StandingWater, standing_water
from oracles.walking import Sense, Site, Step
from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.model.change import Change
from plumbnet.layout.model.part import Role
from plumbnet.layout.model.system import End, System

TAKES = {Role.STREET, Role.AIR, Role.TANK, Role.EXPANSION_RELIEF}


def opening_pressures(water: StandingWater, start: End) -> dict[End, float]:
    """Every outlet that water at `start` can reach, with the pressure at datum at which the way to it opens."""
    sites_at: dict[End, list[Site]] = defaultdict(list)
    for site in water.sites:
        sites_at[site.end].append(site)
    lowest: dict[End, float] = {}
    for end, way in water.ways(start, lambda step: step.is_way and water.floor_pa(step) < float("inf")):
        for site in sites_at[end]:
            opens_pa = _opens_pa(water, site, [step for step in way if step.sense is not Sense.FREE])
            if opens_pa is not None:
                lowest[end] = min(opens_pa, lowest.get(end, float("inf")))
    return lowest


def _opens_pa(water: StandingWater, site: Site, gates: list[Step]) -> float | None:
    """The pressure that opens the outlet by way of these gates; None where a reducer on the way shuts first.

    None too where the way comes back into water that it left: what a pump adds on a way round opens nothing.
    """
    if not gates:
        return takes_from_pa(water, site)
    left = [water.zone_of[gate.start] for gate in gates]
    if any(water.zone_of[gate.end] in left[: number + 1] for number, gate in enumerate(gates)):
        return None
    needed_pa = takes_from_pa(water, site)
    for gate in reversed(gates):
        needed_pa = max(needed_pa, water.static_pa[gate.end])
        if needed_pa >= water.set_pa(gate):
            return None
        needed_pa += water.opens_pa(gate)
    return max(needed_pa, water.static_pa[gates[0].start])


def takes_from_pa(water: StandingWater, site: Site) -> float:
    """The pressure at datum above which an outlet takes water; a tank under pressure is in balance with it."""
    if site.outlet.role is Role.TANK:
        return max(site.opens_pa, water.static_pa[site.end])
    return site.opens_pa


def fewest_devices(water: StandingWater, start: End, bound_pa: float) -> set[frozenset[str]]:
    """Every smallest set of devices that stand against water on a way to the street or open air."""
    goals = {
        site.end
        for site in water.sites
        if site.outlet.role.is_way_out and (site.opens_pa <= bound_pa or site.is_supply)
    }
    found: set[frozenset[str]] = set()
    for end, way in water.ways(start, lambda _: True):
        if end in goals:
            found.add(frozenset(step.part for step in way if not water.passes(step, bound_pa)))
    fewest = min(map(len, found), default=0)
    return {devices for devices in found if len(devices) == fewest} if fewest else set()


def closing_valves(water: StandingWater, start: End, bound_pa: float) -> list[tuple[str, ...]]:
    """Open valves that alone leave no outlet or tank when shut, then pairs of others; pressures as before."""
    valves = sorted(name for name, part in water.system.parts.items() if part.is_valve())
    if not _takes_water(water, water.system, start, bound_pa):
        return []
    alone = [valve for valve in valves if not _takes_water(water, _shut(water.system, valve), start, bound_pa)]
    others = [valve for valve in valves if valve not in alone]
    return [(valve,) for valve in alone] + [
        pair for pair in combinations(others, 2) if not _takes_water(water, _shut(water.system, *pair), start, bound_pa)
    ]


def _shut(system: System, *valves: str) -> System:
    return with_changes(system, [Change(close=valve) for valve in valves])


def _takes_water(water: StandingWater, system: System, start: End, bound_pa: float) -> bool:
    """Whether water reaches something that takes it, in a changed system under the pressures of the unchanged."""
    changed = standing_water(system)
    graph = changed.graph(lambda step: water.passes(step, bound_pa))
    reached = nx.descendants(graph, start) | {start}
    return any(
        site.end in reached and site.outlet.role in TAKES and takes_from_pa(water, site) <= bound_pa
        for site in water.sites
    )


def ports_open_without_accident(water: StandingWater, bound_pa: float) -> set[End]:
    """Ports whose water reaches the street or open air though every accidental joint is taken away."""
    goals = {site.end for site in water.sites if site.outlet.role.is_way_out and site.opens_pa <= bound_pa}

    def is_meant(step: Step) -> bool:
        is_accident = bool(step.part) and water.system.parts[step.part].is_accidental()
        return water.passes(step, bound_pa) and not is_accident

    back = water.graph(is_meant).reverse()
    return {end for goal in goals for end in (goal, *nx.descendants(back, goal))}


def without(system: System, device: str) -> System:
    """The system with a one-way device taken out: its passages stand free."""
    part = system.parts[device]
    return replace(system, parts={**system.parts, device: part.model_copy(update={"state": "stuck_open"})})
