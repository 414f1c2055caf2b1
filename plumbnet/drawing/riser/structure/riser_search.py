"""Chains to those that are risers: they climb to another storey."""

from collections.abc import Mapping, Sequence

from plumbnet.drawing.items import BuildingFacts, Diagram
from plumbnet.drawing.riser.structure.riser_chains import Chain
from plumbnet.drawing.riser.structure.trunk_heights import TALL_M
from plumbnet.layout.model import End

_STOREY_SHARE = 0.75
"""Of the usual climb: what a pipe to a fixture must climb to be a riser of its own."""
_STOREY_M = 2.4


def risers_among(
    diagram: Diagram, building: BuildingFacts, height: Mapping[str, float], chains: Sequence[Chain]
) -> tuple[Chain, ...]:
    """The chains that climb to another storey, in their order.

    Between joints and equipment 1.8 m are enough. To a fixture or a mixing valve it takes three quarters of the usual
    climb of the building: a shower head 2 m above its tee is no storey.
    """

    def climb(chain: Chain) -> float:
        return height[chain.high.part] - height[chain.low.part]

    def is_firm(end: End) -> bool:
        return diagram.items[end.part].symbol.is_joint or building.parts[end.part].is_equipment

    sure = {chain.number for chain in chains if all(map(is_firm, chain.ends)) and climb(chain) >= TALL_M}
    steps = sorted(
        climb(chain)
        for chain in chains
        if chain.number in sure and not any(building.parts[end.part].is_equipment for end in chain.ends)
    )
    usual = steps[len(steps) // 2] if steps else _STOREY_M
    least = max(TALL_M, _STOREY_SHARE * usual)
    return tuple(chain for chain in chains if chain.number in sure or climb(chain) >= least)
