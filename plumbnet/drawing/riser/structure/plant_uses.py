"""A plant to the pipes that lead to what is used on its own level: they become risers of no height."""

from collections import Counter, deque
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

import networkx as nx

from plumbnet.drawing.items import BuildingFacts
from plumbnet.drawing.palette import Service
from plumbnet.drawing.riser.structure.components import Component
from plumbnet.drawing.riser.structure.riser_chains import Chain
from plumbnet.layout.model import End


def chains_to_uses(
    building: BuildingFacts, chains: Sequence[Chain], risers: Sequence[Chain], components: Sequence[Component]
) -> tuple[Chain, ...]:
    """The chains by which the ground floor hangs on plants, each with its lower end at the plant.

    Leaves are taken off the plant one after the other, but for equipment and for headers, from which a second riser
    of supply parts.
    """
    upright = {chain.number for chain in risers}
    found: list[Chain] = []
    for component in components:
        if component.is_plant and component.ends:
            members = set(component.members)
            own = [c for c in chains if c.number not in upright and c.low.part in members and c.high.part in members]
            found += _Peeling(building, component, own).cuts()
    return tuple(sorted(found, key=lambda chain: chain.number))


@dataclass(slots=True)
class _Peeling:
    """Takes leaves off a plant; `risers` counts those of supply on what is gone, `used` says what is drawn there."""

    building: BuildingFacts
    component: Component
    chains: Sequence[Chain]
    graph: "nx.MultiGraph[End]" = field(default_factory=nx.MultiGraph)
    risers: dict[End, int] = field(default_factory=dict)
    used: dict[End, bool] = field(default_factory=dict)

    def cuts(self) -> Iterator[Chain]:
        for chain in self.chains:
            self.graph.add_edge(self._node(chain.low), self._node(chain.high))
        self._peel()
        for chain in self.chains:
            low, high = map(self._node, chain.ends)
            if high in self.risers and low not in self.risers and self.used[high]:
                yield chain
            elif low in self.risers and high not in self.risers and self.used[low]:
                yield chain.turned

    def _node(self, end: End) -> End:
        return end if self.building.parts[end.part].is_divided else End(end.part, "")

    def _peel(self) -> None:
        supply = Counter(each.end.part for each in self.component.ends if each.chain.service is not Service.RETURN)
        queue = deque(sorted(node for node in self.graph if self.graph.degree(node) <= 1))
        while queue:
            node = queue.popleft()
            facts = self.building.parts[node.part]
            if node in self.risers or facts.is_equipment:
                continue
            left = [each for each in self.graph[node] if each not in self.risers]
            gone = [each for each in self.graph[node] if each in self.risers]
            count = supply[node.part] + sum(self.risers[each] for each in gone)
            if sum(self.graph.number_of_edges(node, each) for each in left) > 1 or count > 1:
                continue
            self.used[node] = facts.is_use or any(self.used[each] for each in gone)
            self.risers[node] = count
            queue += sorted(left)
