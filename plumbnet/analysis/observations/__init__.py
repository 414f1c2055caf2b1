"""What a layout shows beside the verdicts: outlets, reducers, relief valves, pumps, lowest pressures, assumptions."""

from plumbnet.analysis.observations.assumptions import GAS, assumed
from plumbnet.analysis.observations.backflow_to_main import returns
from plumbnet.analysis.observations.cold_feed_facts import cold_feeds
from plumbnet.analysis.observations.fill_joints import fills
from plumbnet.analysis.observations.hot_water_stores import stores
from plumbnet.analysis.observations.idle_pumps import hindered_pumps
from plumbnet.analysis.observations.least_pressure import lows
from plumbnet.analysis.observations.outlet_facts import outlets
from plumbnet.analysis.observations.pump_up import PumpUp
from plumbnet.analysis.observations.reducer_facts import reducers
from plumbnet.analysis.observations.relief_facts import reliefs, relieved_by
from plumbnet.analysis.observations.shut_in_water import heater_waters, shut_in
from plumbnet.analysis.observations.tank_servicing import tank_service

__all__ = [
    "GAS",
    "PumpUp",
    "assumed",
    "cold_feeds",
    "fills",
    "heater_waters",
    "hindered_pumps",
    "lows",
    "outlets",
    "reducers",
    "reliefs",
    "relieved_by",
    "returns",
    "shut_in",
    "stores",
    "tank_service",
]
