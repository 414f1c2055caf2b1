"""A number to the pressures at which anything may turn while it strays, as a gauge at its part would read them."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from plumbnet.analysis import Report
from plumbnet.analysis.equilibrium import Limits
from plumbnet.layout.model import Boosting, End, Part, Reducing
from plumbnet.physics.fluids import ATMOSPHERE_PA

CLOSE_PA = 100.0
"""Pressures nearer to each other than this are one."""


@dataclass(frozen=True)
class PressureEvents:
    """What pressures in a layout may meet: limits, sets, charges, supplies, and the least at taps."""

    report: Report

    def at(self, part: str) -> list[float]:
        """Those that a pressure of a part may meet, gauge at the part, ascending; its own are none.

        The charge of a tank meets only what stands before the tank: below it the tank holds water when all is cold.
        """
        head_pa = self._heads_pa[next(self.report.network.piping.nodes_of(part))]
        if self.report.system.parts[part].cushion() is not None:
            met = self._standing(part)
        else:
            met = [*self._limits, *self._heights]
            met += [each for name, own in self._of_parts.items() if name != part for each in own]
            met += [each - rise_pa for rise_pa in self._rises for each in met]
        return [each - head_pa for each in _once(met)]

    @property
    def _heads_pa(self) -> list[float]:
        return self.report.network.piping.heads_pa

    def _standing(self, tank: str) -> list[float]:
        """What stands at a tank, and what its supply may fall to, at datum."""
        network = self.report.network
        zone = network.zoning.zone_of[next(network.piping.nodes_of(tank))]
        stands = (network.standing.static_pa[zone], network.standing.cut_in_pa[zone])
        return [each for each in stands if each is not None]

    @cached_property
    def _limits(self) -> list[float]:
        limits = Limits(self.report.network, self.report.rules)
        return [limit.pressure_pa for limit in limits.of_zone.values()]

    @cached_property
    def _heights(self) -> list[float]:
        """What just fills the piping to each height, and what air pressure alone lifts to it, at datum."""
        heads_pa = sorted(set(self._heads_pa))
        return [*heads_pa, *(head_pa - ATMOSPHERE_PA for head_pa in heads_pa)]

    @cached_property
    def _of_parts(self) -> dict[str, list[float]]:
        return {name: list(self._of(name, part)) for name, part in self.report.system.parts.items()}

    def _of(self, name: str, part: Part) -> Iterator[float]:
        """Where a part opens, shuts, supplies, begins to take water, or lacks water, at datum."""
        source = part.source()
        if source is not None:
            yield from (self._head(name, source.port) + each for each in (source.pressure_pa, source.cut_in_pa))
        yield from (self._head(name, one.port) + one.opens_pa for one in part.outlets())
        for passage in part.passages():
            if isinstance(passage, Reducing):
                yield self._head(name, passage.outlet) + passage.set_pa
        least_pa = self.report.profile_of(name).least_at_tap.value_pa
        for port in part.draws_at():
            yield from (self._head(name, port), self._head(name, port) + least_pa)

    def _head(self, name: str, port: str) -> float:
        return self._heads_pa[self.report.network.piping.node_of[End(name, port)]]

    @cached_property
    def _rises(self) -> list[float]:
        parts = self.report.system.parts.values()
        return [each.rise_pa for part in parts for each in part.passages() if isinstance(each, Boosting)]


def _once(pressures_pa: list[float]) -> list[float]:
    found: list[float] = []
    for each in sorted(pressures_pa):
        if not found or each > found[-1] + CLOSE_PA:
            found.append(each)
    return found
