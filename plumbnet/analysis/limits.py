"""The limit of each zone: the lowest of the code's limit, part ratings, and relief sets less their margin."""

from plumbnet.layout.part import Role
from plumbnet.layout.system import End
from plumbnet.network.piping import Node
from plumbnet.network.whole import Network
from plumbnet.network.zones import Zone
from plumbnet.rules.facts import Limit
from plumbnet.rules.profile import Profile


def limits(network: Network, profile: Profile) -> dict[Zone, Limit]:
    """The limit of every zone that holds a fixture, a rated part or a safety relief valve, at datum.

    Each bound counts at its own height. Linear.
    """
    found: dict[Zone, Limit] = {}

    def bound(node: Node, pressure_pa: float, by: str) -> None:
        zone = network.zoning.zone_of[node]
        at_datum = pressure_pa + network.piping.heads_pa[node]
        if zone not in found or at_datum < found[zone].pressure_pa:
            found[zone] = Limit(at_datum, by, pressure_pa)

    for name, part in network.piping.system.parts.items():
        for port in part.draws_at():
            bound(network.piping.node_of[End(name, port)], profile.distribution_limit.value_pa, f"fixture {name}")
        if part.rating_pa is not None:
            for node in network.piping.nodes_of(name):
                bound(node, part.rating_pa, f"rating of {name}")
    for sites in network.zoning.sites.values():
        for site in sites:
            if site.outlet.role is Role.SAFETY_RELIEF:
                bound(site.node, site.outlet.opens_pa * profile.relief_share.value, f"margin below {site.part}")
    return found


def limit_of(limits_found: dict[Zone, Limit], network: Network, node: Node, profile: Profile) -> Limit:
    """The limit of the zone at a node; where nothing sets one, the profile's highest pressure at that node."""
    fallback = profile.distribution_limit.value_pa + network.piping.heads_pa[node]
    return limits_found.get(network.zoning.zone_of[node]) or Limit(fallback, "no part here sets one: the profile's own")
