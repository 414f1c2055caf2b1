"""A schematic to its composition: symbols and pipes, the names of joints and the shaded zones in their places."""

from collections.abc import Mapping
from dataclasses import dataclass

from matplotlib.path import Path

from plumbnet.drawing.ink.areas import way_boxes, zone_boxes
from plumbnet.drawing.ink.badges import Badge, badges
from plumbnet.drawing.ink.drawing_limit import refuse_dense, refuse_dense_riser
from plumbnet.drawing.ink.outline import edges, outline
from plumbnet.drawing.ink.spots import Occupancy, joint_names, tag_spot, taken
from plumbnet.drawing.items import MOST_ITEMS, Diagram, Schematic, Shading, abridged
from plumbnet.drawing.riser import FEWEST_FOLDED, RiserMark, riser_diagram, stacked
from plumbnet.drawing.routing import Arrangement, Box, arrangement_of


@dataclass(frozen=True, slots=True)
class Area:
    """A shaded zone on paper: what it covers, and where its tag stands."""

    shading: Shading
    boxes: tuple[Box, ...]
    outline: Path
    tag_box: Box


@dataclass(frozen=True, slots=True)
class Composition:
    """What is drawn, with the names of joints and the shaded zones in their places."""

    diagram: Diagram
    arrangement: Arrangement
    ways: tuple[tuple[str, ...], ...]
    names: Mapping[str, Box]
    areas: tuple[Area, ...]
    badges: tuple[Badge, ...] = ()
    marks: tuple[RiserMark, ...] = ()
    """Those of a riser diagram."""

    @property
    def tones(self) -> frozenset[str]:
        """The tones of all areas."""
        return frozenset(area.shading.tone for area in self.areas)


def composition(schematic: Schematic, least_fold: int = FEWEST_FOLDED) -> Composition:
    """Everything of a schematic in its place: as a riser diagram where one is wanted, else in layers.

    In layers quiet branches are one symbol each where there are more than 300 items; in a riser diagram at least so
    many alike are drawn as one. The names of joints find their places first, then badges, then the tags of zones,
    which may lie over nothing of the piping. Raises TooDense where nobody could read what is left.
    """
    structure = stacked(schematic.diagram, schematic.building)
    if structure is None:
        diagram, marks = _abridged(schematic), tuple[RiserMark, ...]()
        arrangement = arrangement_of(diagram)
    else:
        refuse_dense_riser(structure, least_fold)
        riser = riser_diagram(structure, least_fold)
        diagram, arrangement, marks = riser.diagram, riser.arrangement, riser.marks
    covered = [box for mark in marks for box in mark.boxes()]
    occupancy = Occupancy([*taken(arrangement), *way_boxes(arrangement, schematic.ways), *covered])
    names = dict(joint_names(arrangement, occupancy))
    lettered = tuple(badges(arrangement, schematic.letters, occupancy))
    found: list[tuple[Shading, list[Box], Path]] = []
    for shading in schematic.shadings:
        boxes = zone_boxes(diagram, arrangement, shading.ports, names)
        if boxes:
            found.append((shading, boxes, outline(boxes)))
            for edge in edges(found[-1][2]):
                occupancy.take(edge)
    areas = [Area(shading, tuple(boxes), path, tag_spot(shading, boxes, occupancy)) for shading, boxes, path in found]
    return Composition(diagram, arrangement, schematic.ways, names, tuple(areas), lettered, marks)


def _abridged(schematic: Schematic) -> Diagram:
    """What is drawn in layers, with quiet branches folded where there is much."""
    diagram = schematic.diagram
    if len(diagram.items) > MOST_ITEMS:
        diagram = abridged(diagram, keep=schematic.kept)
        refuse_dense(schematic, diagram)
    return diagram
