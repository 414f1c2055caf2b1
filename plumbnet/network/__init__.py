"""Where water may move: passages, zones and gates, pressures, ways out, loops. Knows no physics, no rules.

`Network` asks each question of the graph once: `piping` contracts it to zones and gates, `pressure` finds what stands
in them, `outlets` what lets water out and what stops it, `loops` what a pump drives round and every heater warms.
"""

from plumbnet.network.network import LowestFixture, Network, network_of

__all__ = ["LowestFixture", "Network", "network_of"]
