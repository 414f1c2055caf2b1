"""Everything that has a place, drawn into axes: zones, ways, pipes, symbols, words."""

from collections.abc import Mapping
from dataclasses import dataclass

from matplotlib.axes import Axes
from matplotlib.path import Path

from plumbnet.report.drawing.areas import is_inside, way_boxes, way_legs, zone_boxes
from plumbnet.report.drawing.ink import Group, Pen, add, identifier
from plumbnet.report.drawing.marks import body_marks, dot_marks, joint_marks, tag_marks, way_marks, zone_marks
from plumbnet.report.drawing.model import Model
from plumbnet.report.drawing.pipes import crossings, pipe
from plumbnet.report.drawing.places import Box, Placed
from plumbnet.report.drawing.remarks import Remarks, Shaded
from plumbnet.report.drawing.words import Free, joint_names, tag_spot, taken
from plumbnet.report.drawing.zones import edges, outline

_ZONE, _WAY, _PIPES, _JOINTS, _BODIES, _WORDS = 1.0, 1.5, 2.0, 3.0, 4.0, 6.0
_MOST_NAMED = 3
_LONGEST_NAME = 30


@dataclass(frozen=True, slots=True)
class Area:
    """A shaded zone on paper: what it covers, and where its tag stands."""

    zone: Shaded
    boxes: tuple[Box, ...]
    outline: Path
    tag_box: Box


@dataclass(frozen=True, slots=True)
class Layout:
    """What is drawn, with the names of joints and the shaded zones in their places."""

    model: Model
    placed: Placed
    remarks: Remarks
    names: Mapping[str, Box]
    areas: tuple[Area, ...]


def laid_out(model: Model, placed: Placed, remarks: Remarks) -> Layout:
    """Find places for the names of joints, then for the tags of zones, which may lie over nothing of the piping."""
    free = Free([*taken(placed), *way_boxes(placed, remarks.ways)])
    names = dict(joint_names(placed, free))
    found: list[tuple[Shaded, list[Box], Path]] = []
    for zone in remarks.zones:
        boxes = zone_boxes(model, placed, zone, names)
        if boxes:
            found.append((zone, boxes, outline(boxes)))
            for edge in edges(found[-1][2]):
                free.take(edge)
    areas = [Area(zone, tuple(boxes), path, tag_spot(tag(zone), boxes, free)) for zone, boxes, path in found]
    return Layout(model, placed, remarks, names, tuple(areas))


def tag(zone: Shaded) -> str:
    """The words that mark a zone."""
    names = [name if len(name) <= _LONGEST_NAME else f"{name[: _LONGEST_NAME - 3]}..." for name in zone.heaters]
    more = ["..."] if len(names) > _MOST_NAMED else []
    return f"{zone.verdict.value.upper()}: {', '.join([*names[:_MOST_NAMED], *more])}"


def paint(axes: Axes, layout: Layout, pen: Pen) -> None:
    """Draw it all into axes whose unit is `pen.scale` points on paper."""
    for number, area in enumerate(layout.areas, start=1):
        verdict = area.zone.verdict
        add(axes, Group(f"zone-{number}", list(zone_marks(area.outline, verdict, pen)), _ZONE))
        words = list(tag_marks(area.tag_box, tag(area.zone), verdict, pen))
        add(axes, Group(f"zone-{number}-tag", words, _WORDS))
    for number, way in enumerate(layout.remarks.ways, start=1):
        legs = way_legs(layout.placed, way)
        if any(legs):
            add(axes, Group(f"way-{number}", list(way_marks(legs, pen)), _WAY))
    _paint_pipes(axes, layout.placed, pen)
    behind = _behind(layout, pen)
    for joint in layout.placed.joints:
        name = joint.item.name
        marks = joint_marks(joint, layout.names.get(name), behind.get(name), pen)
        add(axes, Group(identifier("part", name), list(marks), _JOINTS))
    for body in layout.placed.bodies:
        name = body.item.name
        add(axes, Group(identifier("part", name), list(body_marks(body, behind.get(name), pen)), _BODIES))


def _paint_pipes(axes: Axes, placed: Placed, pen: Pen) -> None:
    hops = crossings(placed)
    for number, route in enumerate(placed.routes):
        name = f"run-{number}" if route.link is None else f"pipe-{route.link.number}"
        add(axes, Group(name, list(pipe(route, hops.get(number, ()), pen)), _PIPES))
    for number, fork in enumerate(placed.forks, start=1):
        add(axes, Group(f"fork-{number}", list(dot_marks(fork, pen)), _JOINTS))


def _behind(layout: Layout, pen: Pen) -> dict[str, str]:
    """The colour on which the words of each part lie, where there are shaded zones."""
    found = dict.fromkeys(layout.model.items, pen.palette.ground) if layout.areas else {}
    for area in layout.areas:
        colour = pen.palette.verdicts[area.zone.verdict].fill
        found.update((name, colour) for name in layout.model.items if is_inside(layout.model, name, area.zone.ports))
    return found
