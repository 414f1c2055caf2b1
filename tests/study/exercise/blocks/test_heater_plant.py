from sketching import recipe, sketch, system

import plumbnet
from plumbnet.study.exercise.blocks.heater_plant import shared, single
from plumbnet.study.exercise.level import Recipe


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


def test_heater_has_its_relief_valve_unless_it_was_forgotten() -> None:
    for bare, expected in ((0.0, True), (1.0, False)):
        drawn = sketch()
        single(drawn, recipe(bare=bare), [])
        assert ("heater/relief" in system(drawn).parts) == expected
