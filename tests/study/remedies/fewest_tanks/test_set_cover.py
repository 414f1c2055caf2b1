"""The fewest sets that hold everything."""

from random import Random

import pytest

from plumbnet.study.remedies.fewest_tanks.set_cover import covers, greedy_bound, greedy_cover, without_dominated


def test_nothing_is_held_by_no_set() -> None:
    assert next(covers([])) == ()
    assert greedy_cover([]) == ()


def test_of_equal_sets_the_first_stays() -> None:
    assert without_dominated([{"a"}, {"a"}, {"a", "b"}, set()]) == [2]


@pytest.mark.parametrize("seed", range(30))
def test_greedy_choice_holds_everything_and_keeps_its_bound(seed: int) -> None:
    random = Random(seed)  # noqa: S311  # sets to cover, not a secret
    sets = [set(random.sample("abcdefgh", random.randrange(1, 5))) for _ in range(random.randrange(1, 8))]
    fewest, greedy = next(covers(sets)), greedy_cover(sets)
    assert set().union(*(sets[place] for place in greedy)) == set().union(*sets)
    assert len(fewest) <= len(greedy) <= greedy_bound(sets) * len(fewest)


def test_greedy_choice_is_not_always_the_fewest() -> None:
    sets = [{"a", "b", "c", "d"}, {"a", "b", "e"}, {"c", "d", "f"}]
    assert len(greedy_cover(sets)) == 3
    assert next(covers(sets)) == (1, 2)
