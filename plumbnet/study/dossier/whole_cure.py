"""The first remedy of each list drawn in together, and what single events would then change."""

from dataclasses import dataclass

from plumbnet.analysis import Report
from plumbnet.study.contingency import Sweep, sweep
from plumbnet.study.remedies import MOST_PARTS, AllTogether, Found, all_together, remedy_lists


@dataclass(frozen=True, slots=True)
class CuredWhole:
    """Chosen remedies made together, and the sweep of the layout then; None of one so large that it takes long."""

    together: AllTogether
    swept: Sweep | None


def cured_whole(report: Report, found: Found) -> CuredWhole | None:
    """What the chosen remedies make of a layout; None where there are not two lists of them, or no choice does."""
    together = all_together(report, remedy_lists(report.heaters, found))
    if together is None:
        return None
    is_small = len(together.after.system.parts) <= MOST_PARTS
    return CuredWhole(together, sweep(together.after) if is_small else None)
