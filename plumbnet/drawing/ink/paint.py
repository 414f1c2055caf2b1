"""A composition, drawn into axes: zones, ways, pipes, symbols, words."""

from matplotlib.axes import Axes

from plumbnet.drawing.ink.areas import is_inside, way_legs
from plumbnet.drawing.ink.badges import badge_marks
from plumbnet.drawing.ink.marks import dot_marks, junction_marks, symbol_marks, tag_marks, way_marks, zone_marks
from plumbnet.drawing.ink.pen import Group, Pen, add_group, identifier
from plumbnet.drawing.ink.pipes import crossings, pipe
from plumbnet.drawing.ink.riser_ink import over_marks, under_marks
from plumbnet.drawing.ink.sheet_composition import Composition
from plumbnet.drawing.routing import Arrangement

_UNDER, _ZONE, _WAY, _PIPES, _JOINTS, _SYMBOLS, _BADGES, _WORDS = 0.5, 1.0, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0


def paint_composition(axes: Axes, composition: Composition, pen: Pen) -> None:
    """Draw it all into axes whose unit is `pen.scale` points on paper."""
    for number, mark in enumerate(composition.marks, start=1):
        add_group(axes, Group(f"under-{number}", list(under_marks(mark, pen)), _UNDER))
        over = list(over_marks(mark, pen))
        if over:
            add_group(axes, Group(f"over-{number}", over, _WORDS))
    for number, area in enumerate(composition.areas, start=1):
        add_group(axes, Group(f"zone-{number}", list(zone_marks(area.outline, area.shading.tone, pen)), _ZONE))
        words = list(tag_marks(area.tag_box, area.shading, pen))
        add_group(axes, Group(f"zone-{number}-tag", words, _WORDS))
    for number, way in enumerate(composition.ways, start=1):
        legs = way_legs(composition.arrangement, way)
        if any(legs):
            add_group(axes, Group(f"way-{number}", list(way_marks(legs, pen)), _WAY))
    _paint_pipes(axes, composition.arrangement, pen)
    behind = _behind(composition, pen)
    for joint in composition.arrangement.junctions:
        name = joint.item.name
        marks = junction_marks(joint, composition.names.get(name), behind.get(name), pen)
        add_group(axes, Group(identifier("part", name), list(marks), _JOINTS))
    for placement in composition.arrangement.placements:
        name = placement.item.name
        marks = symbol_marks(placement, behind.get(name), pen)
        add_group(axes, Group(identifier("part", name), list(marks), _SYMBOLS, symbol=placement.item.symbol.name))
    for number, badge in enumerate(composition.badges, start=1):
        add_group(axes, Group(f"badge-{number}", list(badge_marks(badge, pen)), _BADGES))


def _paint_pipes(axes: Axes, arrangement: Arrangement, pen: Pen) -> None:
    hops = crossings(arrangement)
    for number, route in enumerate(arrangement.routes):
        name = f"run-{number}" if route.link is None else f"pipe-{route.link.number}"
        add_group(axes, Group(name, list(pipe(route, hops.get(number, ()), pen)), _PIPES, service=route.service))
    for number, fork in enumerate(arrangement.forks, start=1):
        add_group(axes, Group(f"fork-{number}", list(dot_marks(fork, pen)), _JOINTS))


def _behind(composition: Composition, pen: Pen) -> dict[str, str]:
    """The colour on which the words of each part lie, where there are shaded zones."""
    found = dict.fromkeys(composition.diagram.items, pen.palette.ground) if composition.areas else {}
    for area in composition.areas:
        colour = pen.palette.shades[area.shading.tone].fill
        found.update(
            (name, colour)
            for name in composition.diagram.items
            if is_inside(composition.diagram, name, area.shading.ports)
        )
    return found
