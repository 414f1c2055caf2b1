"""The fewest sets that hold everything: exactly for a few sets, by the greedy rule with its bound for many."""

from collections.abc import Iterator, Sequence
from collections.abc import Set as AbstractSet
from fractions import Fraction
from itertools import combinations

MOST_EXACT = 12
"""Sets up to which every combination is looked at: at most 4096."""


def without_dominated(sets: Sequence[AbstractSet[str]]) -> list[int]:
    """Places of the sets that lie within no other; of equal ones the first.

    >>> without_dominated([{"a"}, {"a", "b"}, {"a", "b"}, {"c"}])
    [1, 3]
    """
    return [
        place
        for place, own in enumerate(sets)
        if not any(own < other or (own == other and before < place) for before, other in enumerate(sets))
    ]


def covers(sets: Sequence[AbstractSet[str]]) -> Iterator[tuple[int, ...]]:
    """Every choice of sets that together hold all that any does, the fewest first. At most 2**n steps.

    >>> next(covers([{"a", "b"}, {"b", "c"}, {"c", "d"}]))
    (0, 2)
    """
    everything = frozenset().union(*sets)
    for count in range(len(sets) + 1):
        for chosen in combinations(range(len(sets)), count):
            if everything == frozenset().union(*(sets[place] for place in chosen)):
                yield chosen


def greedy_cover(sets: Sequence[AbstractSet[str]]) -> tuple[int, ...]:
    """A choice of sets that holds everything, each the one that adds most; at most `greedy_bound` times the fewest.

    >>> greedy_cover([{"a", "b"}, {"b", "c", "d"}, {"a"}])
    (0, 1)
    """
    missing = set().union(*sets)
    chosen: list[int] = []
    while missing:
        best = max(range(len(sets)), key=lambda place: (len(missing & sets[place]), -place))
        chosen.append(best)
        missing -= sets[best]
    return tuple(sorted(chosen))


def greedy_bound(sets: Sequence[AbstractSet[str]]) -> float:
    """How many times the fewest sets the greedy choice may need: H(n) = 1 + 1/2 + ... + 1/n for a largest set of n.

    Source: Johnson 1974, Lovász 1975 (from memory).

    >>> greedy_bound([{"a", "b", "c"}])
    1.8333333333333333
    """
    largest = max((len(own) for own in sets), default=0)
    return float(sum(Fraction(1, number) for number in range(1, largest + 1)))
