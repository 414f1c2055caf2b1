"""Zones joined step by step, and heights that fit the steps."""

from collections.abc import Collection, Iterable
from dataclasses import dataclass

from plumbnet.network.piping.zones import Zone

POTENTIAL_ROUNDING_PA = 1e-3
"""Sums of the same few pressures in another order differ by less."""


@dataclass(frozen=True, slots=True)
class PotentialStep:
    """Two zones that gates join, and by how much the near one stands higher when water passes to the far one."""

    near: Zone
    far: Zone
    higher_pa: float

    @property
    def pair(self) -> tuple[Zone, Zone]:
        """Its zones."""
        return self.near, self.far


@dataclass(frozen=True, slots=True)
class Potentials:
    """Heads to add to the pressures of zones, so that water which passes a step moves between equal pressures.

    Where two ways between the same zones differ, no heights fit both; the steps `left_out` fit them not.
    """

    lifts_pa: dict[Zone, float]
    left_out: tuple[PotentialStep, ...] = ()


def fitted(zones: Collection[Zone], steps: Iterable[PotentialStep]) -> Potentials:
    """Heights that fit the steps in their order, of each that can still be fitted. Near-linear.

    Of zones that the steps join, the one with the lowest number stands at no height.
    """
    lifts, group_of = dict.fromkeys(zones, 0.0), {zone: [zone] for zone in zones}
    left_out = [step for step in steps if not _fits(step, lifts, group_of)]
    for group in {id(group): group for group in group_of.values()}.values():
        lowest_pa = lifts[min(group)]
        for zone in group:
            lifts[zone] -= lowest_pa
    return Potentials(lifts, tuple(left_out))


def _fits(step: PotentialStep, lifts: dict[Zone, float], group_of: dict[Zone, list[Zone]]) -> bool:
    """Whether the lifts of the zones joined so far fit a step; where it joins two groups, the smaller is moved."""
    near, far = group_of[step.near], group_of[step.far]
    missed_pa = lifts[step.near] + step.higher_pa - lifts[step.far]
    if near is far:
        return abs(missed_pa) <= POTENTIAL_ROUNDING_PA
    moved, kept, by_pa = (far, near, missed_pa) if len(far) <= len(near) else (near, far, -missed_pa)
    for zone in moved:
        lifts[zone] += by_pa
        group_of[zone] = kept
    kept += moved
    return True
