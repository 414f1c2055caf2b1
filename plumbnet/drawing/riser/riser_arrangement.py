"""A building to its riser diagram: everything in its place on paper, and the list of what is folded."""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from plumbnet.drawing.items import Diagram, Item
from plumbnet.drawing.riser.fold_entries import FoldEntry, fold_entries, said_of_fold
from plumbnet.drawing.riser.likeness import broken, folding_of, likeness_of
from plumbnet.drawing.riser.stacking import (
    RiserMark,
    RiserPipes,
    Setting,
    ShaftPlace,
    letter_item,
    marks_of,
    moved,
    place_details,
    put_side_by_side,
    setting_of,
    with_plants_below,
)
from plumbnet.drawing.riser.structure import Structure
from plumbnet.drawing.routing import Arrangement, Junction, Placement, Route, dots
from plumbnet.layout.model import End

SHEET_SHAPE = 2**0.5
"""Width of a lying sheet in its heights, ISO 216 (from memory)."""


@dataclass(frozen=True, slots=True)
class RiserDiagram:
    """What is drawn, with boxes in place of folded branches; its places, marks, and folds."""

    diagram: Diagram
    arrangement: Arrangement
    marks: tuple[RiserMark, ...]
    folds: tuple[FoldEntry, ...]


def riser_diagram(structure: Structure, least: int = 3) -> RiserDiagram:
    """The riser diagram of a building, in which at least so many alike are drawn as one."""
    whole = folding_of(structure, likeness_of(structure), least)
    folding, breaks = broken(structure, whole)
    setting, places = _best(setting_of(structure, folding, breaks))
    place_details(setting, places)
    pipes = RiserPipes(setting)
    pipes.draw()
    assembly = _Assembly(setting, tuple(_blocks(setting)), tuple(_boxes(setting)), pipes)
    return RiserDiagram(
        assembly.diagram, assembly.arrangement, tuple(marks_of(setting, places)), tuple(fold_entries(structure, whole))
    )


def _best(beside: Setting) -> tuple[Setting, list[ShaftPlace]]:
    """Plants at the left of the shafts or below them, whichever fits a sheet better; with the places of shafts."""
    below = with_plants_below(beside)
    both = [(setting, put_side_by_side(setting)) for setting in (beside, below) if setting is not None]
    return min(both, key=lambda one: _side(*one))


def _side(setting: Setting, places: Sequence[ShaftPlace]) -> float:
    """The height of the smallest sheet, as wide as ISO 216 has it, that holds a setting."""
    wide = max([place.right for place in places] + [setting.bands.right])
    return max(wide / SHEET_SHAPE, setting.bands.floor[0] - setting.bands.top)


def _blocks(setting: Setting) -> Iterator[Arrangement]:
    """Plants, branches drawn out on their level, and details, each where it stands."""
    for number, plant in setting.plants.items():
        if plant.arrangement is not None:
            yield moved(plant.arrangement, *setting.bands.corner[number])
    for number, stop in setting.stops.items():
        if stop.arrangement is not None:
            yield moved(stop.arrangement, *setting.corner[number])
    for number, detail in setting.details.items():
        yield moved(detail.arrangement, *setting.detail_corner[number])


def _boxes(setting: Setting) -> Iterator[Placement]:
    """The boxes of letters, where they stand."""
    for number, stop in setting.stops.items():
        if stop.arrangement is None:
            fold, (x, y) = setting.folding.fold_of[number], setting.corner[number]
            item = letter_item(stop, fold.letter, said_of_fold(setting.structure, fold))
            yield Placement(item, x + stop.width / 2, y - stop.height / 2)


@dataclass(frozen=True, slots=True)
class _Assembly:
    """Puts blocks, boxes and the pipes between them together."""

    setting: Setting
    blocks: tuple[Arrangement, ...]
    boxes: tuple[Placement, ...]
    pipes: RiserPipes

    @property
    def routes(self) -> tuple[Route, ...]:
        return (*(route for block in self.blocks for route in block.routes), *self.pipes.routes)

    @property
    def arrangement(self) -> Arrangement:
        inside = (each for block in self.blocks for each in block.placements)
        placements = (*inside, *self.boxes, *self.pipes.placements)
        forks = tuple(fork for block in self.blocks for fork in block.forks)
        return Arrangement(placements, tuple(self._junctions()), self.routes, forks)

    @property
    def diagram(self) -> Diagram:
        links = sorted((route.link for route in self.routes if route.link is not None), key=lambda link: link.number)
        origins = dict[End, End](self.pipes.origins)
        for detail in self.setting.details.values():
            origins.update(detail.origins)
        return Diagram({item.name: item for item in self._items()}, tuple(links), origins)

    def _items(self) -> Sequence[Item]:
        """All that is drawn, in the order of the file, then ends of risers and boxes; joints in boxes have no name."""
        all_items = self.setting.structure.diagram.items
        own = {each.item.name: each.item for block in self.blocks for each in block.placements}
        joints = {each.item.name for block in self.blocks for each in block.junctions}
        joints |= {name for name in self.pipes.spots if all_items[name].symbol.is_joint}
        nameless = joints & self._folded()
        upright = {each.item.name for each in self.pipes.placements}
        drawn = [
            own.get(name, replace(item, lines=()) if name in nameless else item)
            for name, item in all_items.items()
            if name in own or name in joints or name in upright
        ]
        ends = [item for name, item in own.items() if name not in all_items]
        return [*drawn, *ends, *(each.item for each in self.boxes)]

    def _folded(self) -> set[str]:
        """The joints of folded branches that sit on risers."""
        members = (self.setting.structure.components[number].members for number in self.setting.folding.fold_of)
        return {name for each in members for name in each if name in self.pipes.spots}

    def _junctions(self) -> Iterator[Junction]:
        """Every joint with its dots: in its detail first, where it has one, then on its riser."""
        known: Mapping[str, tuple[tuple[float, float], ...]] = {
            each.item.name: each.dots for block in self.blocks for each in block.junctions
        }
        details = self.setting.details
        told = {name for number in details for name in self.setting.structure.components[number].members}
        met: dict[str, list[Route]] = defaultdict(list)
        for route in self.routes:
            names = (route.joint,) if route.link is None else (route.link.start.part, route.link.end.part)
            for name in dict.fromkeys(names):
                met[name].append(route)
        for item in self.diagram.items.values():
            if item.symbol.is_joint:
                spots = [*self.pipes.spots.get(item.name, ()), *known.get(item.name, ())]
                found = dots(met[item.name], spots)
                first = known[item.name] if item.name in told else ()
                yield Junction(item, tuple(dict.fromkeys((*first, *found))))
