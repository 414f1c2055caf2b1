"""Two layouts whose parts are partly paired to colours of the others: alike in both where what surrounds them is."""

from collections.abc import Callable, Hashable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from plumbnet.layout.model import Part
from plumbnet.study.renaming.surroundings import Surroundings

_DEEP = 64
"""Pipes away up to which what surrounds two parts is compared: more than stand in one run."""

Colours = tuple[Mapping[str, Hashable], Mapping[str, Hashable]]
"""The colour of each part that is left, in the earlier layout and in the later."""


@dataclass(frozen=True, slots=True)
class Side:
    """One of the two layouts; `known` has the name in the later one of each part that is paired."""

    layout: Surroundings
    known: Mapping[str, str]

    def left(self) -> list[str]:
        """The parts that are not paired."""
        return [name for name in self.layout.parts if name not in self.known]


def refined(sides: Sequence[Side], look: Callable[[Part], str]) -> Colours:
    """Coloured by how they look and by what surrounds them, up to 64 pipes away; what is paired stands fast.

    Source: colour refinement, common practice where graphs are compared.
    """
    numbers: dict[Hashable, int] = {}
    colours = [_first(side, look, numbers) for side in sides]
    left = [side.left() for side in sides]
    classes = 0
    for _ in range(_DEEP):
        further = [
            {name: _number((mine[name], _around(side, name, mine)), numbers) for name in names}
            for side, names, mine in zip(sides, left, colours, strict=True)
        ]
        for mine, found in zip(colours, further, strict=True):
            mine.update(found)
        distinct = len({colour for found in further for colour in found.values()})
        if distinct == classes:
            break
        classes = distinct
    return _of_left(colours[0], left[0]), _of_left(colours[1], left[1])


def _first(side: Side, look: Callable[[Part], str], numbers: dict[Hashable, int]) -> dict[str, int]:
    """Each part by itself: who it is where that is known, and else how it looks."""
    who = {name: ("known", side.known[name]) for name in side.known}
    return {name: _number(who.get(name, ("left", look(part))), numbers) for name, part in side.layout.parts.items()}


def _number(colour: Hashable, numbers: dict[Hashable, int]) -> int:
    return numbers.setdefault(colour, len(numbers))


def _around(side: Side, name: str, colours: Mapping[str, int]) -> Hashable:
    return tuple(sorted((one.port, colours[one.far.part], one.far.port) for one in side.layout.pipes[name]))


def _of_left(colours: Mapping[str, int], left: Sequence[str]) -> dict[str, int]:
    return {name: colours[name] for name in left}


def beside(earlier: Side, later: Side) -> Colours:
    """Coloured by kind and by what stands right beside them: who that is where it is paired, and else its kind.

    A part beside which nothing is paired has no colour.
    """
    return dict(_beside(earlier)), dict(_beside(later))


def _beside(side: Side) -> Iterator[tuple[str, Hashable]]:
    layout = side.layout
    for name in side.left():
        around = sorted(
            (one.port, side.known.get(one.far.part, ""), layout.parts[one.far.part].kind, one.far.port)
            for one in layout.pipes[name]
        )
        if any(who for _, who, _, _ in around):
            yield name, (layout.parts[name].kind, tuple(around))
