"""A report to its margins: each number that nobody knows exactly, and how far it may stray."""

from plumbnet.analysis import Report
from plumbnet.budgets import MARGINS_BESIDE_PAGE, Budget, Spent
from plumbnet.study.margins.cure_margins import cures_of
from plumbnet.study.margins.margin import Margins
from plumbnet.study.margins.margin_trials import MarginTrials
from plumbnet.study.margins.number_margins import number_margins
from plumbnet.study.margins.uncertain_numbers import uncertain_numbers
from plumbnet.study.remedies import Found

MOST_MARGINS = 120
"""Parts up to which margins are looked for beside a page or a sheet; more are left to those who ask for them."""


def margins_if_small(report: Report, *, heater: str | None = None, found: Found | None = None) -> Margins | None:
    """The margins of a layout of at most `MOST_MARGINS` parts; None for a larger one, and where they take long."""
    if len(report.system.parts) > MOST_MARGINS:
        return None
    try:
        return margins_of(report, heater=heater, found=found, budget=Budget(MARGINS_BESIDE_PAGE))
    except Spent:
        return None


def margins_of(
    report: Report, *, heater: str | None = None, found: Found | None = None, budget: Budget | None = None
) -> Margins:
    """How far each number of a layout may stray, the others as they are, before a verdict or an error turns.

    `heater` is the only one whose verdict and errors count; None for all. How far the first remedy of each heater in
    `found` holds is told, too. Cost: some 40 analyses for a house. Raises Spent (budgets) where a `budget` is given and
    ends before all is told.
    """
    budget = Budget() if budget is None else budget
    trials = MarginTrials(report, heater, budget=budget)
    numbers = tuple(number_margins(trials, uncertain_numbers(report)))
    cures = () if found is None else tuple(cures_of(report, found, heater, budget))
    return Margins(report, heater, numbers, trials.checks, cures)
