"""Piping to zones: free passages contracted, and the gates that are left between zones."""

import math
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass, field

from plumbnet.network.graphs import groups
from plumbnet.network.piping.piping import Gate, Node, Piping, Site, Way

Zone = int
"""A pressure zone, numbered by its first node: all water that communicates through free passages."""
Cell = int
"""A piece of a zone between doors, numbered by its first node."""


@dataclass(frozen=True, slots=True)
class Crossing:
    """A gate in one direction, from zone `near` to zone `far`, at its nodes; `way` is None where it is closed."""

    gate: Gate
    near: Zone
    far: Zone
    leaves: Node
    enters: Node
    way: Way | None

    @property
    def part(self) -> str:
        """The device that is crossed."""
        return self.gate.part

    @property
    def is_forward(self) -> bool:
        """Whether this is the gate's own direction, in which its pump or reducer works."""
        return self.leaves == self.gate.start

    @property
    def is_bypass(self) -> bool:
        """Whether water would pass here back through the bypass of a reducer."""
        forward = self.gate.forward
        return not self.is_forward and forward is not None and forward.below_pa < math.inf


@dataclass(frozen=True, slots=True)
class Zoning:
    """Zones and cells of each node, crossings out of and into each zone, and the outlets of each zone.

    `inner` are the crossings of gates that lead back into their own zone, between two of its cells: they
    change no pressure, but count once a door between those cells is thought shut.
    """

    piping: Piping
    zone_of: list[Zone]
    cell_of: list[Cell]
    zone_count: int
    out: dict[Zone, list[Crossing]] = field(default_factory=lambda: defaultdict(list))
    into: dict[Zone, list[Crossing]] = field(default_factory=lambda: defaultdict(list))
    inner: list[Crossing] = field(default_factory=list)
    sites: dict[Zone, list[Site]] = field(default_factory=lambda: defaultdict(list))

    def crossings(self) -> Iterator[Crossing]:
        """Every gate between two zones, once in each direction."""
        for zone in sorted(self.out):
            yield from self.out[zone]

    def both_ways(self, gate: Gate) -> tuple[Crossing, Crossing]:
        """A gate once in each direction, whatever it stands between."""
        start, end = self.zone_of[gate.start], self.zone_of[gate.end]
        return (
            Crossing(gate, start, end, gate.start, gate.end, gate.forward),
            Crossing(gate, end, start, gate.end, gate.start, gate.backward),
        )

    def cell_crossings(self) -> Iterator[Crossing]:
        """Every gate between two cells, once in each direction."""
        yield from self.crossings()
        yield from self.inner


def zoning_of(piping: Piping) -> Zoning:
    """Contract the free passages of `piping`; a gate back into its own cell is left out."""
    cell_of, cell_count = groups(len(piping.ports), piping.plain)
    zone_of_cell, zone_count = groups(cell_count, ((cell_of[door.start], cell_of[door.end]) for door in piping.doors))
    zone_of = [zone_of_cell[cell] for cell in cell_of]
    zoning = Zoning(piping, zone_of, cell_of, zone_count)
    for gate in piping.gates:
        _add_crossings(zoning, gate)
    for site in piping.sites():
        zoning.sites[zone_of[site.node]].append(site)
    return zoning


def _add_crossings(zoning: Zoning, gate: Gate) -> None:
    both = zoning.both_ways(gate)
    if both[0].near == both[0].far:
        if zoning.cell_of[gate.start] != zoning.cell_of[gate.end]:
            zoning.inner.extend(both)
        return
    for crossing in both:
        zoning.out[crossing.near].append(crossing)
        zoning.into[crossing.far].append(crossing)
