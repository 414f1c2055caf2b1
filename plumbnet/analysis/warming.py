"""A report and one of its heaters to a warm-up from cold, with all heaters that share its zones."""

from collections.abc import Mapping
from dataclasses import dataclass

from scipy import constants

from plumbnet.analysis.report import Report
from plumbnet.analysis.settling import Settling
from plumbnet.analysis.staging import Fired, Stage
from plumbnet.physics.course import Happening, WarmUp
from plumbnet.physics.joined import HIGHEST_PA
from plumbnet.physics.usual import USUAL_EFFICIENCY
from plumbnet.physics.warmup import slowest_s
from plumbnet.physics.warmup import warm_up as run_warm_up
from plumbnet.physics.water import ATMOSPHERE_PA
from plumbnet.rules.sentences import agreeing, listed

LONGEST_MINUTES = 1440.0
"""A day: by then whatever is to happen has happened."""
LONGEST_DAYS = 365.0
"""Water that takes longer to its setpoint is not warmed in earnest."""


class NoWarmUp(ValueError):
    """A heater that cannot be warmed up; the text says why, and what would be needed."""


@dataclass(frozen=True, slots=True)
class Warming:
    """A warm-up of a heater, and of all others that fire with it: the one asked for first.

    `heads_pa` is what the pressure of its zone stands above that at each heater, tank and outlet itself.
    """

    report: Report
    fired: tuple[Fired, ...]
    efficiency: float
    run: WarmUp
    heads_pa: Mapping[str, float]

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
        event = self.run.first(Happening.SETPOINT_REACHED, one.name)
        return None if event is None else event.time_s

    @property
    def tanks(self) -> tuple[str, ...]:
        """The tanks that take part."""
        return tuple(sorted(self.run.moments[0].taken_m3))

    @property
    def outlets(self) -> tuple[str, ...]:
        """The outlets that let water out."""
        return tuple(sorted(self.run.books.lost_m3))


def warm_up(
    report: Report,
    heater: str,
    *,
    minutes: float | None = None,
    efficiency: float = USUAL_EFFICIENCY,
    step_s: float | None = None,
) -> Warming:
    """The warm-up of a heater from its cold fill, with every fixture shut, until all is hot or for some minutes.

    All heaters whose water meets the same zones fire at once. No heat is lost, so times are the shortest there can
    be. Raises NoWarmUp for a heater that is not there, has no input, or does not fire while nothing is drawn.
    """
    if minutes is not None and not 0.0 <= minutes <= LONGEST_MINUTES:
        raise NoWarmUp(f"a warm-up lasts from 0 to {LONGEST_MINUTES:g} minutes, not {minutes:g}")
    if not 0.0 < efficiency <= 1.0:
        raise NoWarmUp(f"an efficiency is more than 0, and at most 1: not {efficiency:g}")
    network = report.network
    chosen = next((heated for heated in network.heated if heated.name == heater), None)
    if chosen is None:
        raise NoWarmUp(f"no heater is called {heater}")
    if chosen.is_idle:
        raise NoWarmUp(
            f"{heater} fires only while water moves through it: with every fixture shut it stays cold, "
            "and nothing warms up"
        )
    stage = Stage(report.profile, network, Settling(network), chosen, efficiency)
    _refuse_what_cannot_be_warmed(report, stage)
    run = run_warm_up(stage.plant, until_s=None if minutes is None else 60.0 * minutes, step_s=step_s)
    return Warming(report, tuple(stage.fired()), efficiency, run, stage.heads_pa)


def _refuse_what_cannot_be_warmed(report: Report, stage: Stage) -> None:
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
    if any(basin.static_abs_pa > HIGHEST_PA for basin in stage.plant.basins.values()):
        highest = report.facts.pressure(HIGHEST_PA)
        raise NoWarmUp(f"some of its water stands at more than {highest}, and nothing holds that: look at the supplies")
    if slowest_s(stage.plant) > LONGEST_DAYS * constants.day:
        raise NoWarmUp(
            f"some of its water takes more than {LONGEST_DAYS:g} days to its setpoint: look at the input of "
            f"{listed([heated.name for heated in stage.heaters])}"
        )
