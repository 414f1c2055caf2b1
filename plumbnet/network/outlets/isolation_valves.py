"""Which open valves, shut alone or in pairs, would leave heated water no way out and no tank."""

from collections import defaultdict, deque
from collections.abc import Iterator
from collections.abc import Set as AbstractSet
from dataclasses import dataclass, field
from itertools import islice

from plumbnet.layout.model import Role
from plumbnet.network.graphs import Tree, dominators
from plumbnet.network.outlets.ladder import Opening, floor_pa
from plumbnet.network.piping import Cell, Zone, Zoning
from plumbnet.network.pressure import StaticPressures

MOST_CLOSINGS = 16
"""Sets of valves listed for one heater."""
MOST_VISITS = 20_000
"""Steps of search for pairs that one heater may cost; a heater that needs more is listed without them."""

_TAKES = frozenset({Role.STREET, Role.AIR, Role.TANK, Role.EXPANSION_RELIEF})
_Exit = tuple[Cell, str | None]
"""The next cell, and the valve passed on the way to it."""


@dataclass(frozen=True, slots=True)
class Closings:
    """Smallest sets of open valves whose closing leaves no outlet or tank within reach.

    Valves that do it alone come first, then pairs of others. `complete` is False where the pairs were too
    many to search.
    """

    sets: tuple[tuple[str, ...], ...]
    complete: bool = True


@dataclass
class IsolationValves:
    """Cells joined by valves and gates, for one bound.

    `exits` lead out of each cell, `ends` are cells with an outlet, `over` is the tree of dominators.
    """

    exits: dict[Cell, list[_Exit]] = field(default_factory=lambda: defaultdict(list))
    ends: set[Cell] = field(default_factory=set)
    over: Tree[Cell | str] = field(default_factory=dict)

    def closings(self, cell: Cell) -> Closings:
        """The smallest sets for water in `cell`; none where it reaches no outlet or tank as it is."""
        alone = tuple((valve,) for valve in sorted(self._dominators(cell)))
        search = _PairSearch(self, cell, frozenset(valve for (valve,) in alone))
        pairs = tuple(sorted(islice(search.pairs(), max(0, MOST_CLOSINGS - len(alone)))))
        return Closings(alone + pairs, complete=search.visits <= MOST_VISITS)

    def _dominators(self, cell: Cell) -> Iterator[str]:
        """Valves on every way out, by walking up the tree of dominators."""
        at: Cell | str | None = cell
        while at is not None and at in self.over:
            if isinstance(at, str) and at != _OUT:
                yield at.removeprefix(_VALVE)
            at = self.over[at]


_OUT = "out"
_VALVE = "valve "
_Backward = defaultdict[Cell | str, list[Cell | str]]


def closing(
    zoning: Zoning, standing: StaticPressures, openings: dict[Zone, list[Opening]], bound_pa: float
) -> IsolationValves:
    """The question prepared for all cells whose water may not pass `bound_pa` (datum).

    One tree of dominators over the whole layout answers for every single valve, searched from the outlets
    backwards.
    """
    found = IsolationValves()
    backward: _Backward = defaultdict(list)
    for zone, outlets in openings.items():
        for opening in outlets:
            if opening.site.outlet.role in _TAKES and opening.opens_pa <= max(bound_pa, standing.at(zone)):
                cell = zoning.cell_of[opening.site.node]
                found.ends.add(cell)
                backward[_OUT].append(cell)
    _join_doors(zoning, found, backward)
    _join_gates(zoning, standing, found, backward, bound_pa)
    found.over = dominators(backward, _OUT)
    return found


def _join_doors(zoning: Zoning, found: IsolationValves, backward: _Backward) -> None:
    for door in zoning.piping.doors:
        start, end = zoning.cell_of[door.start], zoning.cell_of[door.end]
        if start == end:
            continue
        valve = door.part if door.is_valve else None
        found.exits[start].append((end, valve))
        found.exits[end].append((start, valve))
        if valve is None:
            backward[start].append(end)
            backward[end].append(start)
        else:
            node = _VALVE + valve
            backward[start].append(node)
            backward[end].append(node)
            backward[node] += [start, end]


def _join_gates(
    zoning: Zoning, standing: StaticPressures, found: IsolationValves, backward: _Backward, bound_pa: float
) -> None:
    for crossing in zoning.cell_crossings():
        floor = floor_pa(crossing, standing)
        if floor is not None and floor <= bound_pa:
            near, far = zoning.cell_of[crossing.leaves], zoning.cell_of[crossing.enters]
            found.exits[near].append((far, None))
            backward[far].append(near)


@dataclass
class _PairSearch:
    """Pairs of valves that together cut a cell off: one on its shortest way, the other on what is then left."""

    graph: IsolationValves
    cell: Cell
    alone: frozenset[str]
    visits: int = 0

    def pairs(self) -> Iterator[tuple[str, ...]]:
        """Each pair once."""
        first_way = self._way(frozenset())
        seen: set[tuple[str, ...]] = set()
        for first in self._others(first_way):
            for second in self._others(self._way({first})):
                if self.visits > MOST_VISITS:
                    return
                pair = tuple(sorted((first, second)))
                if pair not in seen and self._way({first, second}) is None and self.visits <= MOST_VISITS:
                    seen.add(pair)
                    yield pair

    def _others(self, way: list[str] | None) -> list[str]:
        return [valve for valve in way or () if valve not in self.alone]

    def _way(self, shut: AbstractSet[str]) -> list[str] | None:
        """Valves on a shortest way to an outlet with `shut` closed; None where there is no way."""
        came: dict[Cell, _Exit | None] = {self.cell: None}
        queue = deque([self.cell])
        while queue:
            at = queue.popleft()
            if at in self.graph.ends:
                return _valves(came, at)
            for beyond, valve in self.graph.exits.get(at, ()):
                self.visits += 1
                if beyond not in came and valve not in shut:
                    came[beyond] = (at, valve)
                    queue.append(beyond)
            if self.visits > MOST_VISITS:
                return []
        return None


def _valves(came: dict[Cell, _Exit | None], at: Cell) -> list[str]:
    found: list[str] = []
    step = came[at]
    while step is not None:
        at, valve = step
        if valve is not None:
            found.append(valve)
        step = came[at]
    return found
