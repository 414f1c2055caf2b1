"""A layout to its districts: what lies on one side of a boundary, as a layout of its own."""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import Final

from plumbnet.layout.model import OUT, End, Pipe, Record, System
from plumbnet.network import Network
from plumbnet.study.contingency.boundary import ROOT, Boundaries, Boundary

MOST_OF_IT: Final = 0.75
"""A district that holds a larger share of the parts than this spares nothing."""


@dataclass(frozen=True)
class District:
    """What lies on one side of a boundary, as a layout of its own with all else in one part beyond.

    `heaters` are those of the whole whose water can push into the boundary's zone.
    """

    boundary: Boundary
    names: frozenset[str]
    system: System
    heaters: tuple[str, ...]

    @property
    def is_heated_beyond(self) -> bool:
        """Whether water heated beyond can push into the boundary's zone."""
        return any(name not in self.names for name in self.heaters)

    @property
    def is_heated_inside(self) -> bool:
        """Whether water heated inside can."""
        return any(name in self.names for name in self.heaters)


@dataclass(frozen=True)
class Districts:
    """Finds the districts of a network round given parts."""

    network: Network
    _known: dict[tuple[str, str], District | None] = field(default_factory=dict)

    def around(self, parts: Sequence[str]) -> Iterator[District]:
        """Districts that hold all of some parts, none of them as its tee, the smallest first."""
        first, *others = parts
        for boundary in self._boundaries.above(first):
            district = self._district(boundary, first)
            if district is not None and district.names.issuperset(others) and boundary.tee not in others:
                yield district

    def _district(self, boundary: Boundary, part: str) -> District | None:
        """The district on a part's side of a boundary; None where it would be most of the layout."""
        if (boundary.tee, part) not in self._known:
            names = self._boundaries.inside(boundary, part)
            found = self._laid_out(boundary, names) if len(names) <= MOST_OF_IT * len(self._order) else None
            self._known.update({(boundary.tee, name): found for name in names})
        return self._known[boundary.tee, part]

    def _laid_out(self, boundary: Boundary, names: frozenset[str]) -> District:
        system = self.network.piping.system
        inside = sorted(names, key=self._order.__getitem__)
        numbers = sorted({number for name in inside if name != boundary.tee for number in self._pipes[name]})
        joint = End(boundary.tee, system.parts[boundary.tee].port_names()[0])
        part_of_it = replace(
            system,
            parts={ROOT: boundary.beyond, **{name: system.parts[name] for name in inside}},
            pipes=(Pipe(End(ROOT, OUT), joint), *(system.pipes[number] for number in numbers)),
            written={name: system.written[name] for name in inside if name in system.written},
            scenarios={},
            record=Record(lines={name: system.record.lines[name] for name in inside if name in system.record.lines}),
        )
        return District(
            boundary=boundary, names=names, system=part_of_it, heaters=self._boundaries.heaters_reaching(boundary.zone)
        )

    @cached_property
    def _boundaries(self) -> Boundaries:
        return Boundaries(self.network)

    @cached_property
    def _order(self) -> Mapping[str, int]:
        return {name: place for place, name in enumerate(self.network.piping.system.parts)}

    @cached_property
    def _pipes(self) -> Mapping[str, list[int]]:
        """The numbers of the pipes at each part."""
        found: dict[str, list[int]] = defaultdict(list)
        for number, pipe in enumerate(self.network.piping.system.pipes):
            for end in pipe.ends:
                found[end.part].append(number)
        return found
