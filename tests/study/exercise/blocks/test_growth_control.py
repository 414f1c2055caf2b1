import pytest
from sketching import recipe, sketch, system

from plumbnet.layout.model.kinds.control import ExpansionRelief, ExpansionTank
from plumbnet.study.exercise.blocks.growth_control import control
from plumbnet.study.exercise.level import Recipe
from plumbnet.study.exercise.sketch import Sketch

PSI = 6894.757293168361


def controlled(chosen: Recipe, seed: int = 1, height_ft: int = 0) -> Sketch:
    drawn = sketch(seed)
    for tee in control(drawn, chosen, height_ft):
        drawn.run("split", tee)
    return drawn


def tanks(height_ft: int, chosen: Recipe) -> list[ExpansionTank]:
    found: list[ExpansionTank] = []
    for seed in range(30):
        part = system(controlled(chosen, seed, height_ft)).parts["tank"]
        assert isinstance(part, ExpansionTank)
        found.append(part)
    return found


@pytest.mark.parametrize(("height_ft", "psi"), [(0, 60), (20, 51), (-8, 63)])
def test_most_tanks_are_charged_to_the_line_where_they_hang(height_ft: int, psi: int) -> None:
    charges = [round(tank.precharge_pa / PSI) for tank in tanks(height_ft, recipe(tank=1.0))]
    assert set(charges) == {psi, 40}
    assert charges.count(psi) > 2 * charges.count(40)


def test_some_tanks_are_charged_to_more_than_the_line() -> None:
    assert {round(tank.precharge_pa / PSI) for tank in tanks(0, recipe(tank=1.0, overcharged=1.0))} == {75, 55}


def test_small_tanks_are_few_unless_they_are_wanted() -> None:
    least = [min(tank.volume_m3 for tank in tanks(0, recipe(tank=1.0, small_tank=share))) for share in (0.0, 1.0)]
    assert least[0] > least[1]


def test_few_tanks_are_worn_out() -> None:
    assert [tank.state for tank in tanks(0, recipe(tank=1.0))].count("waterlogged") in range(1, 8)


def test_tank_may_have_a_valve_of_its_own() -> None:
    assert system(controlled(recipe(tank=1.0, tank_valve=1.0))).parts["tank-stop"].is_valve()


def test_expansion_relief_stands_in_for_a_tank() -> None:
    assert isinstance(system(controlled(recipe(spill=1.0))).parts["spill"], ExpansionRelief)


def test_nothing_hangs_there_where_the_level_has_no_control() -> None:
    assert control(sketch(), recipe(), 0) == []
