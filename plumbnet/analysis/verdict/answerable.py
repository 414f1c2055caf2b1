"""What has to be so before anything can be computed of a building: its water stands, and its heaters can be counted."""

from plumbnet.analysis.equilibrium import Neighbourhoods, Unanswerable
from plumbnet.budgets import MOST_COUPLED, MOST_WARMED
from plumbnet.layout.model import Role
from plumbnet.network import Network
from plumbnet.network.piping import Zone
from plumbnet.physics.fluids import ATMOSPHERE_PA


def demand_standing_water(network: Network) -> None:
    """Raise Unanswerable where the supply cannot lift water to the top of the piping round a heater.

    Pipes that end in the air, as a vent does, may stand empty at the top.
    """
    tops_pa = dict[Zone, float]()
    airy = {site.node for site in network.sites if site.outlet.role is Role.AIR}
    for node, (zone, head_pa) in enumerate(zip(network.zoning.zone_of, network.piping.heads_pa, strict=True)):
        if node not in airy:
            tops_pa[zone] = max(tops_pa.get(zone, head_pa), head_pa)
    for heated in network.heated:
        zone = network.zoning.zone_of[heated.inlet]
        if network.start_pa(zone) - tops_pa[zone] <= -ATMOSPHERE_PA:
            raise Unanswerable(
                heated.name, "its piping reaches higher than the supply can lift water; look at the elevations"
            )


def demand_few_warm_alike(network: Network) -> None:
    """Raise Unanswerable where so many heaters warm the same water that the budgets have no room to count it for each.

    That is so where a thousand and more stand on one loop.
    """
    warmed = sum(len(heated.pieces) for heated in network.heated)
    if warmed > MOST_WARMED:
        most = max(network.heated, key=lambda heated: len(heated.pieces))
        raise Unanswerable(
            most.name,
            f"so many heaters warm the same loops that {warmed:,} pieces of water would have to be counted, heater by "
            f"heater; up to {MOST_WARMED:,} are, so write the building as several layouts",
        )


def demand_few_coupled(network: Network, neighbourhoods: Neighbourhoods) -> None:
    """Raise Unanswerable where more heated zones push into the same water than the budgets have."""
    for zone, heated in sorted(network.heated_in.items()):
        count = neighbourhoods.of(zone).companions(zone)
        if count > MOST_COUPLED:
            raise Unanswerable(
                heated[0].name,
                f"{count:,} zones with heaters push into each other's water through one-way devices; up to "
                f"{MOST_COUPLED:,} are computed together, so write the building as several layouts",
            )
