import pytest
from sketching import chance

import plumbnet
from plumbnet.layout.file.loader import read_system
from plumbnet.study.exercise.building import building
from plumbnet.study.exercise.level import LEVELS, Recipe
from plumbnet.study.exercise.usual_sizes import USUAL, Usual


def text(recipe: Recipe, seed: int, usual: Usual = USUAL["us"]) -> str:
    stock = building(recipe, chance(seed), usual)
    return stock.text(stock.stretches)


@pytest.mark.parametrize("usual", USUAL.values(), ids=list(USUAL))
@pytest.mark.parametrize("level", sorted(LEVELS))
def test_every_layout_is_one_that_a_plumber_would_draw(level: int, usual: Usual) -> None:
    for seed in range(6):
        system = read_system(text(LEVELS[level].recipe, seed, usual).encode(), file="drawn.yaml")
        assert system.units == usual.units
        report = plumbnet.check(system)
        assert report.heaters
        assert not report.facts.unreached
        assert not report.facts.idle_pumps
        assert all(heater.static_pa is not None for heater in report.heaters)


def test_same_chance_gives_the_same_bytes() -> None:
    assert text(LEVELS[4].recipe, 9) == text(LEVELS[4].recipe, 9)


def test_third_level_has_buildings_with_and_without_circulation() -> None:
    systems = [plumbnet.read_bytes(text(LEVELS[3].recipe, seed).encode()) for seed in range(8)]
    assert {any(part.kind == "circulator" for part in system.parts.values()) for system in systems} == {True, False}


def test_fourth_level_has_several_heaters_and_several_heights() -> None:
    systems = [plumbnet.read_bytes(text(LEVELS[4].recipe, seed).encode()) for seed in range(8)]
    assert max(sum(part.heat() is not None for part in system.parts.values()) for system in systems) >= 3
    assert any(len({part.elevation_m for part in system.parts.values()}) > 2 for system in systems)
