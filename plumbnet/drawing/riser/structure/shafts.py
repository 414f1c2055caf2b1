"""Risers to their stacks and shafts: chains one above the other, and stacks that share a branch."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from networkx.utils import UnionFind

from plumbnet.drawing.palette import Service
from plumbnet.drawing.riser.structure.components import Component, RiserEnd
from plumbnet.drawing.riser.structure.riser_chains import Chain


@dataclass(frozen=True, slots=True)
class Riser:
    """Chains one above the other, from the lowest, all of one service."""

    number: int
    chains: tuple[Chain, ...]
    service: Service


@dataclass(frozen=True, slots=True)
class Shaft:
    """Risers that share a branch, and the branches on them by number, from the lowest level."""

    risers: tuple[Riser, ...]
    branches: tuple[int, ...]


def risers_of(
    chains: Sequence[Chain], components: Sequence[Component], height: Mapping[str, float]
) -> tuple[Riser, ...]:
    """At each joint of a branch a chain from below goes on as one from above, service by service."""
    together: UnionFind[int] = UnionFind(chain.number for chain in chains)
    for component in components:
        met: dict[tuple[str, Service], list[RiserEnd]] = defaultdict(list)
        for each in component.ends if not component.is_plant else ():
            met[each.end.part, each.chain.service].append(each)
        for ends in met.values():
            below = [each.chain.number for each in ends if not each.is_low]
            above = [each.chain.number for each in ends if each.is_low]
            for low, high in zip(below, above, strict=False):
                together.union(low, high)
    by_number = {chain.number: chain for chain in chains}
    found = []
    for number, group in enumerate(sorted(map(sorted, together.to_sets()))):
        ordered = sorted((by_number[one] for one in group), key=lambda chain: height[chain.low.part])
        found.append(Riser(number, tuple(ordered), ordered[0].service))
    return tuple(found)


def shafts_of(risers: Sequence[Riser], components: Sequence[Component]) -> tuple[Shaft, ...]:
    """The shafts in the order of their risers."""
    riser_of = {chain.number: riser.number for riser in risers for chain in riser.chains}
    met: UnionFind[int] = UnionFind(riser.number for riser in risers)
    hung: dict[int, list[Component]] = defaultdict(list)
    for component in components:
        if not component.is_plant:
            numbers = [riser_of[each.chain.number] for each in component.ends]
            for number in numbers[1:]:
                met.union(numbers[0], number)
            hung[numbers[0]].append(component)
    found = []
    for group in sorted(map(sorted, met.to_sets())):
        branches = sorted(
            (each for number in group for each in hung[number]), key=lambda each: (each.level, each.number)
        )
        found.append(Shaft(tuple(risers[number] for number in group), tuple(each.number for each in branches)))
    return tuple(found)
