"""The tank that a closed heater needs: its place in the cold pipe, its waters, its least volume and its charge."""

from collections import defaultdict
from dataclasses import dataclass

import networkx as nx

from oracles.sizing_by_hand import Job, NoAnswer, NoTank, tanks
from oracles.verdicts_by_definition import Place
from oracles.walking import Sense, Step
from oracles.warm_water import AIR_PA, Warmth
from plumbnet.layout.part import Role
from plumbnet.layout.system import End

USUAL_METHOD = "membrane"


@dataclass(frozen=True)
class Needed:
    """A tank; None where no tank can do. The charge is gauge at the tank."""

    method: str
    tank_m3: float | None
    precharge_pa: float


def need(place: Place, at: str) -> Needed:
    """What is needed at a place, which must be the right one; AssertionError where it is not."""
    assert_nearest_fitting(place, at)
    water, heater = place.water, place.heater
    is_tee = at in water.system.parts and at != heater
    head_pa = water.head_pa(End(at, "joint") if is_tee else water.inlet(heater))
    static_pa = water.start_pa[place.zone] - head_pa
    for method in (water.sources[heater].sizing or USUAL_METHOD, USUAL_METHOD):
        try:
            tank_m3, charge = tanks(method, _jobs(place, head_pa))
        except NoTank:
            break
        except NoAnswer:
            continue
        return Needed(method, tank_m3, 0.0 if charge is None else charge - AIR_PA)
    return Needed("none", None, static_pa)


def _jobs(place: Place, head_pa: float) -> list[Job]:
    water = place.water
    volumes: dict[Warmth, float] = defaultdict(float)
    for heater, piece in place.waters():
        volumes[water.warmth(heater)] += piece.volume_m3
    reliefs = [site.opens_pa for site in water.sites_in(place.zone) if site.outlet.role is Role.SAFETY_RELIEF]
    return [
        Job(
            volume=volume_m3,
            warmth=warmth,
            static=water.start_pa[place.zone] - head_pa + AIR_PA,
            limit=place.limit_pa - head_pa + AIR_PA,
            relief=min(reliefs) - head_pa + AIR_PA if reliefs else None,
            column=max(0.0, water.top_pa(place.zone) - head_pa),
        )
        for warmth, volume_m3 in volumes.items()
    ]


def assert_nearest_fitting(place: Place, at: str) -> None:
    """Hold that this is the tee nearest to the inlet past no valve, no joint by accident and not in its loops."""
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
        assert not tees, tees
        assert at.split(" -> ").count(place.heater) == 1
    elif tees:
        assert tees[at] == min(tees.values())
    else:
        assert at == place.heater
