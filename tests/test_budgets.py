import pytest

from plumbnet.budgets import Budget, Spent


def test_budget_lasts_until_it_is_spent_and_the_last_steps_may_pass_its_end() -> None:
    budget = Budget(most=10)
    budget.demand()
    budget.spend(9)
    budget.demand()
    budget.spend(9)
    assert (budget.spent, budget.is_spent) == (18, True)
    with pytest.raises(Spent):
        budget.demand()


def test_budget_without_an_end_only_counts() -> None:
    budget = Budget()
    budget.spend(10**12)
    budget.demand()
    assert budget.spent == 10**12


def test_what_is_spent_of_a_part_is_spent_of_the_whole() -> None:
    whole = Budget()
    Budget(most=5, within=whole).spend(7)
    assert whole.spent == 7
