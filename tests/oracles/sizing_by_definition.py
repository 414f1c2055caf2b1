"""Where a tank for a heater belongs, and what it is charged to, by the definitions."""

from collections.abc import Iterator

import networkx as nx

from oracles.sizing_by_hand import METHODS, Job, NoAnswer, NoTank
from oracles.verdicts_by_definition import Place
from oracles.walking import Sense, Step
from oracles.warm_water import AIR_PA
from plumbnet.layout.model.system import End
from plumbnet.rules.facts.tank_facts import Need

USUAL_METHOD = "membrane"
CLOSE_PA = 1e-2


def assert_is_charged(place: Place, need: Need) -> None:
    """Hold that a tank is charged as the heater's method asks for some water, or to the pressure that stands there."""
    charges = list(_charges_pa(place, need))
    assert any(abs(need.precharge_pa - each) < CLOSE_PA for each in charges), (need.precharge_pa, charges)


def _charges_pa(place: Place, need: Need) -> Iterator[float]:
    water, end = place.water, _end_at(place, need.at)
    zone, head_pa = water.zone_of[end], water.head_pa(end)
    static_pa = water.start_pa[zone] - head_pa
    yield max(static_pa, 0.0)
    yield static_pa
    reliefs = [site.opens_pa for site in water.sites_in(zone) if site.outlet.is_safety]
    for heater in water.sources:
        job = Job(
            volume=1.0,
            warmth=water.warmth(heater),
            static=static_pa + AIR_PA,
            limit=1e9,
            relief=min(reliefs) - head_pa + AIR_PA if reliefs else None,
            column=max(0.0, water.top_pa(zone) - head_pa),
        )
        try:
            charge = METHODS[water.sources[place.heater].sizing or USUAL_METHOD](job).charge
        except (NoAnswer, NoTank):
            continue
        yield 0.0 if charge is None else charge - AIR_PA


def _end_at(place: Place, at: str) -> End:
    """A port of the fitting named; of a pipe that of the heater which it fills."""
    water = place.water
    if at in water.system.parts and at not in water.sources:
        return next(end for end in water.ends if end.part == at)
    return next(water.inlet(name) for name in water.sources if name in at.split(" -> "))


def assert_fits_a_heater(place: Place, at: str) -> None:
    """Hold that a place is right for the heater, or for another in reach of its water."""
    reached = place.water.company.rows(place.zone)
    others = (name for name in place.water.sources if place.water.zone_of[place.water.inlet(name)] in reached)
    assert any(is_nearest_fitting(Place(place.water, name, place.end), at) for name in (place.heater, *others)), at


def is_nearest_fitting(place: Place, at: str) -> bool:
    """Whether this is the tee nearest to the inlet past no valve, no joint by accident and not in its loops."""
    water, inlet = place.water, place.water.inlet(place.heater)
    parts = water.system.parts
    looped = {end for one in water.loops(place.heater) for end in one.ends}

    def is_near(step: Step) -> bool:
        if step.part == place.heater or step.sense is not Sense.FREE:
            return False
        return not step.part or not (parts[step.part].is_valve() or parts[step.part].is_accidental())

    steps = nx.single_source_shortest_path_length(water.graph(is_near), inlet)
    tees = {end.part: far for end, far in steps.items() if parts[end.part].kind == "tee" and end not in looped}
    if at not in parts:
        return not tees and at.split(" -> ").count(place.heater) == 1
    return tees.get(at) == min(tees.values()) if tees else at == place.heater
