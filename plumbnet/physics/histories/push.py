"""How high one zone lifts another that it pushes into through a row of one-way gates."""

import heapq
import math
from collections import deque
from collections.abc import Hashable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Generic, TypeVar

from plumbnet.physics.equilibrium import OneWayGate
from plumbnet.physics.vessels import Tank

Zone = TypeVar("Zone", bound=Hashable)


@dataclass(frozen=True, slots=True)
class Push:
    """A row of gates: what they need to open, all together, and the lowest pressure at which one of them shuts.

    `below_abs_pa` is absolute and stands in the last zone, as every other pressure stands at datum.
    """

    opens_pa: float = 0.0
    below_abs_pa: float = math.inf

    def through(self, gate: OneWayGate[Zone]) -> "Push":
        """The row with one gate more."""
        return Push(self.opens_pa + gate.opens_pa, min(self.below_abs_pa - gate.opens_pa, gate.below_abs_pa))

    def lifts_to_abs_pa(self, near_abs_pa: float) -> float:
        """What the last zone must at least stand at when the first stands at a pressure.

        >>> Push(10e3, 500e3).lifts_to_abs_pa(400e3), Push(10e3, 500e3).lifts_to_abs_pa(math.inf)
        (390000.0, 500000.0)
        """
        return min(near_abs_pa - self.opens_pa, self.below_abs_pa)

    def needs_abs_pa(self, far_abs_pa: float) -> float:
        """Pressure of the first zone from which on the last is lifted above one; infinite where it never is.

        >>> Push(10e3, 500e3).needs_abs_pa(390e3), Push(10e3, 500e3).needs_abs_pa(500e3)
        (400000.0, inf)
        """
        return far_abs_pa + self.opens_pa if far_abs_pa < self.below_abs_pa else math.inf

    def is_no_better_than(self, other: "Push") -> bool:
        """Whether another row opens no later and shuts no sooner."""
        return other.opens_pa <= self.opens_pa and other.below_abs_pa >= self.below_abs_pa


Pushes = tuple[Push, ...]
"""Rows of gates from one zone to another, none better than the next in both respects; nearly always one."""


def lifted_abs_pa(pushes: Pushes, near_abs_pa: float) -> float:
    """What the last zone must at least stand at, by whichever row lifts it most."""
    return max(push.lifts_to_abs_pa(near_abs_pa) for push in pushes)


def needed_abs_pa(pushes: Pushes, far_abs_pa: float) -> float:
    """Pressure of the first zone from which on the last is lifted above one, by whichever row does so first."""
    return min(push.needs_abs_pa(far_abs_pa) for push in pushes)


def as_felt(tank: Tank, pushes: Pushes, far_abs_pa: float) -> Iterator[Tank]:
    """A tank of the last zone, which stands at a pressure, as the first zone feels it: as tanks of its own.

    It begins later by what the gates need to open, and takes no more once one of them shuts.
    """
    start_abs_pa = far_abs_pa
    for push in sorted(pushes, key=lambda one: one.opens_pa):
        if push.below_abs_pa <= start_abs_pa:
            continue
        most = tank.most_m3
        if push.below_abs_pa < math.inf:
            at_shutting = tank.held_at_m3(push.below_abs_pa)
            most = at_shutting if most is None else min(most, at_shutting)
        yield Tank(tank.volume_m3, tank.charge_abs_pa, start_abs_pa + push.opens_pa, most, tank.head_pa + push.opens_pa)
        start_abs_pa = push.below_abs_pa


def let_go_abs_pa(own_abs_pa: Mapping[Zone, float], gates: Iterable[OneWayGate[Zone]]) -> dict[Zone, float]:
    """Pressure of each zone from which on some zone that it can push into, or itself, is lifted above its own level.

    `own_abs_pa` has that level of each zone, as an outlet there has; infinite where there is none. All are absolute and
    stand at datum. Linear but for a sort: what a row of gates needs is what each needs of the one before it.

    >>> let_go_abs_pa({"store": math.inf, "drain": 400e3}, [OneWayGate("store", "drain", opens_pa=10e3)])
    {'store': 410000.0, 'drain': 400000.0}
    """
    found, into = dict(own_abs_pa), dict[Zone, list[tuple[Zone, Push]]]()
    for gate in gates:
        into.setdefault(gate.far, []).append((gate.near, Push().through(gate)))
    order = {zone: number for number, zone in enumerate(found)}
    waiting = [(level, order[zone], zone) for zone, level in found.items() if level < math.inf]
    heapq.heapify(waiting)
    while waiting:
        level, _, zone = heapq.heappop(waiting)
        if level > found[zone]:
            continue
        for near, push in into.get(zone, ()):
            needed = push.needs_abs_pa(level)
            if needed < found[near]:
                found[near] = needed
                heapq.heappush(waiting, (needed, order[near], near))
    return found


@dataclass(frozen=True)
class Gates(Generic[Zone]):
    """The gates that lead out of each zone."""

    out: Mapping[Zone, Sequence[OneWayGate[Zone]]]

    @classmethod
    def of(cls, gates: Iterable[OneWayGate[Zone]]) -> "Gates[Zone]":
        """Gates by the zone that they lead out of."""
        out: dict[Zone, list[OneWayGate[Zone]]] = {}
        for gate in gates:
            out.setdefault(gate.near, []).append(gate)
        return cls(out)

    def pushes(self, start: Zone) -> dict[Zone, Pushes]:
        """Every zone that water of one can push into, itself first, with the rows of gates that lead there.

        Labels that are better in one respect are kept and carried on; a row that comes back to a zone it left opens
        nothing. Linear where one row to each zone is the best, as nearly always.
        """
        found: dict[Zone, Pushes] = {start: (Push(),)}
        waiting = deque([_Row(start, Push(), None)])
        while waiting:
            row = waiting.popleft()
            if row.push not in found[row.zone]:
                continue
            for gate in self.out.get(row.zone, ()):
                beyond = row.push.through(gate)
                known = found.get(gate.far, ())
                if any(beyond.is_no_better_than(other) for other in known) or (known and row.has_met(gate.far)):
                    continue
                found[gate.far] = (*(one for one in known if not one.is_no_better_than(beyond)), beyond)
                waiting.append(_Row(gate.far, beyond, row))
        return found


@dataclass(frozen=True, slots=True, eq=False)
class _Row(Generic[Zone]):
    """A zone come to, how it is pushed there, and the row it came by."""

    zone: Zone
    push: Push
    before: "_Row[Zone] | None"

    def has_met(self, zone: Zone) -> bool:
        """Whether a zone lies on the way; asked only where coming there again would look better."""
        row: _Row[Zone] | None = self
        while row is not None:
            if row.zone == zone:
                return True
            row = row.before
        return False
