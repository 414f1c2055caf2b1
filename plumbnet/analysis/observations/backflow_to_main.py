"""Heaters whose growth goes back to the main: how much of it the building's own supply pipe holds, and how warm."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from networkx.utils import UnionFind

from plumbnet.analysis.equilibrium import Unanswerable, cold_k, grows_m3, heated_abs_pa, unknown_water
from plumbnet.layout.model import Role
from plumbnet.network import Network
from plumbnet.network.loops import HeatedVolume, Piece
from plumbnet.physics.fluids import OutsideWater
from plumbnet.physics.vessels import leaving_k, mixed_k
from plumbnet.rules.facts import HeaterFacts, ReturnFacts, Verdict


@dataclass(frozen=True, slots=True)
class _Way:
    """The way of one heater's growth to a main: the numbers of the building's own pipes on it."""

    heated: HeatedVolume
    main: str
    pipes: frozenset[int]


def returns(network: Network, heaters: Sequence[HeaterFacts]) -> Iterator[ReturnFacts]:
    """Each heater that is open to a main by itself, then all those whose ways to it meet.

    The pipe that touches the main is taken for the supplier's; every other pipe on the way is the building's own.
    """
    ways = list(_ways(network, heaters))
    yield from (_returned(network, [way]) for way in ways)
    for group in _meeting(ways):
        if len(group) > 1:
            yield _returned(network, group)


def _ways(network: Network, heaters: Sequence[HeaterFacts]) -> Iterator[_Way]:
    between: dict[frozenset[str], int] = {}
    for number, pipe in enumerate(network.piping.system.pipes):
        between.setdefault(frozenset((pipe.start.part, pipe.end.part)), number)
    for heated, heater in zip(network.heated, heaters, strict=True):
        way = heater.way_out
        if heater.verdict is Verdict.OPEN and way is not None and way.role is Role.STREET and not heated.is_idle:
            steps = (frozenset(pair) for pair in pairwise(way.way) if way.outlet not in pair)
            yield _Way(heated, way.outlet, frozenset(between[step] for step in steps if step in between))


def _meeting(ways: Sequence[_Way]) -> Iterator[list[_Way]]:
    """Ways to one main that have a pipe in common, in the order of their first."""
    joined: UnionFind[int] = UnionFind(range(len(ways)))
    first: dict[tuple[str, int], int] = {}
    for index, way in enumerate(ways):
        for pipe in sorted(way.pipes):
            joined.union(first.setdefault((way.main, pipe), index), index)
    groups: dict[int, list[_Way]] = {}
    for index, way in enumerate(ways):
        groups.setdefault(joined[index], []).append(way)
    yield from groups.values()


def _returned(network: Network, ways: Sequence[_Way]) -> ReturnFacts:
    warmed = _warmed([way.heated for way in ways])
    grown = [grows_m3(network, heated, piece.volume_m3, heated.hot_k(piece)) for heated, piece in warmed]
    own = frozenset().union(*(way.pipes for way in ways))
    held_m3 = math.fsum(network.piping.system.pipes[number].volume_m3 for number in sorted(own))
    expansion_m3 = math.fsum(grown)
    colds_k = [cold_k(network, network.zoning.zone_of[heated.inlet]) for heated, _ in warmed]
    leaves_k = _weighed([_leaving_k(network, heated, heated.hot_k(piece)) for heated, piece in warmed], grown)
    return ReturnFacts(
        main=ways[0].main,
        heaters=tuple(way.heated.name for way in ways),
        expansion_m3=expansion_m3,
        held_m3=held_m3,
        store_m3=math.fsum(piece.volume_m3 for _, piece in warmed),
        mixed_k=mixed_k(expansion_m3, held_m3, leaves_k=leaves_k, cold_k=_weighed(colds_k, grown)),
    )


def _warmed(heaters: Sequence[HeatedVolume]) -> list[tuple[HeatedVolume, Piece]]:
    """Each piece of water once, with the heater that warms it most."""
    most: dict[str, tuple[HeatedVolume, Piece]] = {}
    for heated in heaters:
        for piece in heated.pieces:
            other = most.get(piece.name)
            if other is None or heated.hot_k(piece) > other[0].hot_k(other[1]):
                most[piece.name] = (heated, piece)
    return list(most.values())


def _leaving_k(network: Network, heated: HeatedVolume, hot_k: float) -> float:
    cold = cold_k(network, network.zoning.zone_of[heated.inlet])
    try:
        return leaving_k(cold, hot_k, pressure_abs_pa=heated_abs_pa(network, heated))
    except OutsideWater as error:  # the growth of antifreeze is known at any pressure, that of water is not
        raise Unanswerable(heated.name, unknown_water(error, network.piping.system.units)) from error


def _weighed(values: Sequence[float], weights: Sequence[float]) -> float:
    """The mean of values by weight; the first where nothing weighs."""
    total = math.fsum(weights)
    return math.fsum(v * w for v, w in zip(values, weights, strict=True)) / total if total else values[0]
