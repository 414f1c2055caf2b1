"""A diagram to the structure of its building: levels, plants, branches, risers and shafts, from the graph alone."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from plumbnet.drawing.items import BuildingFacts, Diagram
from plumbnet.drawing.riser.structure.components import Component, components_of
from plumbnet.drawing.riser.structure.part_heights import part_heights
from plumbnet.drawing.riser.structure.plant_uses import chains_to_uses
from plumbnet.drawing.riser.structure.riser_chains import Chain, chains_of
from plumbnet.drawing.riser.structure.riser_search import risers_among
from plumbnet.drawing.riser.structure.shafts import Riser, Shaft, risers_of, shafts_of
from plumbnet.drawing.riser.structure.trunk_heights import TALL_M

LEAST_PARTS = 60
_LEAST_LEVELS = 4
_LEAST_STOPS = 3
_FEWEST_LEVELS = 3
_FEWEST_STOPS = 2
_SAME_M = 1e-3
"""Heights of floors are rounded to the millimetre."""


@dataclass(frozen=True)
class Structure:
    """What stands where in a building: `height` of each part in metres, `floors` the heights of its levels."""

    diagram: Diagram
    building: BuildingFacts
    height: Mapping[str, float]
    floors: tuple[float, ...]
    components: tuple[Component, ...]
    risers: tuple[Riser, ...]
    shafts: tuple[Shaft, ...]

    @cached_property
    def home(self) -> Mapping[str, Component]:
        """The component of each part that does not stand in a riser."""
        return {name: component for component in self.components for name in component.members}

    @cached_property
    def upright(self) -> frozenset[int]:
        """The numbers of the links in risers."""
        return frozenset(link.number for chain in chains_in(self.risers) for link in chain.links)

    @property
    def plants(self) -> tuple[Component, ...]:
        """The components that are plants."""
        return tuple(component for component in self.components if component.is_plant)

    def level_at(self, height_m: float) -> int:
        """The highest level whose floor lies no higher."""
        return max((at for at, floor in enumerate(self.floors) if floor <= height_m + _SAME_M), default=0)

    @property
    def is_stacked(self) -> bool:
        """Whether a riser diagram can be made of it: it has 3 levels, and a riser of 2 chains one above the other."""
        return len(self.floors) >= _FEWEST_LEVELS and self._stops >= _FEWEST_STOPS

    @property
    def _stops(self) -> int:
        return max((len(riser.chains) for riser in self.risers), default=0)

    @property
    def is_tall(self) -> bool:
        """Whether a riser diagram shows it best.

        It has 60 parts, 4 levels, a riser of 3 chains one above the other, and half of its fixtures on risers.
        """
        uses = [name for name, one in self.building.parts.items() if one.is_use]
        hung = sum(not self.home[name].is_plant for name in uses if name in self.home)
        is_large = len(self.diagram.items) >= LEAST_PARTS and len(self.floors) >= _LEAST_LEVELS
        return is_large and self._stops >= _LEAST_STOPS and 2 * hung >= len(uses) > 0


def structure_of(diagram: Diagram, building: BuildingFacts) -> Structure:
    """The structure of a building, whatever its parts are called."""
    height = part_heights(diagram, building)
    chains = chains_of(diagram, building, height)
    risers = risers_among(diagram, building, height, chains)
    components = components_of(diagram, building, chains, risers)
    uses = {chain.number: chain for chain in chains_to_uses(building, chains, risers, components)}
    if uses:
        chains = tuple(uses.get(chain.number, chain) for chain in chains)
        risers = (*risers, *uses.values())
        components = components_of(diagram, building, chains, risers)
    floors = _floors(height[end.part] for chain in risers for end in chain.ends)
    levelled = tuple(replace(each, level=_level(each, height, floors)) for each in components)
    stacked = risers_of(risers, levelled, height)
    return Structure(diagram, building, height, floors, levelled, stacked, shafts_of(stacked, levelled))


def _floors(heights: Iterable[float]) -> tuple[float, ...]:
    """The heights of levels: what lies within a storey of the lowest is one."""
    found: list[float] = []
    for height in sorted({round(each, 3) for each in heights}):
        if not found or height - found[-1] > TALL_M:
            found.append(height)
    return tuple(found) or (0.0,)


def _level(component: Component, height: Mapping[str, float], floors: Sequence[float]) -> int:
    """The level of the lowest riser's end at a component; the ground where none ends there."""
    lowest = min((height[each.end.part] for each in component.ends), default=0.0)
    return max((at for at, floor in enumerate(floors) if floor <= lowest + _SAME_M), default=0)


def chains_in(risers: Iterable[Riser]) -> list[Chain]:
    """The chains of all risers, one after the other."""
    return [chain for riser in risers for chain in riser.chains]
