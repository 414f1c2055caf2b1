import pytest

from plumbnet.drawing.columns.programme import Programme


def test_two_values_keep_their_distance_and_no_more() -> None:
    programme = Programme()
    first, second = programme.value(1.0), programme.value(1.0)
    programme.demand(first, second, 5.0)
    assert list(programme.solved()) == [0.0, 5.0]


def test_nearness_gives_way_to_a_demand_at_its_weight() -> None:
    programme = Programme()
    a, b, c = (programme.value(1e-6) for _ in range(3))
    programme.demand(a, b, 10.0)
    programme.near(a, c, 0.0, 1.0)
    programme.near(b, c, 0.0, 3.0)
    assert list(programme.solved())[:3] == pytest.approx([0.0, 10.0, 10.0])


def test_fixed_value_stays_where_it_is() -> None:
    programme = Programme()
    first, second = programme.value(), programme.value(1.0)
    programme.fixed[first] = 7.0
    programme.demand(first, second, 1.0)
    assert list(programme.solved()) == [7.0, 8.0]


def test_demands_that_contradict_each_other_are_told() -> None:
    programme = Programme()
    first, second = programme.value(), programme.value()
    programme.demand(first, second, 1.0)
    programme.demand(second, first, 1.0)
    with pytest.raises(ArithmeticError):
        programme.solved()


def test_without_demands_all_is_zero() -> None:
    programme = Programme()
    programme.value(1.0)
    assert programme.solved() == [0.0]
