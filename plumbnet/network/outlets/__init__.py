"""Ways out of a zone: the ladder of what opens, what stands against the water, what shuts it in if closed."""

from plumbnet.network.outlets.crossover import accidental_parts, open_without_accident
from plumbnet.network.outlets.cut_sets import CutSets, Stops
from plumbnet.network.outlets.isolation_valves import Closings, IsolationValves, closing
from plumbnet.network.outlets.ladder import MOST_RUNGS, Climber, Opening, Rung, first_opens_pa, floor_pa, openings
from plumbnet.network.outlets.paths import Paths
from plumbnet.network.outlets.reachability import DevicesFrom, devices_between, pushing_into, reach

__all__ = [
    "MOST_RUNGS",
    "Climber",
    "Closings",
    "CutSets",
    "DevicesFrom",
    "IsolationValves",
    "Opening",
    "Paths",
    "Rung",
    "Stops",
    "accidental_parts",
    "closing",
    "devices_between",
    "first_opens_pa",
    "floor_pa",
    "open_without_accident",
    "openings",
    "pushing_into",
    "reach",
]
