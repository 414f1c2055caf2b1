"""Where a tank for a heater belongs, and what it is charged to, by the definitions."""

from collections.abc import Iterator

from oracles.sizing_by_hand import METHODS, Job, NoAnswer, NoTank
from oracles.verdicts_by_definition import Place
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
    """A port of the fitting named; of a pipe that of the heater which it fills, or else that at which it ends."""
    water = place.water
    if at in water.system.parts and at not in water.sources:
        return next(end for end in water.ends if end.part == at)
    filled = (water.inlet(name) for name in water.sources if name in at.split(" -> "))
    pipe = next((one for one in water.system.pipes if one.name == at), None)
    return next(filled, None) or (place.end if pipe is None else pipe.end)


def assert_fits_a_heater(place: Place, at: str) -> None:
    """Hold that a place is in water that the heater's own comes to, and behind no heater: there a tank can take it.

    Which of such places is the best is tested on drawn layouts; that the tank holds there, by fitting it.
    """
    reached = place.water.company.rows(place.zone)
    names = at.split(" -> ")
    ends = [end for end in place.water.ends if end.part in names]
    assert any(place.water.zone_of[end] in reached for end in ends), at
