"""A report to its remedies: changes tried on a copy that cure a heater and break nothing, least work first."""

from plumbnet.study.remedies.checked_file import Checked
from plumbnet.study.remedies.fewest_tanks import TankPlan, plans
from plumbnet.study.remedies.proposal import with_remedy, with_tank
from plumbnet.study.remedies.remedy import MOST_PARTS, Found, Proposal, Remedy, UnknownRemedy, left_out, remedy_numbered
from plumbnet.study.remedies.remedy_search import remedies_if_small, remedies_of
from plumbnet.study.remedies.scenario import as_scenario, scenario_text
from plumbnet.study.remedies.together import AllTogether, RemedyList, all_together, remedy_lists

__all__ = [
    "MOST_PARTS",
    "AllTogether",
    "Checked",
    "Found",
    "Proposal",
    "Remedy",
    "RemedyList",
    "TankPlan",
    "UnknownRemedy",
    "all_together",
    "as_scenario",
    "left_out",
    "plans",
    "remedies_if_small",
    "remedies_of",
    "remedy_lists",
    "remedy_numbered",
    "scenario_text",
    "with_remedy",
    "with_tank",
]
