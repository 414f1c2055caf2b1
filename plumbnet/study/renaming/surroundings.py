"""A layout to what surrounds each of its parts: by which of its ports it is joined to which port of which other."""

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from plumbnet.layout.model import End, Part, System, fixed_to


@dataclass(frozen=True, slots=True)
class Joined:
    """A pipe as one of its parts sees it: its own port, and the end that is not there."""

    port: str
    far: End


@dataclass(frozen=True)
class Surroundings:
    """The parts of a layout that have a name of their own, in its order, and the pipes of each."""

    parts: Mapping[str, Part]
    pipes: Mapping[str, tuple[Joined, ...]]

    @cached_property
    def places(self) -> Mapping[str, int]:
        """The place of each part among them."""
        return {name: place for place, name in enumerate(self.parts)}


def own_parts(system: System) -> dict[str, Part]:
    """The parts that have a name of their own; what comes fixed to one goes with it."""
    fixed = {name for owner, part in system.parts.items() for name in fixed_to(owner, part)[0]}
    return {name: part for name, part in system.parts.items() if name not in fixed}


def surroundings(system: System) -> Surroundings:
    """The parts of a system with their pipes, less those to what comes fixed to a part."""
    parts = own_parts(system)
    found: dict[str, list[Joined]] = defaultdict(list)
    for pipe in system.pipes:
        if pipe.start.part in parts and pipe.end.part in parts:
            found[pipe.start.part].append(Joined(pipe.start.port, pipe.end))
            found[pipe.end.part].append(Joined(pipe.end.port, pipe.start))
    return Surroundings(parts, {name: tuple(found[name]) for name in parts})
