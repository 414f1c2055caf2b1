"""What a layout shows beside the verdicts: reducers, relief valves, pumps, lowest pressures, assumptions."""

from plumbnet.analysis.observations.assumptions import GAS, assumed
from plumbnet.analysis.observations.backflow_to_main import returns
from plumbnet.analysis.observations.idle_pumps import hindered_pumps
from plumbnet.analysis.observations.least_pressure import lows
from plumbnet.analysis.observations.pump_up import Pumping
from plumbnet.analysis.observations.reducer_facts import reducers
from plumbnet.analysis.observations.relief_facts import reliefs, relieved_by

__all__ = [
    "GAS",
    "Pumping",
    "assumed",
    "hindered_pumps",
    "lows",
    "reducers",
    "reliefs",
    "relieved_by",
    "returns",
]
