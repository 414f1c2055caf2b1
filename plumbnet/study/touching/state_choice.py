"""States that are worked out beforehand: which touchables, how many of them at a time, and each state once."""

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations, product

from plumbnet.analysis import Report
from plumbnet.layout.model import Sort
from plumbnet.layout.yaml import nearest, quoted
from plumbnet.rules.facts import FROM_BEST_TO_WORST
from plumbnet.study.touching.touch_code import Touch, UnknownTouch
from plumbnet.study.touching.touch_states import TouchStates
from plumbnet.study.touching.touchable_things import Touchable

FEW_STATES = 2_048
"""All combinations are held up to so many states; a house takes some seconds."""
_USUAL_STATES = 512
"""So many where nobody has said what is to be held, of a layout with one heater; of several as much work."""
MOST_STATES = 20_000
"""More are not held, whoever asks."""
_MOST_TOUCHABLES = 12


@dataclass(frozen=True)
class HeldStates:
    """The options held, by the number of their touchable, of which up to `at_once` are touched at a time.

    `left_out` are the touchables of which nothing is held, though something could be.
    """

    options: Mapping[int, tuple[int, ...]]
    at_once: int
    left_out: tuple[int, ...] = ()

    @property
    def has_all(self) -> bool:
        """Whether every combination is held."""
        return self.at_once >= len(self.options)

    @property
    def count(self) -> int:
        """How many states there are, the layout as drawn among them."""
        return _count([len(each) for each in self.options.values()], self.at_once)

    def __iter__(self) -> Iterator[tuple[Touch, ...]]:
        """Every state: of all combinations the first touchable changes most slowly, else by how many are touched."""
        if self.has_all:
            ways = [(None, *options) for options in self.options.values()]
            for chosen in product(*ways):
                pairs = zip(self.options, chosen, strict=True)
                yield tuple(Touch(at, option) for at, option in pairs if option is not None)
            return
        for size in range(self.at_once + 1):
            for places in combinations(self.options, size):
                for each in product(*(self.options[at] for at in places)):
                    yield tuple(Touch(at, option) for at, option in zip(places, each, strict=True))


def _count(sizes: Sequence[int], at_once: int) -> int:
    """States in which up to so many of some things are otherwise, each in one of so many ways.

    >>> _count([1, 1, 2], 3), _count([1, 1, 2], 1)
    (12, 5)
    """
    ways = [1, *[0] * at_once]
    for size in sizes:
        for touched in range(at_once, 0, -1):
            ways[touched] += ways[touched - 1] * size
    return sum(ways)


def held_states(states: TouchStates, names: Sequence[str] = (), at_once: int | None = None) -> HeldStates:
    """What a table is to hold: what is named, or else what changes an answer first, and the tank that is needed.

    All combinations where these are few, else as many at a time as are few. Raises UnknownTouch for a name that nothing
    has and for more states than are held.
    """
    if names:
        options = _named(states, names)
    else:
        options = _cure(states) | _worth_touching(states, at_once)
        options = dict(sorted(options.items()))
    sizes = [len(each) for each in options.values()]
    if at_once is None:
        at_once = next((most for most in range(len(sizes), 1, -1) if _count(sizes, most) <= FEW_STATES), 1)
    held = HeldStates(options, min(at_once, len(sizes)), _left_out(states, options))
    if held.count > MOST_STATES:
        raise UnknownTouch(f"these are {held.count} states, and at most {MOST_STATES} are held; name fewer things")
    return held


def _named(states: TouchStates, names: Sequence[str]) -> dict[int, tuple[int, ...]]:
    """All options of what is named, a pipe as `a to b` or as the whole name."""
    known = {one.name: at for at, one in enumerate(states.touchables) if one.options}
    short = {name.removeprefix("pipe from "): at for name, at in known.items()}
    found = dict[int, tuple[int, ...]]()
    for name in names:
        at = known.get(name, short.get(name))
        if at is None:
            hint = nearest(name, short)
            raise UnknownTouch(f"nothing of the name {quoted(name)} can be touched{f': {hint}' if hint else ''}")
        found[at] = tuple(range(len(states.touchables[at].options)))
    return dict(sorted(found.items()))


def _worth_touching(states: TouchStates, at_once: int | None) -> dict[int, tuple[int, ...]]:
    """The parts that alone change an answer, then those that a hand turns, as long as the states are few."""
    usual, most = _verdicts(states.drawn), _USUAL_STATES // max(1, len(states.drawn.heaters))
    parts = [at for at, one in enumerate(states.touchables) if one.pipe is None]
    found = {at: _telling(states, at, usual) for at in parts}
    turned = {at: _turned(states.touchables[at]) for at in parts if not found[at]}
    options = {at: held for at, held in (found | turned).items() if held}
    ranked = sorted(options, key=lambda at: at in turned)
    chosen = dict[int, tuple[int, ...]]()
    for at in ranked[:_MOST_TOUCHABLES]:
        sizes = [*(len(held) for held in chosen.values()), len(options[at]), 1]
        if _count(sizes, len(sizes) if at_once is None else at_once) <= most:
            chosen[at] = options[at]
    return chosen


def _telling(states: TouchStates, at: int, usual: object) -> tuple[int, ...]:
    """The options that alone change an answer."""
    numbers = range(len(states.touchables[at].options))
    return tuple(number for number in numbers if _verdicts(states.report_in((Touch(at, number),))) != usual)


def _turned(one: Touchable) -> tuple[int, ...]:
    return tuple(number for number, option in enumerate(one.options) if option.sort is Sort.TURNED)


def _verdicts(report: Report) -> list[tuple[object, ...]]:
    return [(one.name, one.verdict, one.stopped_by.sets, one.settled_pa) for one in report.heaters]


def _cure(states: TouchStates) -> dict[int, tuple[int, ...]]:
    """The tank that the heater worst off needs, in the pipe nearest to where it is wanted; nothing where none is."""
    worst = sorted(states.drawn.heaters, key=lambda one: FROM_BEST_TO_WORST.index(one.verdict), reverse=True)
    need = next((one.need for one in worst if one.need is not None and one.need.nominal_m3 is not None), None)
    if need is None:
        return {}
    wanted = set(need.at.split(" -> "))
    pipes = [(at, one) for at, one in enumerate(states.touchables) if one.pipe is not None]
    served = {one.name for one in worst}
    ranked = sorted(pipes, key=lambda each: _nearness(states, each[1], wanted, served), reverse=True)
    at, best = ranked[0] if ranked else (0, None)
    if best is None or not _nearness(states, best, wanted, served)[0]:
        return {}
    return {at: (len(best.options) - 1,)}


def _nearness(
    states: TouchStates, one: Touchable, wanted: Collection[str], heaters: Collection[str]
) -> tuple[int, int]:
    """How many of a pipe's ends are where a tank is wanted, and how many at a heater."""
    ends = {end.part for end in states.drawn.system.pipes[one.pipe or 0].ends}
    return len(ends & set(wanted)), len(ends & set(heaters))


def _left_out(states: TouchStates, options: Mapping[int, tuple[int, ...]]) -> tuple[int, ...]:
    return tuple(
        at for at, one in enumerate(states.touchables) if one.pipe is None and one.options and at not in options
    )
