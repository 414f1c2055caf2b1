"""What stands in each zone with every fixture shut, whose pressure that is, and which reducers are passed by."""

from plumbnet.network.pressure.pressure_source import Feed, Giver, PressureSources
from plumbnet.network.pressure.pump_head import levelled
from plumbnet.network.pressure.reducer_bypass import way_past
from plumbnet.network.pressure.static_pressure import StaticPressures, spread_over_zones, standing_pressures

__all__ = [
    "Feed",
    "Giver",
    "PressureSources",
    "StaticPressures",
    "levelled",
    "spread_over_zones",
    "standing_pressures",
    "way_past",
]
