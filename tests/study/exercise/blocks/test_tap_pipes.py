from sketching import recipe, sketch, system

import plumbnet
from plumbnet.study.exercise.blocks.heater_plant import single
from plumbnet.study.exercise.blocks.tap_pipes import taps
from plumbnet.study.exercise.level import Recipe
from plumbnet.study.exercise.sketch import Sketch
from plumbnet.study.exercise.stock.stretch import Spot
from plumbnet.study.exercise.town import ROOMS


def drawn_taps(chosen: Recipe, seed: int = 1, *, circulated: bool = False) -> Sketch:
    drawn = sketch(seed)
    line = [drawn.part("return", "tee")] if circulated else []
    taps(drawn, chosen, single(drawn, chosen, line), circulated=circulated)
    return drawn


def test_every_fixture_has_hot_and_cold() -> None:
    found = system(drawn_taps(recipe()))
    fixtures = [name for name, part in found.parts.items() if part.draws_at()]
    ends = {end for pipe in found.pipes for end in pipe.ends}
    assert len(fixtures) >= 2
    assert {(name, port) for name in fixtures for port in ("hot", "cold")} <= {tuple(end) for end in ends}


def test_valves_stand_behind_the_heaters_and_before_a_tap() -> None:
    parts = system(drawn_taps(recipe(hot_valve=1.0, tap_valve=1.0))).parts
    valves = [name for name, part in parts.items() if part.is_valve()]
    assert valves[0] == "hot-stop"
    assert valves[1].removesuffix("-stop") in ROOMS
    assert len(valves) == 2


def test_circulation_drives_a_loop_through_the_heater() -> None:
    (heater,) = plumbnet.check(system(drawn_taps(recipe(), circulated=True))).heaters
    ((pump, *_),) = heater.loops
    assert pump == "pump"


def test_mixing_valve_stands_before_the_taps() -> None:
    stretches = drawn_taps(recipe(mixing=1.0)).stretches
    (hot,) = [one for one in stretches if one.stops[-1] == "mixer.hot"]
    assert any(one.stops[-1] == "mixer.cold" for one in stretches)
    assert not any(one.start == hot.start and one.place is Spot.HOT_TAP for one in stretches)


def test_high_building_has_taps_above_one_another() -> None:
    heights = {
        part.elevation_m
        for seed in range(8)
        for part in system(drawn_taps(recipe(heights=1.0), seed)).parts.values()
        if part.draws_at()
    }
    assert len(heights) == 3
