"""A report and one of its heaters to a warm-up from cold, with all heaters that share its zones."""

from dataclasses import dataclass

from plumbnet.analysis.report import Report
from plumbnet.analysis.settling import Settling
from plumbnet.analysis.staging import Fired, Stage
from plumbnet.network.whole import network_of
from plumbnet.physics.course import WarmUp
from plumbnet.physics.heating import USUAL_EFFICIENCY
from plumbnet.physics.warmup import warm_up as run_warm_up
from plumbnet.rules.sentences import agreeing


class NoWarmUp(ValueError):
    """A heater that cannot be warmed up; the text says why, and what would be needed."""


@dataclass(frozen=True, slots=True)
class Warming:
    """A warm-up of a heater, and of all others that fire with it: the one asked for first."""

    report: Report
    fired: tuple[Fired, ...]
    efficiency: float
    run: WarmUp


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
    network = network_of(report.system)
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
    return Warming(report, tuple(stage.fired()), efficiency, run)


def _refuse_what_cannot_be_warmed(report: Report, stage: Stage) -> None:
    """Raise NoWarmUp for heaters without input, or with antifreeze in them."""
    unknown = [heated.name for heated in stage.heaters if heated.source.input_w is None]
    if unknown:
        example = "input: 40000 Btu/h" if report.facts.units == "us" else "input: 12 kW"
        raise NoWarmUp(
            f"{agreeing(unknown, 'lacks')} an input, so nothing says how fast the water warms: add one, such as "
            f"{example}; of a heater with a coil it is the heat that the coil gives"
        )
    mixed = [heated.name for heated in stage.heaters if heated.source.mixture is not None]
    if mixed:
        raise NoWarmUp(f"{agreeing(mixed, 'holds')} antifreeze, and a warm-up is known here for plain water only")
