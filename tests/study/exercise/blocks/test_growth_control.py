import pytest
from sketching import recipe, sketch, system

from plumbnet.layout.model.kinds.control import ExpansionRelief, ExpansionTank
from plumbnet.study.exercise.blocks.growth_control import control

PSI = 6894.757293168361


def tanks(height_ft: int) -> list[ExpansionTank]:
    found: list[ExpansionTank] = []
    for seed in range(30):
        drawn = sketch(seed)
        control(drawn, recipe(tank=1.0), "split", height_ft)
        part = system(drawn).parts["tank"]
        assert isinstance(part, ExpansionTank)
        found.append(part)
    return found


@pytest.mark.parametrize(("height_ft", "psi"), [(0, 60), (20, 51), (-8, 63)])
def test_most_tanks_are_charged_to_the_line_where_they_hang(height_ft: int, psi: int) -> None:
    charges = [round(tank.precharge_pa / PSI) for tank in tanks(height_ft)]
    assert set(charges) == {psi, 40}
    assert charges.count(psi) > 2 * charges.count(40)


def test_some_tanks_are_worn_out() -> None:
    assert {tank.state for tank in tanks(0)} == {"sound", "waterlogged"}


def test_tank_may_have_a_valve_of_its_own() -> None:
    drawn = sketch()
    control(drawn, recipe(tank=1.0, tank_valve=1.0), "split", 0)
    assert system(drawn).parts["tank-stop"].is_valve()


def test_expansion_relief_stands_in_for_a_tank() -> None:
    drawn = sketch()
    control(drawn, recipe(spill=1.0), "split", 0)
    assert isinstance(system(drawn).parts["spill"], ExpansionRelief)


def test_nothing_hangs_there_where_the_level_has_no_control() -> None:
    drawn = sketch()
    control(drawn, recipe(), "split", 0)
    assert list(drawn.parts) == ["street", "split"]
