"""Numbers of which more is only ever worse, or only ever better, tried together: which of them may turn anything."""

from collections import defaultdict
from collections.abc import Callable, Iterator, Sequence

from plumbnet.layout.units import Dimension
from plumbnet.study.margins.margin import UncertainNumber
from plumbnet.study.margins.margin_trials import MarginTrials

Ends = Callable[[UncertainNumber], float]
"""How far each number is tried."""


def that_may_turn(trials: MarginTrials, numbers: Sequence[UncertainNumber], end_of: Ends) -> set[UncertainNumber]:
    """Those that may turn something on the side on which their ends lie.

    Where all of one dimension have strayed as far as they may and nothing has turned, none of them turns anything by
    itself: each verdict and each error is monotone in every one of them. Else their halves are tried.
    """
    by_dimension = defaultdict[Dimension, list[UncertainNumber]](list)
    for number in numbers:
        by_dimension[number.dimension].append(number)
    return {one for group in by_dimension.values() for one in _that_may(trials, group, end_of)}


def _that_may(trials: MarginTrials, numbers: Sequence[UncertainNumber], end_of: Ends) -> Iterator[UncertainNumber]:
    if trials.after({number: end_of(number) for number in numbers}) == trials.before:
        return
    if len(numbers) == 1:
        yield from numbers
        return
    middle = len(numbers) // 2
    for half in (numbers[:middle], numbers[middle:]):
        yield from _that_may(trials, half, end_of)
