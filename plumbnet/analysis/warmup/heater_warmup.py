"""A report and one of its heaters to a warm-up from cold, with all heaters that share its zones."""

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import pairwise
from typing import Literal, TypeAlias

from plumbnet.analysis.equilibrium import SharedTanks
from plumbnet.analysis.report import Report
from plumbnet.analysis.warmup.warmup_model import Fired, WarmupModel
from plumbnet.layout import shown
from plumbnet.layout.units import DAY
from plumbnet.physics.fluids import ATMOSPHERE_PA
from plumbnet.physics.vessels import USUAL_EFFICIENCY, thermal_expansion_m3_s
from plumbnet.physics.warmup import HIGHEST_COUPLED_PA, CoupledOutlet, Plant, WarmUp, WarmupHappening, slowest_s
from plumbnet.physics.warmup import simulate as run_warm_up
from plumbnet.rules import agreeing, listed

Walls: TypeAlias = Literal["rigid", "typical"]
"""Those that yield to nothing, and those of `physics.walls`: the truth lies between."""
LONGEST_MINUTES = 1440.0
"""A day: by then whatever is to happen has happened."""
LONGEST_DAYS = 365.0
"""Water that takes longer to its setpoint is not warmed in earnest."""


class NoWarmUp(ValueError):
    """A heater that cannot be warmed up; the text says why, and what would be needed."""


@dataclass(frozen=True)
class HeaterWarmup:
    """A warm-up of a heater, and of all others that fire with it: the one asked for first.

    `heads_pa` is what the pressure of its zone stands above that at each heater, tank and outlet itself; `plant` is
    what was run, and `rigid_run` what came of it with walls that yield to nothing (None: it was not asked for).
    """

    report: Report
    fired: tuple[Fired, ...]
    run: WarmUp
    heads_pa: Mapping[str, float]
    plant: Plant
    rigid_run: WarmUp | None = None
    walls: Walls = "typical"
    efficiency: float = USUAL_EFFICIENCY

    @cached_property
    def rigid(self) -> "HeaterWarmup":
        """The same warm-up with walls that yield to nothing: the other end of the bracket.

        Raises ValueError where it was not asked for.
        """
        if self.rigid_run is None:
            raise ValueError("this warm-up was run with typical walls alone")
        return replace(self, plant=self.plant.rigid, run=self.rigid_run, walls="rigid")

    def to_text(self) -> str:
        """What `plumbnet warmup` prints of it, in the units of the report; ends with a line break."""
        return shown(self, "text", str)

    @property
    def bracket(self) -> "tuple[HeaterWarmup, HeaterWarmup]":
        """Both ends: rigid walls, then typical ones."""
        return self.rigid, self

    @property
    def walls_matter(self) -> bool:
        """Whether rigid walls and typical ones come to anything different."""
        return self.rigid.run != self.run

    def temperatures_k(self, one: Fired) -> tuple[float, ...]:
        """Temperature of a heater's water at every moment."""
        return self.run.temperature_k(one.body)

    def pressures_pa(self, one: Fired) -> tuple[float, ...]:
        """Pressure at a heater at every moment, gauge."""
        return tuple(self.gauge_pa(one.name, pressure) for pressure in self.run.pressure_abs_pa(one.zone))

    def gauge_pa(self, name: str, pressure_abs_pa: float) -> float:
        """Pressure at a heater, tank or outlet, gauge, from that of its zone."""
        return pressure_abs_pa - ATMOSPHERE_PA - self.heads_pa[name]

    def hot_after_s(self, one: Fired) -> float | None:
        """Time at which a heater first reaches its setpoint; None where it does not."""
        event = self.run.first(WarmupHappening.SETPOINT_REACHED, one.name)
        return None if event is None else event.time_s

    @property
    def tanks(self) -> tuple[str, ...]:
        """The tanks that take part."""
        return tuple(sorted(self.run.moments[0].taken_m3))

    @property
    def outlets(self) -> tuple[str, ...]:
        """The outlets that let water out."""
        return tuple(sorted(self.run.books.lost_m3))

    @property
    def outlets_of_both(self) -> tuple[str, ...]:
        """The outlets that let water out at either end of the bracket."""
        return tuple(sorted({*self.outlets, *self.rigid.outlets}))

    def discharge_m3_s(self, outlet: str) -> float:
        """The greatest flow that an outlet lets out while the water warms."""
        flows = (
            (after.lost_m3.get(outlet, 0.0) - before.lost_m3.get(outlet, 0.0)) / (after.time_s - before.time_s)
            for before, after in pairwise(self.run.moments)
            if after.time_s > before.time_s
        )
        return max(flows, default=0.0)

    def published_m3_s(self, outlet: str) -> float:
        """The flow of `physics.relief_flow`, of the whole input of all that fire, each at its setpoint."""
        opens_abs_pa = next(one.opens_abs_pa for one in self._valves if one.name == outlet)
        return math.fsum(
            thermal_expansion_m3_s(one.hot_k, pressure_abs_pa=opens_abs_pa, heat_w=one.input_w) for one in self.fired
        )

    @property
    def _valves(self) -> tuple[CoupledOutlet, ...]:
        return tuple(outlet for basin in self.plant.basins.values() for outlet in basin.outlets)


