"""A report to its remedies: changes tried on a copy that cure a heater and break nothing, least work first."""

from plumbnet.study.remedies.checked_file import Checked
from plumbnet.study.remedies.numbering import UnknownRemedy, remedy_numbered
from plumbnet.study.remedies.proposal import with_remedy, with_tank
from plumbnet.study.remedies.remedy import MOST_PARTS, Found, Proposal, Remedy
from plumbnet.study.remedies.remedy_search import remedies_if_small
from plumbnet.study.remedies.scenario import as_scenario, scenario_text
from plumbnet.study.remedies.tank_placement import TankPlan, plans

__all__ = [
    "MOST_PARTS",
    "Checked",
    "Found",
    "Proposal",
    "Remedy",
    "TankPlan",
    "UnknownRemedy",
    "as_scenario",
    "plans",
    "remedies_if_small",
    "remedy_numbered",
    "scenario_text",
    "with_remedy",
    "with_tank",
]
