"""A heater to its warm-ups: as the layout is, and once it is cured."""

from dataclasses import dataclass

from plumbnet.analysis import Report
from plumbnet.analysis.warmup import HeaterWarmup, NoWarmUp, typical_warm_up, warm_up
from plumbnet.study.remedies import Proposal, with_tank


@dataclass(frozen=True, slots=True)
class WarmUps:
    """The warm-ups of a heater that stand beside each other.

    `cured` is that with a remedy of the title `remedy`, with typical walls alone; None where nothing is proposed, or
    where it cannot be warmed up then.
    """

    as_it_is: HeaterWarmup
    cured: HeaterWarmup | None = None
    remedy: str = ""


def warm_ups(report: Report, heater: str, proposal: Proposal | None) -> WarmUps:
    """The warm-up of a heater, and that with a proposal. Raises NoWarmUp (analysis.warmup)."""
    as_it_is = warm_up(report, heater)
    if proposal is None:
        return WarmUps(as_it_is)
    try:
        return WarmUps(as_it_is, typical_warm_up(proposal.after, heater), proposal.remedy.title)
    except NoWarmUp:
        return WarmUps(as_it_is)


def warm_ups_with_tank(report: Report, heater: str) -> WarmUps:
    """The same, a heater in trouble cured by a tank, or else by its first remedy. Raises NoWarmUp."""
    return warm_ups(report, heater, with_tank(report, heater))
