"""A diagram to a picture for a screen: SVG in which classes say what state is shown, and the places of all in it."""

import html
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from plumbnet.drawing.ink import ZonePieces, arrow_corners, crossings, hopping_path, zone_pieces
from plumbnet.drawing.items import MOST_ITEMS, Diagram, abridged
from plumbnet.drawing.lettering import LEADING
from plumbnet.drawing.palette import Service
from plumbnet.drawing.routing import Arrangement, Box, Placement, Route, arrangement_of
from plumbnet.drawing.screen.reservation import Reservation, reserved
from plumbnet.drawing.screen.svg_strokes import drawn_marks, outline_data, path_data
from plumbnet.drawing.symbols import Point, Symbol

_EDGE = 10.0
"""Round all that is drawn, in points."""
_FINGER = 22.0
"""Half of what a finger needs, in points."""
_APART = 12.0
"""Between the middle of a part's edge and where its pipe can be touched."""
_SAME = 0.05


@dataclass(frozen=True, slots=True)
class ScreenPicture:
    """A picture and its places: `order` has its parts as a reader comes to them, `lines` each pipe from start to end.

    In `svg` every part is a group of class `part` with its place in `order` as `data-part`, every pipe has its number
    as `data-pipe`. A symbol in another state is a group of class `variant` with the name of the symbol as
    `data-symbol`; a ring, a mark of a fault and of being cut off are there for whoever shows them.
    """

    svg: str
    box: Box
    order: tuple[str, ...]
    lines: Mapping[int, tuple[Point, ...]]
    pieces: ZonePieces


def screen_picture(diagram: Diagram, reservation: Reservation, order: Sequence[str]) -> ScreenPicture:
    """The picture of a diagram with room kept for what may change; its parts in the given order.

    Above 300 items quiet branches are drawn as one symbol each, which come last.
    """
    if len(diagram.items) > MOST_ITEMS:
        diagram = abridged(diagram)
    known = dict.fromkeys(name for name in order if name in diagram.items)
    order = (*known, *(name for name in diagram.items if name not in known))
    kept = reserved(diagram, reservation)
    arrangement = arrangement_of(kept)
    box = _box_of(arrangement)
    left, top, right, bottom = box
    numbers = {name: number for number, name in enumerate(order)}
    content = "".join(_Painter(diagram, arrangement, reservation, numbers).painted())
    size = f"{left:.0f} {top:.0f} {right - left:.0f} {bottom - top:.0f}"
    svg = f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{size}">{content}</svg>'
    lines = {route.link.number: route.whole for route in arrangement.routes if route.link is not None}
    return ScreenPicture(svg, box, order, lines, zone_pieces(kept, arrangement))


def _box_of(arrangement: Arrangement) -> Box:
    boxes = [box for each in arrangement.placements for box in (each.outer_box, each.words_box)]
    points = [point for route in arrangement.routes for point in route.points]
    points += [dot for joint in arrangement.junctions for dot in joint.dots]
    lefts, tops = [box[0] for box in boxes] + [x for x, _ in points], [box[1] for box in boxes] + [y for _, y in points]
    rights = [box[2] for box in boxes] + [x for x, _ in points]
    feet = [box[3] for box in boxes] + [y for _, y in points]
    return min(lefts) - _EDGE, min(tops) - _EDGE, max(rights) + _EDGE, max(feet) + _EDGE


@dataclass(frozen=True, slots=True)
class _Joining:
    """What joins a part: what its pipes carry, of several the first, and whether one stands on its crown."""

    service: str
    is_crowned: bool = False


@dataclass(frozen=True, slots=True)
class _Painter:
    diagram: Diagram
    arrangement: Arrangement
    reservation: Reservation
    numbers: Mapping[str, int]

    def painted(self) -> Iterator[str]:
        """Layers from the ground up; those that a state fills are empty."""
        yield '<g class="zone" aria-hidden="true"><path class="edge"/><path class="fill"/><path class="hatch"/></g>'
        yield '<path class="way" aria-hidden="true"/><g class="pipes" aria-hidden="true">'
        hops = crossings(self.arrangement)
        for number, route in enumerate(self.arrangement.routes):
            yield from _pipe(route, hops.get(number, ()))
        yield "</g>"
        yield from self._dots()
        yield '<path class="front" aria-hidden="true"/><g class="parts">'
        placed = {each.item.name: each for each in self.arrangement.placements}
        joinings = _joinings(self.arrangement)
        for name in self.numbers:
            if name in placed:
                yield from self._part(placed[name], joinings.get(name, _Joining("")))
        yield '</g><g class="pipe-hits">'
        yield from self._hits()
        yield "</g>"

    def _dots(self) -> Iterator[str]:
        yield '<g class="dots" aria-hidden="true">'
        dots = [dot for joint in self.arrangement.junctions for dot in joint.dots]
        for x, y in [*dots, *self.arrangement.forks]:
            yield f'<circle cx="{x:.1f}" cy="{y:.1f}" r="2.6"/>'
        yield "</g>"

    def _part(self, each: Placement, joining: _Joining) -> Iterator[str]:
        left, top, right, bottom = each.outer_box
        places = f'data-x="{each.x:.1f}" data-y="{each.y:.1f}"'
        yield f'<g class="part" data-part="{self.numbers[each.item.name]}" {places}><g class="body" aria-hidden="true">'
        for number, symbol in enumerate(self.reservation.variants(self.diagram.items[each.item.name])):
            hidden = " hidden" if number else ""
            marks = "".join(
                [*_stubs(symbol, each, joining), *drawn_marks(symbol.marks, each.at), *_leads(symbol, each)]
            )
            yield f'<g class="variant{hidden}" data-symbol="{html.escape(symbol.name)}">{marks}</g>'
        ring = f'x="{left + 1.2:.1f}" y="{top + 1.2:.1f}" width="{right - left - 2.4:.1f}"'
        yield f'</g><rect class="ring" {ring} height="{bottom - top - 2.4:.1f}" rx="6"/>'
        yield f'<path class="fault-mark" d="M{left - 3:.1f} {top + 8:.1f}l8 -14l8 14zm8 -9v4m0 2v1"/>'
        yield f'<path class="cutoff-mark" d="M{right - 6:.1f} {bottom + 3:.1f}l8 -9m-3 11l8 -9"/>'
        yield from _words(each)
        more_x, more_y = max(0.0, _FINGER - (right - left) / 2), max(0.0, _FINGER - (bottom - top) / 2)
        size = f'width="{right - left + 2 * more_x:.1f}" height="{bottom - top + 2 * more_y:.1f}"'
        yield f'<rect class="hit" x="{left - more_x:.1f}" y="{top - more_y:.1f}" {size}/></g>'

    def _hits(self) -> Iterator[str]:
        """Where pipes can be touched, clear of the parts at their ends."""
        for route in self.arrangement.routes:
            if route.link is not None:
                data = path_data(_shortened(route.points))
                yield f'<g class="pipe-hit" data-pipe="{route.link.number}"><path d="{data}"/></g>'


