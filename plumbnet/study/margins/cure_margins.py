"""Remedies to how far they hold: charges, sets and supplies of the layout with the first remedy of each heater."""

from collections.abc import Iterator

from plumbnet.analysis import Report
from plumbnet.budgets import Budget
from plumbnet.study.margins.margin import CureMargins
from plumbnet.study.margins.margin_trials import MarginTrials
from plumbnet.study.margins.number_margins import number_margins
from plumbnet.study.margins.uncertain_numbers import uncertain_numbers
from plumbnet.study.remedies import Found, with_remedy

MOST_CURES = 4
"""Heaters whose cure is looked at."""


def cures_of(report: Report, found: Found, heater: str | None, budget: Budget) -> Iterator[CureMargins]:
    """How far each first remedy holds, each once; those of `heater` alone, or of all where that is None.

    Only pressures are tried, for it is they that a gauge reads: of the heater that is cured its verdict and errors.
    Raises Spent (budgets) where the budget ends before all is told.
    """
    told = set[str]()
    for name, own in found.items():
        if own and heater in {None, name} and own[0].title not in told and len(told) < MOST_CURES:
            told.add(own[0].title)
            after = with_remedy(report, own[0]).after
            pressures = [one for one in uncertain_numbers(after) if one.is_pressure]
            margins = number_margins(MarginTrials(after, name, budget=budget), pressures)
            yield CureMargins(name, own[0].title, tuple(margins))
