"""Zones with heated water and tanks, joined by one-way gates: the pressure at which all settle at once."""

from plumbnet.physics.equilibrium.equilibrium import (
    OneWayGate,
    Pool,
    ZoneLoad,
    joined_zones,
    settle,
    settle_safely,
    shortage,
)
from plumbnet.physics.equilibrium.flow import FlowGraph

__all__ = ["FlowGraph", "OneWayGate", "Pool", "ZoneLoad", "joined_zones", "settle", "settle_safely", "shortage"]
