from sketching import recipe, sketch, system

import plumbnet
from plumbnet.study.exercise.blocks.heater_plant import shared, single
from plumbnet.study.exercise.level import Recipe
from plumbnet.study.exercise.stock.stretch import Spot


def heaters(draw: str, chosen: Recipe, seed: int = 1) -> list[str]:
    drawn = sketch(seed)
    drawn.plant = 20
    hot = {"single": single, "shared": shared}[draw](drawn, chosen, [])
    drawn.run(hot, f"{drawn.part('tap', 'fixture')}.hot")
    report = plumbnet.check(system(drawn))
    assert {round(report.system.parts[one.name].elevation_m, 3) for one in report.heaters} == {6.096}
    return [one.kind for one in report.heaters]


def test_one_heater_of_the_kind_the_level_has() -> None:
    assert heaters("single", recipe()) == ["storage_heater"]
    assert heaters("single", recipe(tankless=1.0)) == ["tankless_heater"]


def test_two_or_three_heaters_stand_between_headers() -> None:
    assert {len(heaters("shared", recipe(), seed)) for seed in range(12)} == {2, 3}


def test_heater_without_a_relief_valve_has_one_in_its_cold_pipe() -> None:
    for bare, expected in ((0.0, "heater/relief"), (1.0, "relief")):
        drawn = sketch()
        hot = single(drawn, recipe(bare=bare), [])
        drawn.run(hot, f"{drawn.part('tap', 'fixture')}.hot")
        parts = system(drawn).parts
        assert {"heater/relief", "relief"} & set(parts) == {expected}


def test_heaters_on_a_header_may_have_checks_of_their_own() -> None:
    drawn = sketch()
    shared(drawn, recipe(branch_checks=1.0), [])
    assert any("check" in stretch.devices for stretch in drawn.stretches if stretch.place is Spot.BRANCH)
