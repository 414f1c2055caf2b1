"""Pipes back to the runs that an author would write: the path with its ports, what is known of the pipe."""

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TypeAlias

from plumbnet.layout.edits import WRITTEN_DIGITS
from plumbnet.layout.model import ARROW, End, Part, Pipe, System, run_stops
from plumbnet.layout.units import LENGTH, VOLUME, Dimension, show, tube

ROUNDING = 1e-5
"""Part by which a quantity may differ that has been written to six digits."""

Stand: TypeAlias = tuple[str, str | None, str | None]
"""A part of a run with the ports by which the run enters it and leaves it; None at an end of the run."""


@dataclass(frozen=True, slots=True)
class Wholes:
    """The parts of a layout as its runs name them: what opens into several is one."""

    system: System

    def part(self, name: str) -> Part:
        """The part of a name that stands in the file."""
        instance = self.system.instances.get(name)
        return self.system.parts[name] if instance is None else instance.whole

    def outdoors(self, pipe: Pipe) -> Pipe:
        """A pipe with each end at a port that a run can name."""
        return replace(pipe, start=self._named(pipe.start), end=self._named(pipe.end))

    def _named(self, end: End) -> End:
        for instance in self.system.instances.values():
            if end.part in instance.parts:
                return instance.outdoors(end)
        return end


def segments(whole: Wholes, pipes: Iterable[Pipe]) -> Iterator[tuple[Pipe, ...]]:
    """Pipes in the order of a run, cut where a run cannot pass on or each of them is of another length or size."""
    chain: list[Pipe] = []
    for pipe in map(whole.outdoors, pipes):
        if chain and not (_passes(whole, chain[-1], pipe) and _is_of_one_sort(chain[-1], pipe)):
            yield tuple(chain)
            chain = []
        chain.append(pipe)
    if chain:
        yield tuple(chain)


def _passes(whole: Wholes, first: Pipe, second: Pipe) -> bool:
    return first.end.part == second.start.part and whole.part(first.end.part).mate(first.end.port) == second.start.port


def _is_of_one_sort(one: Pipe, other: Pipe) -> bool:
    return (
        one.tube == other.tube
        and math.isclose(one.volume_m3, other.volume_m3, rel_tol=ROUNDING)
        and (one.length_m is None) == (other.length_m is None)
        and math.isclose(one.length_m or 0.0, other.length_m or 0.0, rel_tol=ROUNDING)
    )


@dataclass(frozen=True, slots=True)
class OldPath:
    """The path of a run as its author wrote it, stop by stop, and what stood between them."""

    words: Mapping[Stand, str]
    gaps: Mapping[tuple[str, str], str]

    def gap(self, one: str, other: str) -> str:
        """What stands between two stops: what stood there; else behind the one or before the other, as its author did.

        So a part that comes between two and is taken out again leaves them as they stood.
        """
        behind = (gap for (start, _), gap in self.gaps.items() if start == one)
        before = (gap for (_, end), gap in self.gaps.items() if end == other)
        known = self.gaps.get((one, other))
        return known if known is not None else next(behind, None) or next(before, None) or f" {ARROW} "


def old_path(whole: Wholes, path: str, pipes: Sequence[Pipe]) -> OldPath:
    """What an author wrote for each stop of a run, whose pipes these are."""
    stops, stands = run_stops(path), list(_stands([whole.outdoors(pipe) for pipe in pipes]))
    words = {stand: path[stop.offset : stop.offset + stop.width] for stand, stop in zip(stands, stops, strict=True)}
    gaps = {(one.name, other.name): path[one.offset + one.width : other.offset] for one, other in pairwise(stops)}
    return OldPath(words, gaps)


def path_text(whole: Wholes, pipes: Sequence[Pipe], old: OldPath) -> str:
    """The path of a run: as its author wrote what was there before, with ports where they are not the usual ones."""
    stands = list(_stands(pipes))
    text = _word(whole, stands[0], old)
    for one, other in pairwise(stands):
        text += old.gap(one[0], other[0]) + _word(whole, other, old)
    return text


def _stands(pipes: Sequence[Pipe]) -> Iterator[Stand]:
    yield pipes[0].start.part, None, pipes[0].start.port
    for one, other in pairwise(pipes):
        yield one.end.part, one.end.port, other.start.port
    yield pipes[-1].end.part, pipes[-1].end.port, None


def _word(whole: Wholes, stand: Stand, old: OldPath) -> str:
    if stand in old.words:
        return old.words[stand]
    name, enter, leave = stand
    part = whole.part(name)
    ports = part.port_names()
    usual = part.leaves_at() if enter is None else part.enters_at()
    port = leave if enter is None else enter
    return name if port == (usual or (ports[0] if len(ports) == 1 else None)) else f"{name}.{port}"


def pipe_fields(system: System, pipes: Sequence[Pipe]) -> dict[str, object]:
    """What a run says of its pipe beside the path: its size, and length and water of the whole chain."""
    size = pipes[0].tube
    lengths = [pipe.length_m for pipe in pipes if pipe.length_m is not None]
    water_m3 = sum(pipe.volume_m3 for pipe in pipes)
    length_m = sum(lengths) if len(lengths) == len(pipes) else None
    fields: dict[str, object] = {} if size is None else {"pipe": size}
    if length_m is not None:
        fields["length"] = _written(system, length_m, LENGTH)
    inside_m3 = 0.0 if size is None or length_m is None else tube(size).volume_m3_per_m * length_m
    if water_m3 and not math.isclose(water_m3, inside_m3, rel_tol=ROUNDING):
        fields["volume"] = _written(system, water_m3, VOLUME)
    return fields


def _written(system: System, value: float, dimension: Dimension) -> str:
    return show(value, dimension, system.units, WRITTEN_DIGITS)
