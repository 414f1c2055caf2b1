"""What an expansion tank ought to be charged to where it hangs."""

from plumbnet.layout.units import PRESSURE, parse_measure
from plumbnet.network import Network

BELOW_CUT_IN_PA = parse_measure("2 psi", PRESSURE, None)
"""A well's tank is charged this far below the cut-in. Source: common practice."""


def right_charge_pa(network: Network, tank: str) -> float:
    """The charge, gauge at the tank: the static pressure there, or on a well just below the cut-in."""
    node = next(network.piping.nodes_of(tank))
    zone, head_pa = network.zoning.zone_of[node], network.piping.heads_pa[node]
    cut_in_pa = network.standing.cut_in_pa[zone]
    own_pa = (network.standing.static_pa[zone] or 0.0) - head_pa
    return usual_charge_pa(own_pa, None if cut_in_pa is None else cut_in_pa - head_pa)


def usual_charge_pa(static_pa: float, cut_in_pa: float | None) -> float:
    """The charge of a tank under a static pressure that a pump lets fall to its cut-in, all gauge at the tank.

    >>> usual_charge_pa(400_000, None), round(usual_charge_pa(400_000, 200_000))
    (400000, 186210)
    """
    if cut_in_pa is not None and cut_in_pa < static_pa:
        return max(cut_in_pa - BELOW_CUT_IN_PA, 0.0)
    return max(static_pa, 0.0)