def _pipe(route: Route, hops: Sequence[Point]) -> Iterator[str]:
    service = route.service.value
    dashed = route.service in {Service.RETURN, Service.MIXED}
    number = "" if route.link is None else f' data-pipe="{route.link.number}"'
    data = outline_data(hopping_path(route.points, hops, gap=dashed))
    yield f'<path class="pipe {service}"{number} d="{data}"/>'
    corners = arrow_corners(route.points) if route.service is Service.RETURN and route.link is not None else []
    if corners:
        yield f'<path class="arrow {service}" d="{path_data(corners, is_closed=True)}"/>'


def _joinings(arrangement: Arrangement) -> dict[str, _Joining]:
    placed = {each.item.name: each for each in arrangement.placements}
    found: dict[str, _Joining] = {}
    for route in arrangement.routes:
        for end in () if route.link is None else route.link.ends:
            before = found.get(end.part, _Joining(route.service.value))
            each = placed.get(end.part)
            crowned = each is not None and end.port in each.item.symbol.tops and end.port not in dict(each.joined)
            found[end.part] = replace(before, is_crowned=before.is_crowned or crowned)
    return found


def _stubs(symbol: Symbol, each: Placement, joining: _Joining) -> Iterator[str]:
    """What joins a symbol to pipes that end where a larger one would be joined."""
    kept, service = each.item.symbol, joining.service
    if joining.is_crowned and symbol.height < kept.height:
        ends = [each.at((0.0, -kept.height / 2)), each.at((0.0, -symbol.height / 2))]
        yield f'<path class="pipe {service}" d="{path_data(ends)}"/>'
    if symbol.is_in_line and symbol.width < kept.width:
        for side in (-0.5, 0.5):
            ends = [each.at((side * kept.width, 0.0)), each.at((side * symbol.width, 0.0))]
            yield f'<path class="pipe {service}" d="{path_data(ends)}"/>'
        return
    for port, side in each.joined:
        if port in kept.sockets and port in symbol.sockets:
            outer, inner = (_socket(one, port, side) for one in (kept, symbol))
            if max(abs(outer[0] - inner[0]), abs(outer[1] - inner[1])) > _SAME:
                corner = (outer[0], inner[1])
                bend = [each.at(point) for point in (outer, corner, inner)]
                yield f'<path class="pipe {service}" d="{path_data(bend)}"/>'


def _socket(symbol: Symbol, port: str, side: float) -> Point:
    x, y = symbol.sockets[port]
    return (side * abs(x), y) if symbol.is_two_sided else (x, y)


def _leads(symbol: Symbol, each: Placement) -> Iterator[str]:
    """Lines inside a symbol from its ports to where they lead."""
    for port, side in each.joined:
        if port in symbol.leads:
            x, y = symbol.sockets[port]
            yield f'<path class="none" d="{path_data([each.at((side * abs(x), y)), each.at(symbol.leads[port])])}"/>'


def _words(each: Placement) -> Iterator[str]:
    """The lines beside a part; the last is left empty where a word of a state is to stand there."""
    left, top, right, _ = each.words_box
    anchor = ("middle", "start", "end")[each.words_at_side]
    x = (left + right) / 2 if not each.words_at_side else left if each.words_at_side > 0 else right
    size = each.item.letter_size
    for number, line in enumerate(each.item.lines):
        is_last = each.item.tone is not None and number == len(each.item.lines) - 1
        y = top + (number + 0.8) * size * LEADING
        place = f'x="{x:.1f}" y="{y:.1f}" text-anchor="{anchor}" font-size="{size:g}"'
        text = "" if is_last else html.escape(line)
        yield f'<text class="{"verdict" if is_last else "name"}" {place}>{text}</text> '


def _shortened(points: Sequence[Point]) -> list[Point]:
    """A line without its first and its last piece, as far as it is long enough."""
    line = list(points)
    for _ in range(2):
        (x, y), (to_x, to_y) = line[0], line[1]
        length = abs(to_x - x) + abs(to_y - y)
        share = min(_APART, length / 3) / length if length else 0.0
        line[0] = (x + (to_x - x) * share, y + (to_y - y) * share)
        line.reverse()
    return line
