"""A system to single steps from port to port, and every simple way that such steps make."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from enum import Enum
from functools import cached_property

import networkx as nx

from plumbnet.layout.model.part import Boosting, Free, OneWay, Outlet, Passage, Reducing, Shut
from plumbnet.layout.model.system import End, System
from plumbnet.layout.units.units import PASCAL_PER_METRE


class Sense(Enum):
    """How a step stands to the passage it goes through."""

    FREE = "free"
    FORWARD = "forward"
    BACK = "back"
    AGAINST = "against"
    SHUT = "shut"


@dataclass(frozen=True)
class Step:
    """From a port to the next; `part` is the device passed, empty for a pipe; pressures at datum."""

    start: End
    end: End
    part: str
    sense: Sense
    opens_pa: float = 0.0
    set_pa: float = float("inf")
    rise_pa: float = 0.0
    is_joint: bool = False
    """Whether it goes through a pump without a check, in which water moves either way against what the pump holds."""

    @property
    def is_way(self) -> bool:
        """Whether water can pass at all."""
        return self.sense in {Sense.FREE, Sense.FORWARD, Sense.BACK}

    @property
    def is_supply(self) -> bool:
        """Whether water comes in by it."""
        return self.sense in {Sense.FREE, Sense.FORWARD}


@dataclass(frozen=True)
class Site:
    """An outlet of a part, at its port; pressures at datum."""

    part: str
    end: End
    outlet: Outlet
    opens_pa: float
    is_supply: bool


@dataclass(frozen=True)
class Walking:
    """The steps of a system, by the port they start from."""

    system: System

    @cached_property
    def ends(self) -> list[End]:
        return [End(name, port) for name, part in self.system.parts.items() for port in part.port_names()]

    @cached_property
    def steps(self) -> list[Step]:
        steps = [step for name in self.system.parts for step in self._through(name)]
        for pipe in self.system.pipes:
            steps += both_ways(pipe.start, pipe.end, "", Sense.FREE)
        return steps

    @cached_property
    def steps_from(self) -> dict[End, list[Step]]:
        steps_from: dict[End, list[Step]] = {end: [] for end in self.ends}
        for step in self.steps:
            steps_from[step.start].append(step)
        return steps_from

    @cached_property
    def sites(self) -> list[Site]:
        return [self._site(name, outlet) for name, part in self.system.parts.items() for outlet in part.outlets()]

    def _site(self, name: str, outlet: Outlet) -> Site:
        is_supply = self.system.parts[name].source() is not None
        return Site(name, End(name, outlet.port), outlet, outlet.opens_pa + self.elevation_pa(name), is_supply)

    def elevation_pa(self, part: str) -> float:
        """What the height of a part above datum takes from the pressure there."""
        elevation_pa: float = PASCAL_PER_METRE * self.system.parts[part].elevation_m
        return elevation_pa

    def ways(self, start: End, allowed: Callable[[Step], bool]) -> Iterator[tuple[End, list[Step]]]:
        """Every way from `start` that meets no port twice, with the port where it ends; the empty one too.

        The list of steps is one and the same and changes as the search goes on.
        """
        way: list[Step] = []
        met = {start}

        def walk(at: End) -> Iterator[tuple[End, list[Step]]]:
            yield at, way
            for step in self.steps_from[at]:
                if step.end not in met and allowed(step):
                    way.append(step)
                    met.add(step.end)
                    yield from walk(step.end)
                    met.discard(step.end)
                    way.pop()

        return walk(start)

    def graph(self, allowed: Callable[[Step], bool]) -> "nx.DiGraph[End]":
        """The allowed steps as a graph."""
        graph: nx.DiGraph[End] = nx.DiGraph()
        graph.add_nodes_from(self.ends)
        graph.add_edges_from((step.start, step.end) for step in self.steps if allowed(step))
        return graph

    def _through(self, name: str) -> Iterator[Step]:
        for passage in self.system.parts[name].passages():
            yield from self._steps(name, passage)

    def _steps(self, name: str, passage: Passage) -> Iterator[Step]:
        match passage:
            case Free(a, b):
                yield from both_ways(End(name, a), End(name, b), name, Sense.FREE)
            case Shut(a, b):
                yield from both_ways(End(name, a), End(name, b), name, Sense.SHUT)
            case OneWay(a, b, opens_pa):
                yield Step(End(name, a), End(name, b), name, Sense.FORWARD, opens_pa=opens_pa)
                yield Step(End(name, b), End(name, a), name, Sense.AGAINST)
            case Reducing(a, b, set_pa, bypass):
                yield Step(End(name, a), End(name, b), name, Sense.FORWARD, set_pa=set_pa + self.elevation_pa(name))
                yield Step(End(name, b), End(name, a), name, Sense.BACK if bypass else Sense.AGAINST)
            case Boosting(a, b, rise_pa, checked):
                joint, back = rise_pa > 0.0 and not checked, Sense.AGAINST if checked else Sense.BACK
                yield Step(End(name, a), End(name, b), name, Sense.FORWARD, rise_pa=rise_pa, is_joint=joint)
                yield Step(End(name, b), End(name, a), name, back, rise_pa=-rise_pa, is_joint=joint)


def both_ways(a: End, b: End, part: str, sense: Sense) -> Iterator[Step]:
    yield Step(a, b, part, sense)
    yield Step(b, a, part, sense)
