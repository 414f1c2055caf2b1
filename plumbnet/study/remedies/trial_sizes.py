"""Which sizes of tank to try: from what a tank must take up, its charge and the limit at its height."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from plumbnet.physics.fluids import ATMOSPHERE_PA
from plumbnet.physics.vessels import NoTank, Tank, nominal_size_m3, tank_volume_m3

STEPS = 3
"""Sizes tried, the first that should do and the next larger: the charge is rounded as a gauge is read."""
MOST_TANKS = 8
"""Tanks of the largest size hung side by side, where one is not enough."""


@dataclass(frozen=True, slots=True)
class TrialDuty:
    """What a tank has to do: take up a volume from the static pressure to the limit, both gauge at the tank."""

    takes_m3: float
    static_pa: float
    limit_pa: float

    def least_m3(self, charge_pa: float) -> float | None:
        """Volume of the smallest tank with that charge; None where no tank can do it."""
        try:
            return tank_volume_m3(
                self.takes_m3,
                charge_abs_pa=charge_pa + ATMOSPHERE_PA,
                start_abs_pa=self.static_pa + ATMOSPHERE_PA,
                end_abs_pa=self.limit_pa + ATMOSPHERE_PA,
            )
        except NoTank:
            return None


def sizes_to_try(least_m3: float, sizes_m3: Sequence[float]) -> Iterator[tuple[float, ...]]:
    """Sizes of one tank, the smallest that does first; of several alike where no single one is large enough.

    >>> list(sizes_to_try(0.013, (0.008, 0.012, 0.02, 0.03))), list(sizes_to_try(0.05, (0.02, 0.03)))
    ([(0.02,), (0.03,)], [(0.03, 0.03), (0.03, 0.03, 0.03)])
    """
    first = nominal_size_m3(least_m3, sizes_m3)
    if first is not None:
        yield from ((size,) for size in sizes_m3[sizes_m3.index(first) :][:STEPS])
        return
    largest = sizes_m3[-1]
    count = math.ceil(least_m3 / largest)
    yield from ((largest,) * number for number in range(count, min(count + 2, MOST_TANKS + 1)))


def uptake_m3(tank: Tank, limit_pa: float) -> float:
    """Water that a tank at its own height takes up to a limit, gauge."""
    return tank.uptake_m3(limit_pa + ATMOSPHERE_PA)
