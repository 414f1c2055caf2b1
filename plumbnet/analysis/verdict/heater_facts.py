"""A heater's case to everything that a report says of the heater; pressures at its own height."""

from plumbnet.analysis.equilibrium import LimitBreach, grows_m3
from plumbnet.analysis.required_tank import ALWAYS
from plumbnet.analysis.verdict.case import Case
from plumbnet.analysis.verdict.locked_heater import locked
from plumbnet.layout.model import Role
from plumbnet.network.outlets import Closings, Rung, Stops
from plumbnet.network.piping import Zone
from plumbnet.physics.fluids import ATMOSPHERE_PA, OutsideWater, boiling_k
from plumbnet.physics.histories import History
from plumbnet.rules.facts import HeaterFacts, PlaceFacts, RungFacts, Verdict


def heater_facts(case: Case) -> HeaterFacts:
    """Everything a report says of the heater."""
    network, heated, verdict, head_pa = case.network, case.heated, case.verdict, case.head_pa
    static_pa, usual_pa = network.standing.static_pa[case.zone], network.standing.usual_pa[case.zone]
    own_m3 = sum(grows_m3(network, heated, volume_m3, hot_k) for hot_k, volume_m3 in heated.volumes_m3.items())
    closed = case.is_closed
    in_need = closed and network.is_whole
    share, ladder = case.share, tuple(_rung(case, rung) for rung in case.rungs)
    return HeaterFacts(
        name=heated.name,
        kind=network.piping.system.parts[heated.name].kind,
        line=network.piping.system.line_of(heated.name),
        verdict=verdict,
        static_pa=None if static_pa is None else static_pa - head_pa,
        usual_pa=None if usual_pa is None else usual_pa - head_pa,
        limit_pa=case.limit.pressure_pa - head_pa,
        limit_by=case.limit.by,
        limit_own_pa=case.limit.own_pa,
        cold_k=network.standing.cold_k[case.zone],
        hot_k=heated.source.hot_k,
        heated_volume_m3=heated.volume_m3,
        tempered_k=max((hot_k for hot_k in heated.volumes_m3 if hot_k < heated.source.hot_k), default=None),
        tempered_m3=sum(volume_m3 for hot_k, volume_m3 in heated.volumes_m3.items() if hot_k < heated.source.hot_k),
        expansion_m3=own_m3,
        shared_expansion_m3=own_m3 if share is None else share.expansion_m3,
        shares_with=() if share is None else tuple(name for name in share.heaters if name != heated.name),
        ladder=ladder,
        stopped_by=Stops(()) if verdict is Verdict.OPEN else network.stops(case.zone, case.bound_pa),
        closes_if_shut=_closings(case),
        loops=tuple(loop.parts for loop in heated.loops),
        settled_pa=None if case.settled_pa is None else case.settled_pa - head_pa,
        short_m3=case.tank.short_m3 if in_need else 0.0,
        need=case.tank.need if in_need else None,
        locked=locked(network, heated, case.zone, case.rungs, case.settling) if in_need else None,
        tanks=() if share is None else share.tanks,
        stands_at=network.piping.ports[case.node].part,
        is_cut_off=case.zone in network.standing.cut_off,
        on_flow=heated.source.on_flow,
        relieved_by=case.relieved_by,
        vented=_is_vented(case),
        open_by_accident=network.accidents(case.node, case.bound_pa) if verdict is Verdict.OPEN else (),
        open_by_bypass=network.bypasses(case.zone, case.bound_pa) if verdict is Verdict.OPEN else (),
        boils_k=_boils_k(case, static_pa),
        valves_to_tank=_valves_to_tank(case, ladder) if verdict is Verdict.CONTROLLED else (),
        limit_at=case.limit.part,
        limit_basis=case.limit.basis,
        limit_way=case.limit.way,
        settled_least_pa=None if case.settled_pa is None else case.settled_least_pa - head_pa,
        history=() if case.settled_pa is None else _told(case, case.highest.history),
        broken=tuple(_place_facts(case, place) for place in case.broken) if closed else (),
        broken_left_out=closed and case.leaves_broken_out,
        asked_method="" if case.method == ALWAYS else case.method,
        asked_tank_m3=case.tank.asked_m3 if verdict is Verdict.CONTROLLED else None,
    )


def _place_facts(case: Case, broken: LimitBreach) -> PlaceFacts:
    """A broken place as a gauge at its own height reads it; where no part sets the limit, at the heater's."""
    piping, limit, top = case.network.piping, broken.limit, case.neighbourhood.highest(broken.zone)
    head_pa = limit.pressure_pa - limit.own_pa if limit.own_pa is not None else case.head_pa
    way = case.beyond.to(broken.zone)
    part = limit.part or piping.ports[case.node].part
    levels = (limit.pressure_pa - head_pa, top.pressure_pa - head_pa, top.reached_pa - head_pa)
    return PlaceFacts(part, limit.by, *levels, way, _told(case, top.history), limit.basis)


def _told(case: Case, history: History[Zone]) -> tuple[tuple[str, ...], ...]:
    """A history by the heaters whose water warms, stage by stage."""
    known = case.gathered.told
    if history not in known:
        heated_in = case.network.heated_in
        names = (tuple(sorted({one.name for zone in stage for one in heated_in.get(zone, ())})) for stage in history)
        known[history] = tuple(names)
    return known[history]


def _closings(case: Case) -> Closings:
    if case.verdict not in {Verdict.OPEN, Verdict.CONTROLLED}:
        return Closings(())
    return case.network.closings(case.node, case.bound_pa)


def _rung(case: Case, rung: Rung) -> RungFacts:
    way = case.network.way(case.node, rung)
    kind = case.network.piping.system.parts[rung.site.part].kind
    return RungFacts(rung.site.part, rung.role, kind, rung.opens_pa - case.head_pa, way)


def _boils_k(case: Case, static_pa: float | None) -> float | None:
    """Where its water boils, under a static pressure at datum."""
    if static_pa is None or case.heated.source.mixture is not None:
        return None
    try:
        return boiling_k(static_pa - case.head_pa + ATMOSPHERE_PA)
    except OutsideWater:
        return None


def _valves_to_tank(case: Case, ladder: tuple[RungFacts, ...]) -> tuple[str, ...]:
    parts, taking = case.network.piping.system.parts, () if case.share is None else case.share.tanks
    met = (name for rung in ladder if rung.outlet in taking for name in rung.way)
    return tuple(dict.fromkeys(name for name in met if parts[name].is_valve()))


def _is_vented(case: Case) -> bool:
    cells = case.network.zoning.cell_of
    return any(rung.role is Role.AIR and cells[rung.site.node] == cells[case.heated.inlet] for rung in case.rungs)
