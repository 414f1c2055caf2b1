import pytest
from sketching import chance

import plumbnet
from plumbnet.layout.file.loader import read_system
from plumbnet.study.exercise.building import building
from plumbnet.study.exercise.level import LEVELS
from plumbnet.study.exercise.usual_sizes import USUAL, Usual


@pytest.mark.parametrize("usual", USUAL.values(), ids=list(USUAL))
@pytest.mark.parametrize("level", sorted(LEVELS))
def test_every_layout_is_one_that_a_plumber_would_draw(level: int, usual: Usual) -> None:
    for seed in range(20):
        system = read_system(building(LEVELS[level].recipe, chance(seed), usual).encode(), file="drawn.yaml")
        assert system.units == usual.units
        report = plumbnet.check(system)
        assert report.heaters
        assert not report.facts.unreached
        assert not report.facts.idle_pumps
        assert all(heater.static_pa is not None for heater in report.heaters)


def test_same_chance_gives_the_same_bytes() -> None:
    assert building(LEVELS[4].recipe, chance(9), USUAL["us"]) == building(LEVELS[4].recipe, chance(9), USUAL["us"])


def test_third_level_has_buildings_with_and_without_circulation() -> None:
    systems = [
        plumbnet.read_bytes(building(LEVELS[3].recipe, chance(seed), USUAL["us"]).encode()) for seed in range(20)
    ]
    loops = [any(heater.loops for heater in plumbnet.check(system).heaters) for system in systems]
    assert set(loops) == {True, False}


def test_fourth_level_has_several_heaters_and_several_heights() -> None:
    systems = [
        plumbnet.read_bytes(building(LEVELS[4].recipe, chance(seed), USUAL["us"]).encode()) for seed in range(20)
    ]
    assert max(len(plumbnet.check(system).heaters) for system in systems) == 3
    assert any(len({part.elevation_m for part in system.parts.values()}) > 2 for system in systems)
