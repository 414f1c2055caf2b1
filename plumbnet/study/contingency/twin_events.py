"""Events of parts that are alike in everything: where one changes nothing, its twin does not either.

Two parts are twins where the layout has a symmetry that exchanges them, what hangs on them, and nothing else. It is
sought outward from both at once, and holds only if every pipe of what is exchanged leads to its counterpart. Where an
answer names the first of several parts, the earlier twin stands before the later, in the file and by name: so a part
that is named instead of the earlier one is named instead of the later one too. Source: own derivation; the tests hold
folded sweeps against others.
"""

from collections import defaultdict
from collections.abc import Hashable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property

from plumbnet.layout.edits import change_fields
from plumbnet.layout.model import System
from plumbnet.study.contingency.contingencies import Contingency

MOST_EXCHANGED = 2_000
"""Parts on one side of an exchange; larger ones are not sought."""
MOST_STEPS = 500_000
"""Pairs of parts looked at in all searches for exchanges; those already found are used on."""

_Way = tuple[str, str, str]
"""A pipe as one of its parts sees it: its own port, what is in the pipe, and the port at the other end."""


@dataclass
class TwinEvents:
    """Tells events of a layout whose twin is known to change nothing; `named` are parts that must stay as they are.

    `labels` are equal for parts that may be twins, see `Correspondence`.
    """

    system: System
    named: frozenset[str]
    labels: Mapping[str, str]
    _steps: int = 0
    _idle: dict[Hashable, list[str]] = field(default_factory=lambda: defaultdict(list))
    _exchanged: dict[str, set[str]] = field(default_factory=lambda: defaultdict(set))
    """By the later of two twins those found to be the earlier."""

    def is_like_an_idle_one(self, event: Contingency) -> bool:
        """Whether an event that changes nothing has befallen a twin; it is kept as one more that does not."""
        idle = self._idle[self.look(event)]
        is_like = not self._exchanged[event.part].isdisjoint(idle)
        # The latest first: what was swept last stands in the same run as a rule.
        if is_like or any(self._are_twins(earlier, event.part) for earlier in reversed(idle)):
            idle.append(event.part)
            return True
        return False

    def changes_nothing(self, event: Contingency) -> None:
        """Keep an event that was found to change nothing."""
        self._idle[self.look(event)].append(event.part)

    def look(self, event: Contingency) -> Hashable:
        """What events of twins have in common; events that have it are twins as a rule."""
        said = repr(change_fields(event.change)).replace(repr(event.part), "")
        return said, event.words, self.labels[event.part]

    def _are_twins(self, earlier: str, later: str) -> bool:
        pairs = self._exchange(earlier, later)
        if pairs is None:
            return False
        for one, other in pairs.items():
            self._exchanged[other].add(one)
        return True

    def _exchange(self, earlier: str, later: str) -> Mapping[str, str] | None:
        """The exchange of two parts and of what hangs on them; None where there is none."""
        pairs = {earlier: later}
        waiting = [(earlier, later)]
        while waiting:
            one, other = waiting.pop()
            beside = self._beside(one, other)
            self._steps += 1
            if beside is None or len(pairs) > MOST_EXCHANGED or self._steps > MOST_STEPS:
                return None
            for pair in beside:
                if pair[0] not in pairs:
                    pairs[pair[0]] = pair[1]
                    waiting.append(pair)
        return pairs if self._is_exchange(pairs) else None

    def _beside(self, one: str, other: str) -> list[tuple[str, str]] | None:
        """Parts beside two that would be exchanged with them; None where what is beside them differs."""
        here, there = self._sorted_ways(one), self._sorted_ways(other)
        if [(way, self._looks[far]) for way, far in here] != [(way, self._looks[far]) for way, far in there]:
            return None
        return [(far, like) for (_, far), (_, like) in zip(here, there, strict=True) if far != like]

    def _is_exchange(self, pairs: Mapping[str, str]) -> bool:
        """Whether to exchange these parts leaves the layout as it is, and each stands before its counterpart."""
        exchanged = {**pairs, **{later: earlier for earlier, later in pairs.items()}}
        if len(exchanged) < 2 * len(pairs) or not self.named.isdisjoint(exchanged):
            return False
        if any(one >= other or self._places[one] >= self._places[other] for one, other in pairs.items()):
            return False
        return all(
            self._looks[one] == self._looks[other]
            and sorted((way, exchanged.get(far, far)) for way, far in self._ways[one]) == sorted(self._ways[other])
            for one, other in exchanged.items()
        )

    def _sorted_ways(self, name: str) -> list[tuple[_Way, str]]:
        return sorted(self._ways[name], key=lambda one: (one[0], self._looks[one[1]], self._places[one[1]]))

    @cached_property
    def _places(self) -> Mapping[str, int]:
        return {name: place for place, name in enumerate(self.system.parts)}

    @cached_property
    def _looks(self) -> Mapping[str, str]:
        """Everything about a part but its name."""
        return {name: repr(part) for name, part in self.system.parts.items()}

    @cached_property
    def _ways(self) -> Mapping[str, list[tuple[_Way, str]]]:
        found: dict[str, list[tuple[_Way, str]]] = {name: [] for name in self.system.parts}
        for name, way in self._all_ways():
            found[name].append(way)
        return found

    def _all_ways(self) -> Iterator[tuple[str, tuple[_Way, str]]]:
        for pipe in self.system.pipes:
            size = repr((pipe.volume_m3, pipe.length_m, pipe.tube))
            yield pipe.start.part, ((f"{pipe.start.port} to", size, pipe.end.port), pipe.end.part)
            yield pipe.end.part, ((f"{pipe.end.port} from", size, pipe.start.port), pipe.start.part)
