"""Parts that are alike in everything, whichever is which, to pairs in the order of the files that fit together."""

from collections import defaultdict, deque
from collections.abc import Collection, Hashable, Iterator, Mapping
from dataclasses import dataclass, field

from plumbnet.study.renaming.part_colours import Colours, Side, refined


def twins(earlier: Side, later: Side) -> dict[str, str]:
    """Names in the later layout of parts of the earlier that are alike in everything, so that it matters not which is.

    Pairs fit together: what is joined in the one layout is joined in the other; where it is not, as may be where pipes
    lead round in rings, there is no pair. Source: own derivation. Cost: one refinement, else linear in the pipes.
    """
    colours = refined((earlier, later), repr)
    search = _TwinSearch(earlier, later, colours, set(_as_many(colours)))
    search.run()
    return search.fitting()


def _as_many(colours: Colours) -> Iterator[Hashable]:
    """The colours of which there are as many in both layouts."""
    counts: dict[Hashable, list[int]] = defaultdict(lambda: [0, 0])
    for side, coloured in enumerate(colours):
        for colour in coloured.values():
            counts[colour][side] += 1
    yield from (colour for colour, (old, new) in counts.items() if old == new)


@dataclass(slots=True)
class _TwinSearch:
    """Pairs from what is known outward; where nothing known is near, the first of a colour with the first."""

    earlier: Side
    later: Side
    colours: Colours
    shared: Collection[Hashable]
    pairs: dict[str, str] = field(default_factory=dict)
    taken: set[str] = field(default_factory=set)

    def run(self) -> None:
        """Find pairs, fitting or not."""
        for old, new in self.earlier.known.items():
            self._spread(old, new)
        free: dict[Hashable, deque[str]] = defaultdict(deque)
        for name, colour in self.colours[1].items():
            free[colour].append(name)
        for name, colour in self.colours[0].items():
            while free[colour] and free[colour][0] in self.taken:
                free[colour].popleft()
            if colour in self.shared and name not in self.pairs and free[colour]:
                self._pair(name, free[colour][0])
                self._spread(name, free[colour][0])

    def fitting(self) -> dict[str, str]:
        """The pairs, less those whose neighbours are none."""
        pairs = dict(self.pairs)
        while True:
            names = {**self.earlier.known, **pairs}
            unfit = [old for old, new in pairs.items() if not self._fits(old, new, names)]
            if not unfit:
                return pairs
            for old in unfit:
                del pairs[old]

    def _fits(self, old: str, new: str, names: Mapping[str, str]) -> bool:
        before, after = self.earlier.layout.pipes[old], self.later.layout.pipes[new]
        told = sorted((one.port, names.get(one.far.part, ""), one.far.port) for one in before)
        return told == sorted((one.port, *one.far) for one in after)

    def _pair(self, old: str, new: str) -> None:
        self.pairs[old] = new
        self.taken.add(new)

    def _spread(self, old: str, new: str) -> None:
        """Pair what is alike beside a pair, in the order of the files, and go on from there."""
        queue = deque([(old, new)])
        while queue:
            one, other = queue.popleft()
            there = self._free_beside(1, other)
            for key, names in self._free_beside(0, one).items():
                for pair in zip(names, there.get(key, ()), strict=False):
                    self._pair(*pair)
                    queue.append(pair)

    def _free_beside(self, at: int, name: str) -> dict[Hashable, list[str]]:
        """What may be paired beside a part of the earlier (0) or later (1) layout, by colour and how it is joined."""
        side, done = ((self.earlier, self.pairs), (self.later, self.taken))[at]
        found: dict[Hashable, list[str]] = defaultdict(list)
        for one in side.layout.pipes[name]:
            colour = self.colours[at].get(one.far.part)
            if colour in self.shared and one.far.part not in done:
                found[one.port, colour, one.far.port].append(one.far.part)
        return {key: sorted(dict.fromkeys(names), key=side.layout.places.__getitem__) for key, names in found.items()}
