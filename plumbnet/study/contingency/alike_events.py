"""Events that befall parts of one kind and change the same, or each the same of its own: told together."""

import re
from collections import defaultdict
from collections.abc import Hashable, Iterable, Mapping
from dataclasses import dataclass

from plumbnet.study.contingency.contingencies import Contingency
from plumbnet.study.contingency.outcome import Outcome

_MARKS = re.compile(r"([0-9]+|/|--)")


@dataclass(frozen=True, slots=True)
class SweptEvent:
    """One event and what it changes."""

    event: Contingency
    outcome: Outcome

    @property
    def rank(self) -> tuple[tuple[int, int, int, int], str]:
        """Sorts events, the worst first, then by name."""
        return self.outcome.rank, self.event.title


@dataclass(frozen=True, slots=True)
class AlikeEvents:
    """Events told together, at least one, in their order; `kind` is that of their parts.

    Each changes the same, or what is of its own as the others what is of theirs: in houses/3 its heater, as in all.
    """

    kind: str
    events: tuple[SweptEvent, ...]

    @property
    def words(self) -> str:
        """What happens."""
        return self.events[0].event.words

    @property
    def parts(self) -> tuple[str, ...]:
        """The parts that it befalls."""
        return tuple(one.event.part for one in self.events)


def alike_events(events: Iterable[SweptEvent], kinds: Mapping[str, str]) -> tuple[AlikeEvents, ...]:
    """The events, each in one group, groups in the order of their first; `kinds` are those of parts by their names."""
    theirs: dict[Hashable, list[SweptEvent]] = defaultdict(list)
    for one in events:
        theirs[kinds[one.event.part], one.event.words, _seen_from(one.event.part, one.outcome)].append(one)
    same: dict[Hashable, list[SweptEvent]] = {}
    for key, group in theirs.items():
        outcomes = {one.outcome for one in group}
        kind_and_words = kinds[group[0].event.part], group[0].event.words
        same.setdefault((*kind_and_words, outcomes.pop()) if len(outcomes) == 1 else key, []).extend(group)
    return tuple(AlikeEvents(kinds[group[0].event.part], tuple(group)) for group in same.values())


def _seen_from(part: str, changed: Outcome) -> Hashable:
    """What an event changes, with what is the part's own told apart in each name; a refusal as it is."""
    turns = tuple((_less_own(part, turn.heater), turn.before, turn.after) for turn in changed.turns)
    return turns, tuple((error.name, _less_own(part, error.part)) for error in changed.errors), changed.refused


def _less_own(part: str, name: str) -> tuple[int, tuple[str, ...]]:
    """How many steps and numbers a name begins with as the part does, and what stands behind them."""
    if name == part:
        return -1, ()
    own, others = _MARKS.split(part), _MARKS.split(name)
    pairs = enumerate(zip(own, others, strict=False))
    same = next((place for place, (one, other) in pairs if one != other), min(len(own), len(others)))
    return same // 2, tuple(others[same // 2 * 2 :])
