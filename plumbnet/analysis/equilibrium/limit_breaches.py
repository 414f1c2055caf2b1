"""A heater and a zone of its water to the places in reach that its growth helps to bring above their limits."""

from collections.abc import Iterator
from dataclasses import dataclass

from plumbnet.analysis.equilibrium.limits import Limits
from plumbnet.analysis.equilibrium.neighbourhood import Neighbourhood
from plumbnet.network.piping import Node, Zone
from plumbnet.rules.facts import ROUNDING_PA, Limit


@dataclass(frozen=True, slots=True)
class LimitBreach:
    """A zone that comes above its own limit."""

    zone: Zone
    limit: Limit


def broken_places(limits: Limits, neighbourhood: Neighbourhood, heater: str, node: Node) -> Iterator[LimitBreach]:
    """Every zone in reach of a heater's water that comes above its own limit, and does so through this heater.

    Its water is looked at where it stands at `node`. Where nothing in reach sets a limit, the profile's counts there.
    """
    zone = limits.network.zoning.zone_of[node]
    for place in neighbourhood.reach(zone):
        limit = limits.of_zone.get(place)
        if limit is None and place == zone and not limits.at(node).part:
            limit = limits.at(node)
        if limit is None or not neighbourhood.passes(place, limit.pressure_pa + ROUNDING_PA):
            continue
        if neighbourhood.is_brought_by(place, heater, limit.pressure_pa):
            yield LimitBreach(place, limit)
