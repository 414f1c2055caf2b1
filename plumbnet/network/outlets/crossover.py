"""Which cells still reach a way out when every accidental joint of hot and cold is taken away."""

from collections import defaultdict, deque

from plumbnet.network.outlets.ladder import Opening, floor_pa
from plumbnet.network.piping import Cell, Zone, Zoning
from plumbnet.network.pressure import StaticPressures


def open_without_accident(
    zoning: Zoning, standing: StaticPressures, openings: dict[Zone, list[Opening]], bound_pa: float
) -> set[Cell]:
    """Cells whose water reaches the street or open air at or below `bound_pa` (datum) past no accidental joint.

    Accidental joints are crossovers at fixtures and mixing valves without checks. Linear.
    """
    before: dict[Cell, list[Cell]] = defaultdict(list)
    for door in zoning.piping.doors:
        if door.is_valve:
            start, end = zoning.cell_of[door.start], zoning.cell_of[door.end]
            before[start].append(end)
            before[end].append(start)
    for crossing in zoning.cell_crossings():
        floor = floor_pa(crossing, standing)
        if floor is not None and floor <= bound_pa:
            before[zoning.cell_of[crossing.enters]].append(zoning.cell_of[crossing.leaves])
    reached = {
        zoning.cell_of[opening.site.node]
        for outlets in openings.values()
        for opening in outlets
        if opening.site.outlet.role.is_way_out and opening.opens_pa <= bound_pa
    }
    queue = deque(sorted(reached))
    while queue:
        for cell in before.get(queue.popleft(), ()):
            if cell not in reached:
                reached.add(cell)
                queue.append(cell)
    return reached


def accidental_parts(zoning: Zoning, zone: Zone) -> tuple[str, ...]:
    """Parts that join hot and cold by accident within a zone, sorted by name."""
    doors = zoning.piping.doors
    return tuple(sorted({d.part for d in doors if not d.is_valve and zoning.zone_of[d.start] == zone}))
