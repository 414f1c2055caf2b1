"""The network to its outlets, each with the pressure at its own height at which it takes water."""

from collections.abc import Iterator

from plumbnet.network import Network
from plumbnet.rules.facts import OutletFacts


def outlets(network: Network) -> Iterator[OutletFacts]:
    """Every outlet, by zones."""
    for zone in sorted(network.openings):
        for opening in network.openings[zone]:
            site = opening.site
            yield OutletFacts(site.part, site.outlet.role, opening.opens_pa - network.piping.heads_pa[site.node])