def warm_up(report: Report, heater: str, *, minutes: float | None = None) -> HeaterWarmup:
    """The warm-up of a heater from its cold fill, with every fixture shut, until all is hot or for some minutes.

    It is run with typical walls and with rigid ones.
    All heaters whose water meets the same zones fire at once. No heat is lost, so times are the shortest there can
    be. Raises NoWarmUp for a heater that is not there, has no input, or does not fire while nothing is drawn.
    """
    typical = typical_warm_up(report, heater, minutes=minutes)
    until_s = None if minutes is None else 60.0 * minutes
    return replace(typical, rigid_run=run_warm_up(typical.plant.rigid, until_s=until_s))


def typical_warm_up(report: Report, heater: str, *, minutes: float | None = None) -> HeaterWarmup:
    """The same with typical walls alone. Raises NoWarmUp."""
    if minutes is not None and not 0.0 <= minutes <= LONGEST_MINUTES:
        raise NoWarmUp(f"a warm-up lasts from 0 to {LONGEST_MINUTES:g} minutes, not {minutes:g}")
    network = report.network
    chosen = next((heated for heated in network.heated if heated.name == heater), None)
    if chosen is None:
        raise NoWarmUp(f"no heater is called {heater}")
    if chosen.is_idle:
        raise NoWarmUp(
            f"{heater} fires only while water moves through it: with every fixture shut it stays cold, "
            "and nothing warms up"
        )
    stage = WarmupModel(report.rules, network, SharedTanks(network), chosen)
    _refuse_what_cannot_be_warmed(report, stage)
    until_s = None if minutes is None else 60.0 * minutes
    run = run_warm_up(stage.plant, until_s=until_s)
    return HeaterWarmup(report, tuple(stage.fired()), run, stage.heads_pa, stage.plant)


def _refuse_what_cannot_be_warmed(report: Report, stage: WarmupModel) -> None:
    """Raise NoWarmUp for heaters without input, with antifreeze, all but cold for ever, or at what nothing holds."""
    unknown = [heated.name for heated in stage.heaters if not heated.source.input_w]
    if unknown:
        example = "input: 40000 Btu/h" if report.facts.units == "us" else "input: 12 kW"
        raise NoWarmUp(
            f"{agreeing(unknown, 'lacks')} an input, so nothing says how fast the water warms: add one, such as "
            f"{example}; of a heater with a coil it is the heat that the coil gives"
        )
    mixed = [heated.name for heated in stage.heaters if heated.source.mixture is not None]
    if mixed:
        raise NoWarmUp(f"{agreeing(mixed, 'holds')} antifreeze, and a warm-up is known here for plain water only")
    if any(basin.static_abs_pa > HIGHEST_COUPLED_PA for basin in stage.plant.basins.values()):
        highest = report.facts.pressure(HIGHEST_COUPLED_PA)
        raise NoWarmUp(f"some of its water stands at more than {highest}, and nothing holds that: look at the supplies")
    if slowest_s(stage.plant) > LONGEST_DAYS * DAY:
        raise NoWarmUp(
            f"some of its water takes more than {LONGEST_DAYS:g} days to its setpoint: look at the input of "
            f"{listed([heated.name for heated in stage.heaters])}"
        )
