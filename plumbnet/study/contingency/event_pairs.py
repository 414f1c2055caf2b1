"""Pairs of events to what their combination changes that neither changes alone."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import combinations

from plumbnet.layout.edits import ChangeError
from plumbnet.study.contingency.contingencies import Contingency
from plumbnet.study.contingency.district import District
from plumbnet.study.contingency.district_effect import Effect
from plumbnet.study.contingency.outcome import Outcome, WorldAnswer, outcome
from plumbnet.study.contingency.worlds import SingleEvent, Worlds
from plumbnet.study.long_runs import Progress, unwatched

MOST_WORK = 200_000
"""Parts analysed for pairs, pair by pair, before the search ends."""


@dataclass(frozen=True, slots=True)
class _Pair:
    """Two events, and what they change together that neither changes alone."""

    first: Contingency
    second: Contingency
    outcome: Outcome

    @property
    def title(self) -> str:
        """Both, in the order of the file."""
        return f"{self.first.title}, and {self.second.title}"


@dataclass(frozen=True, slots=True)
class Pairs:
    """Pairs that change something together, the worst first.

    Of `possible` pairs `tried` were answered before the work was too much; that is all of them where the two are equal.
    """

    found: tuple[_Pair, ...]
    tried: int
    possible: int

    @property
    def is_complete(self) -> bool:
        """Whether every pair was answered."""
        return self.tried == self.possible


def pairs_of(
    worlds: Worlds, singles: Sequence[SingleEvent], *, most_work: int = MOST_WORK, watch: Progress = unwatched
) -> Pairs:
    """What the events change two by two.

    Two events in districts apart change nothing together but errors that rest on facts of both; those are looked for on
    the facts put together, and not at all where one of the two changes no fact. All others are analysed, in the
    smallest district that holds both. Pairs of one part are left out: it cannot suffer both at once.
    """
    search = _Search(worlds, singles, worlds.analysed + most_work)
    found = tuple(sorted(search.found(watch), key=lambda pair: (pair.outcome.rank, pair.title)))
    return Pairs(found, search.tried, search.possible)


@dataclass
class _Search:
    worlds: Worlds
    singles: Sequence[SingleEvent]
    most_analysed: int
    tried: int = 0

    def found(self, watch: Progress) -> Iterator[_Pair]:
        """The pairs that change something, those near each other first, until the work is too much."""
        for first, second in watch(self._in_order(), self.possible):
            if self.worlds.analysed > self.most_analysed:
                return
            self.tried += 1
            self.worlds.analysed += 1
            changed = self._together(first, second)
            if not changed.changes_nothing:
                yield _Pair(first.event, second.event, changed)

    @cached_property
    def possible(self) -> int:
        """How many pairs of different parts there are."""
        count, of_part = len(self.singles), dict[str, int]()
        for single in self.singles:
            of_part[single.event.part] = of_part.get(single.event.part, 0) + 1
        return count * (count - 1) // 2 - sum(own * (own - 1) // 2 for own in of_part.values())

    def _in_order(self) -> Iterator[tuple[SingleEvent, SingleEvent]]:
        """Every pair of different parts once: first those in one district."""
        for is_near in (True, False):
            for first, second in combinations(self.singles, 2):
                if first.event.part != second.event.part and _is_near(first, second) == is_near:
                    yield first, second

    def _together(self, first: SingleEvent, second: SingleEvent) -> Outcome:
        if first.answer.refused or second.answer.refused:
            return Outcome()
        if first.effect is not None and second.effect is not None and _are_apart(first.effect, second.effect):
            if first.is_idle or second.is_idle:
                return Outcome()
            both = [first.effect, second.effect]
            return self._joint(first, second, self.worlds.together(both, [first.event, second.event]))
        try:
            return self._joint(first, second, self.worlds.after([first.event, second.event]))
        except ChangeError:
            return Outcome()

    def _joint(self, first: SingleEvent, second: SingleEvent, after: WorldAnswer) -> Outcome:
        return outcome(self.worlds.before, after, (first.answer, second.answer))


def _is_near(first: SingleEvent, second: SingleEvent) -> bool:
    return first.effect is not None and second.effect is not None and first.effect.district is second.effect.district


def _are_apart(first: Effect, second: Effect) -> bool:
    """Whether two effects are in districts that share no more than a tee, and neither changes what the other feels."""
    return not _overlap(first.district, second.district) and all(
        one.is_settled or any(name not in first.district.names | second.district.names for name in one.district.heaters)
        for one in (first, second)
    )


def _overlap(first: District, second: District) -> bool:
    """Whether one district holds a part of the other, its tee but not the same tee included."""
    tees = {first.boundary.tee} & {second.boundary.tee}
    return not first.names & second.names <= tees
