"""A building to its riser diagram: everything in its place on paper, and the list of what is folded."""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from plumbnet.drawing.items import Diagram, Item
from plumbnet.drawing.riser.likeness import BranchFold, Folding, broken, folding_of, likeness_of, range_of
from plumbnet.drawing.riser.stacking import (
    RiserMark,
    RiserPipes,
    Setting,
    branch_called,
    letter_item,
    level_words,
    marks_of,
    moved,
    place_details,
    put_side_by_side,
    setting_of,
    shafts_called,
)
from plumbnet.drawing.riser.structure import Structure
from plumbnet.drawing.routing import Arrangement, Junction, Placement, Route, dots
from plumbnet.layout.model import End


@dataclass(frozen=True, slots=True)
class FoldEntry:
    """What is drawn once for many: its letter, none for shafts, how many, which one is drawn out, and all their names."""

    letter: str
    count: int
    shown: str
    names: str
    members: tuple[str, ...]


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
    setting = setting_of(structure, folding, breaks)
    places = put_side_by_side(setting)
    place_details(setting, places)
    pipes = RiserPipes(setting)
    pipes.draw()
    blocks = list(_blocks(setting))
    boxes = tuple(_boxes(setting))
    routes = (*(route for block in blocks for route in block.routes), *pipes.routes)
    items = _items(setting, blocks, boxes, pipes)
    placements = (*(each for block in blocks for each in block.placements), *boxes, *pipes.placements)
    forks = tuple(fork for block in blocks for fork in block.forks)
    arrangement = Arrangement(placements, tuple(_junctions(setting, items, blocks, pipes, routes)), routes, forks)
    links = sorted((route.link for route in routes if route.link is not None), key=lambda link: link.number)
    diagram = Diagram({item.name: item for item in items}, tuple(links), {**pipes.origins, **_origins(setting)})
    return RiserDiagram(diagram, arrangement, tuple(marks_of(setting, places)), tuple(fold_entries(structure, whole)))


def _blocks(setting: Setting) -> Iterator[Arrangement]:
    """Plants and the branches that are drawn out, where they stand."""
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


def _origins(setting: Setting) -> Mapping[End, End]:
    """The ends behind those of risers in details."""
    return {own: behind for detail in setting.details.values() for own, behind in detail.origins.items()}


def said_of_fold(structure: Structure, fold: BranchFold) -> str:
    """What the legend says of a letter."""
    names = range_of([branch_called(structure, number) for number in fold.members])
    at = level_words(structure, structure.components[fold.shown].level)
    return f"branch {fold.letter} × {len(fold.members)} ({names}), drawn out at {at}"


def _items(
    setting: Setting, blocks: Sequence[Arrangement], placed: Sequence[Placement], pipes: RiserPipes
) -> list[Item]:
    """All that is drawn, in the order of the file, then the boxes."""
    names = {each.item.name for block in blocks for each in (*block.placements, *block.junctions)}
    names |= {each.item.name for each in pipes.placements}
    names |= {name for name in pipes.spots if setting.structure.diagram.items[name].symbol.is_joint}
    folded = {name for number in setting.folding.fold_of for name in setting.structure.components[number].members}
    told = {name for number in setting.details for name in setting.structure.components[number].members}
    drawn = [
        replace(item, lines=()) if name in folded - told or name in pipes.spots.keys() & folded else item
        for name, item in setting.structure.diagram.items.items()
        if name in names
    ]
    ends = {each.item.name: each.item for block in blocks for each in block.placements}
    more = [item for name, item in ends.items() if name not in setting.structure.diagram.items]
    return [*drawn, *more, *(each.item for each in placed)]


def _junctions(
    setting: Setting, items: Sequence[Item], blocks: Sequence[Arrangement], pipes: RiserPipes, routes: Sequence[Route]
) -> Iterator[Junction]:
    """Every joint with its dots: on its riser first, where it sits on one."""
    met: dict[str, list[Route]] = defaultdict(list)
    for route in routes:
        names = (route.joint,) if route.link is None else (route.link.start.part, route.link.end.part)
        for name in dict.fromkeys(names):
            met[name].append(route)
    told = {name for number in setting.details for name in setting.structure.components[number].members}
    known = {each.item.name: each.dots for block in blocks for each in block.junctions}
    for item in items:
        if item.symbol.is_joint:
            spots = [*pipes.spots.get(item.name, ()), *known.get(item.name, ())]
            found = dots(met[item.name], spots)
            yield Junction(item, tuple(dict.fromkeys((*known[item.name], *found))) if item.name in told else found)


def fold_entries(structure: Structure, folding: Folding) -> Iterator[FoldEntry]:
    """What is drawn once for many: branches by their letters, then shafts."""
    for fold in folding.folds:
        called = [branch_called(structure, number) for number in fold.members]
        members = [name for number in fold.members for name in structure.components[number].members]
        shown = branch_called(structure, fold.shown)
        yield FoldEntry(fold.letter, len(fold.members), shown, range_of(called), tuple(members))
    for shaft in folding.shafts:
        if shaft.others:
            every = [structure.shafts[place] for place in (shaft.place, *shaft.others)]
            members = [
                name for each in every for riser in each.risers for chain in riser.chains for name in chain.devices
            ]
            shown = branch_called(structure, shaft.branches[0]) if shaft.branches else ""
            yield FoldEntry("", shaft.count, shown, shafts_called(structure, shaft), tuple(members))
