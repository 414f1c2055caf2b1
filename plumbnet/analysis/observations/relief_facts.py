"""Relief valves: which heater each one touches, and its set beside the ratings, the static pressure and other sets."""

import math
from bisect import bisect_left
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from plumbnet.layout.model import HeatSource, Role
from plumbnet.network import Network
from plumbnet.network.loops import HeatedVolume
from plumbnet.network.outlets import first_opens_pa
from plumbnet.network.piping import Node, Site
from plumbnet.rules.facts import ReliefFacts


def reliefs(network: Network, role: Role) -> Iterator[ReliefFacts]:
    """Every relief valve of a role, in the order of the file.

    One that guards what it touches and lets its growth off besides counts as a safety relief valve.
    """
    lowest_pa = first_opens_pa(network.openings, lambda each: each is Role.SAFETY_RELIEF)
    joined: dict[frozenset[str], _Joined] = {}
    for site in network.sites:
        if _role(site) is role:
            names = network.joined(site.node)
            if names not in joined:
                joined[names] = _joined(network, names)
            yield _relief(network, site, joined[names], lowest_pa.get(network.zoning.zone_of[site.node]))


def _role(site: Site) -> Role:
    return Role.SAFETY_RELIEF if site.outlet.is_safety else site.outlet.role


@dataclass(frozen=True, slots=True)
class _Joined:
    """Parts that pipes and fittings alone join: names sorted, vessels, what heats, ratings at datum, lowest first."""

    names: tuple[str, ...]
    vessels: frozenset[str]
    sources: Mapping[str, HeatSource]
    ratings: tuple[tuple[float, str], ...]


def _joined(network: Network, names: frozenset[str]) -> _Joined:
    parts, piping = network.piping.system.parts, network.piping
    by_name = tuple(sorted(names))
    ratings = (
        (rating_pa + piping.heads_pa[next(piping.nodes_of(name))], name)
        for name in by_name
        if (rating_pa := parts[name].rating_pa) is not None
    )
    return _Joined(
        names=by_name,
        vessels=frozenset(name for name in by_name if parts[name].is_vessel),
        sources={name: source for name in by_name if (source := parts[name].heat()) is not None},
        ratings=tuple(sorted(ratings)),
    )


def _relief(network: Network, site: Site, joined: _Joined, safety_pa: float | None) -> ReliefFacts:
    own, head_pa, zone = site.part, network.piping.heads_pa[site.node], network.zoning.zone_of[site.node]
    static_pa, place = network.standing.static_pa[zone], bisect_left(joined.names, own)
    rating = next((rating for rating in joined.ratings if rating[1] != own), None)
    sources = [source for name, source in joined.sources.items() if name != own]
    inputs = [source.input_w for source in sources if source.input_w is not None]
    return ReliefFacts(
        name=own,
        touches=joined.names[:place] + joined.names[place + 1 :],
        touches_vessel=not joined.vessels <= {own},
        set_pa=site.outlet.opens_pa,
        static_pa=None if static_pa is None else static_pa - head_pa,
        opens_k=site.outlet.opens_k,
        capacity_w=site.outlet.capacity_w,
        serves_w=math.fsum(inputs) if inputs else None,
        serves_k=max((source.hot_k for source in sources), default=None),
        rated=None if rating is None else rating[1],
        rating_pa=None if rating is None else rating[0] - head_pa,
        safety_pa=None if safety_pa is None else safety_pa - head_pa,
        is_fed=zone in network.fed,
    )


def relieved_by(network: Network) -> dict[Node, tuple[str, ...]]:
    """For each heater's inlet the safety relief valves that only pipes and fittings join to its store."""
    safety = {site.part for site in network.sites if site.outlet.is_safety}
    found: dict[Node, tuple[str, ...]] = {}
    for heated in network.heated:
        beside = {name for node in _store_nodes(network, heated) for name in network.neighbours(node)}
        found[heated.inlet] = tuple(sorted(beside & safety))
    return found


def _store_nodes(network: Network, heated: HeatedVolume) -> list[Node]:
    """The ports that open into a heater's store."""
    own = set(network.piping.nodes_of(heated.name))
    return sorted({heated.inlet, *(own & set(network.piping.free[heated.inlet]))})
