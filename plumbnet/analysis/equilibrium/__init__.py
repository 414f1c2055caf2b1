"""Zones of a network with their water, walls and tanks to the pressures they come to, and the limits they must keep."""

from plumbnet.analysis.equilibrium.heating_range import Unanswerable, cold_k, grows_m3, heated_abs_pa, unknown_water
from plumbnet.analysis.equilibrium.limit_breaches import LimitBreach, broken_places
from plumbnet.analysis.equilibrium.limits import Limits
from plumbnet.analysis.equilibrium.neighbourhood import RAISED_PA, Highest, Neighbourhood
from plumbnet.analysis.equilibrium.neighbourhoods import Neighbourhoods
from plumbnet.analysis.equilibrium.shared_tanks import CoupledGroup, Share, SharedTanks
from plumbnet.analysis.equilibrium.zone_loads import ZoneLoads

__all__ = [
    "RAISED_PA",
    "CoupledGroup",
    "Highest",
    "LimitBreach",
    "Limits",
    "Neighbourhood",
    "Neighbourhoods",
    "Share",
    "SharedTanks",
    "Unanswerable",
    "ZoneLoads",
    "broken_places",
    "cold_k",
    "grows_m3",
    "heated_abs_pa",
    "unknown_water",
]
