"""Heated volumes: for each heat source the water it can warm while every fixture is shut, piece by piece."""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from plumbnet.layout.model import End, HeatSource
from plumbnet.network.loops.loops import Loop
from plumbnet.network.loops.tempered_water import tempering
from plumbnet.network.piping import Node, Piping


@dataclass(frozen=True, slots=True)
class Piece:
    """Water of one part or pipe that stands at `node`; two pieces with one `name` are the same water.

    `mixed_k` is the most to which a mixing valve lets it come, None where it comes to what its source is set to.
    """

    name: str
    node: Node
    volume_m3: float
    mixed_k: float | None = None


@dataclass(frozen=True, slots=True)
class HeatedVolume:
    """A heat source with the loops it heats and the water it warms.

    `inlet` and `outlet` are the nodes of its store. A source that fires only on flow warms nothing while
    every fixture is shut unless a pump drives water through it; `is_idle` says so, and `pieces` is then what
    it holds itself.
    """

    name: str
    source: HeatSource
    inlet: Node
    outlet: Node
    loops: tuple[Loop, ...]
    pieces: tuple[Piece, ...]

    @property
    def is_idle(self) -> bool:
        """Whether it stays cold while nothing is drawn."""
        return self.source.on_flow and not self.loops

    @property
    def volume_m3(self) -> float:
        """The heated volume."""
        return sum(piece.volume_m3 for piece in self.pieces)

    def hot_k(self, piece: Piece) -> float:
        """The highest temperature to which it warms a piece."""
        return self.source.hot_k if piece.mixed_k is None else min(self.source.hot_k, piece.mixed_k)

    @property
    def volumes_m3(self) -> dict[float, float]:
        """The heated volume by the temperature to which it comes, what is as hot as the source first."""
        found = {self.source.hot_k: 0.0}
        for piece in self.pieces:
            found[self.hot_k(piece)] = found.get(self.hot_k(piece), 0.0) + piece.volume_m3
        return found


def heated_volumes(piping: Piping, loops: Sequence[Loop]) -> tuple[HeatedVolume, ...]:
    """Every heat source of the system with its heated volume, in the order of the file."""
    pieces_of = {loop.nodes: {piece.name: piece for piece in _loop_pieces(piping, loop)} for loop in loops}
    loops_at: dict[Node, list[Loop]] = {}
    for loop in loops:
        for node in loop.nodes:
            loops_at.setdefault(node, []).append(loop)
    found = []
    for name, part in piping.system.parts.items():
        source = part.heat()
        if source is not None:
            found.append(_heated(piping, name, source, loops_at, pieces_of))
    return tuple(found)


def _heated(
    piping: Piping,
    name: str,
    source: HeatSource,
    loops_at: Mapping[Node, Sequence[Loop]],
    pieces_of: Mapping[frozenset[Node], dict[str, Piece]],
) -> HeatedVolume:
    inlet, outlet = piping.node_of[End(name, source.inlet)], piping.node_of[End(name, source.outlet)]
    own_loops = {loop.parts: loop for node in (inlet, outlet) for loop in loops_at.get(node, [])}
    loops = tuple(own_loops.values())
    pieces = {piece.name: piece for piece in _own_pieces(piping, name, inlet)}
    for loop in loops:
        own = pieces_of[loop.nodes]
        pieces |= own | {name: _hotter(own[name], pieces[name]) for name in pieces.keys() & own.keys()}
    return HeatedVolume(name, source, inlet, outlet, loops, tuple(pieces.values()))


def _own_pieces(piping: Piping, name: str, inlet: Node) -> Iterator[Piece]:
    for port, volume_m3 in piping.system.parts[name].contents():
        node = piping.node_of[End(name, port)]
        if node == inlet:
            yield Piece(f"{name}.{port}", node, volume_m3)


def _hotter(piece: Piece, other: Piece) -> Piece:
    """Of the same water as it belongs to two loops that which comes hotter, the first where both are alike."""
    return min(piece, other, key=lambda each: -math.inf if each.mixed_k is None else -each.mixed_k)


def _loop_pieces(piping: Piping, loop: Loop) -> Iterator[Piece]:
    tempered = tempering(piping, loop)
    for name in loop.parts:
        for port, volume_m3 in piping.system.parts[name].contents():
            node = piping.node_of[End(name, port)]
            if node in loop.nodes and volume_m3 > 0.0:
                mixed_k = None if tempered is None else tempered.of_part(node)
                yield Piece(f"{name}.{port}", node, volume_m3, mixed_k)
    for number in loop.pipes:
        pipe = piping.system.pipes[number]
        if pipe.volume_m3 > 0.0:
            start, end = piping.pipes[number]
            mixed_k = None if tempered is None else tempered.of_pipe(start, end)
            yield Piece(f"pipe {number}", start, pipe.volume_m3, mixed_k)
