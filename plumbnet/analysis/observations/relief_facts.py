"""Relief valves: which heater each one touches, and its set beside the ratings, the static pressure and other sets."""

import math
from collections.abc import Iterator

from plumbnet.layout.model import Role
from plumbnet.network import Network
from plumbnet.network.loops import HeatedVolume
from plumbnet.network.outlets import first_opens_pa
from plumbnet.network.piping import Node, Site
from plumbnet.rules.facts import ReliefFacts


def reliefs(network: Network, role: Role) -> Iterator[ReliefFacts]:
    """Every relief valve of a role, in the order of the file. Linear.

    One that guards what it touches and lets its growth off besides counts as a safety relief valve.
    """
    sites = [site for site in network.sites if _role(site) is role]
    lowest_pa = first_opens_pa(network.openings, lambda each: each is Role.SAFETY_RELIEF)
    for site in sites:
        safety_pa = lowest_pa.get(network.zoning.zone_of[site.node])
        yield _relief(network, site, tuple(sorted(network.neighbours(site.node))), safety_pa)


def _role(site: Site) -> Role:
    return Role.SAFETY_RELIEF if site.outlet.is_safety else site.outlet.role


def _relief(network: Network, site: Site, touches: tuple[str, ...], safety_pa: float | None) -> ReliefFacts:
    parts, head_pa = network.piping.system.parts, network.piping.heads_pa[site.node]
    zone = network.zoning.zone_of[site.node]
    static_pa = network.standing.static_pa[zone]
    rating_pa, rated = _lowest_rating(network, touches, head_pa)
    sources = [source for name in touches if (source := parts[name].heat()) is not None]
    inputs = [source.input_w for source in sources if source.input_w is not None]
    return ReliefFacts(
        name=site.part,
        touches=touches,
        touches_vessel=any(parts[name].is_vessel for name in touches),
        set_pa=site.outlet.opens_pa,
        static_pa=None if static_pa is None else static_pa - head_pa,
        opens_k=site.outlet.opens_k,
        capacity_w=site.outlet.capacity_w,
        serves_w=math.fsum(inputs) if inputs else None,
        serves_k=max((source.hot_k for source in sources), default=None),
        rated=rated,
        rating_pa=rating_pa,
        safety_pa=None if safety_pa is None else safety_pa - head_pa,
        is_fed=zone in network.fed,
    )


def _lowest_rating(network: Network, names: tuple[str, ...], head_pa: float) -> tuple[float | None, str | None]:
    """The lowest rating among parts, gauge at a height given by its head, and the part that has it."""
    parts, piping = network.piping.system.parts, network.piping
    rated = [
        (rating_pa + piping.heads_pa[next(piping.nodes_of(name))] - head_pa, name)
        for name in names
        if (rating_pa := parts[name].rating_pa) is not None
    ]
    return min(rated, default=(None, None))


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
