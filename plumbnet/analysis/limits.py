"""The limit of each zone: the lowest of the code's limit, part ratings, and relief sets less their margin."""

from plumbnet.layout.system import End
from plumbnet.network.piping import Node
from plumbnet.network.whole import Network
from plumbnet.network.zones import Zone
from plumbnet.rules.facts import Basis, Limit
from plumbnet.rules.profile import Profile

_BY: dict[Basis, str] = {"fixture": "fixture", "rating": "rating of", "relief": "margin below"}


def limits(network: Network, profile: Profile) -> dict[Zone, Limit]:
    """The limit of every zone that holds a fixture, a rated part or a safety relief valve, at datum.

    Each bound counts at its own height; of equal ones the first part by name. A plugged relief valve sets one as a
    sound one does: what it guards is no stronger for it. Linear.
    """
    found: dict[Zone, Limit] = {}

    def bound(node: Node, pressure_pa: float, basis: Basis) -> None:
        part = network.piping.ports[node].part
        zone = network.zoning.zone_of[node]
        at_datum = pressure_pa + network.piping.heads_pa[node]
        if zone not in found or (at_datum, part) < (found[zone].pressure_pa, found[zone].part):
            found[zone] = Limit(at_datum, f"{_BY[basis]} {part}", pressure_pa, part, basis)

    for name, part in network.piping.system.parts.items():
        for port in part.draws_at():
            bound(network.piping.node_of[End(name, port)], profile.distribution_limit.value_pa, "fixture")
        if part.rating_pa is not None:
            for node in network.piping.nodes_of(name):
                bound(node, part.rating_pa, "rating")
        for port, set_pa in part.safety_sets():
            bound(network.piping.node_of[End(name, port)], profile.highest_below_relief_pa(set_pa), "relief")
    return found


def limit_of(limits_found: dict[Zone, Limit], network: Network, node: Node, profile: Profile) -> Limit:
    """The limit of the zone at a node; where nothing sets one, the profile's highest pressure at that node."""
    fallback = profile.distribution_limit.value_pa + network.piping.heads_pa[node]
    return limits_found.get(network.zoning.zone_of[node]) or Limit(fallback, "no part here sets one: the profile's own")
