"""What a draughtsman would not sign: faults of a drawing that has its places, found by plain geometry."""

from collections.abc import Iterable, Iterator
from itertools import combinations, pairwise

from plumbnet.drawing.items.item import Diagram
from plumbnet.drawing.routing.placement import Arrangement, Box, Placement, Route
from plumbnet.drawing.symbols.symbol import Point

CLOSE = 0.1


def faults(diagram: Diagram, arrangement: Arrangement) -> list[str]:
    """Everything that is wrong, in words; none for a drawing that is right."""
    return [
        *_missing(diagram, arrangement),
        *_slanted(arrangement),
        *_through_symbols(arrangement),
        *_loose_ends(arrangement),
        *_on_each_other(arrangement),
        *_symbols_that_touch(arrangement),
        *_words_that_touch(arrangement),
        *_words_on_pipes(arrangement),
    ]


def crossing_count(arrangement: Arrangement) -> int:
    """How often pipes cross that are not joined there."""
    return sum(
        min(a[0], b[0]) + 1 < c[0] < max(a[0], b[0]) - 1 and min(c[1], d[1]) + 1 < a[1] < max(c[1], d[1]) - 1
        for one, a, b in arrangement.segments
        for other, c, d in arrangement.segments
        if one != other and abs(a[1] - b[1]) < CLOSE and abs(c[0] - d[0]) < CLOSE
    )


def _missing(diagram: Diagram, arrangement: Arrangement) -> Iterator[str]:
    drawn = sorted(
        [placement.item.name for placement in arrangement.placements]
        + [joint.item.name for joint in arrangement.junctions]
    )
    if drawn != sorted(diagram.items):
        yield f"drawn {drawn}, wanted {sorted(diagram.items)}"
    linked = sorted(route.link.number for route in arrangement.routes if route.link is not None)
    if linked != [link.number for link in diagram.links]:
        yield f"pipes drawn {linked}"


def _slanted(arrangement: Arrangement) -> Iterator[str]:
    for number, a, b in arrangement.segments:
        if abs(a[0] - b[0]) > CLOSE and abs(a[1] - b[1]) > CLOSE:
            yield f"{name_of(arrangement.routes[number])} slants from {a} to {b}"


def _through_symbols(arrangement: Arrangement) -> Iterator[str]:
    inside = [
        (placement.item.name, _shrunk(_shared(box_of(placement), placement.outer_box), 0.5))
        for placement in arrangement.placements
    ]
    for number, a, b in arrangement.segments:
        line = _thin(a, b)
        for name, box in inside:
            if _overlap(line, box):
                yield f"{name_of(arrangement.routes[number])} runs through {name}"


def _loose_ends(arrangement: Arrangement) -> Iterator[str]:
    """Pipes that end neither on the edge of their part nor on the lines of their joint."""
    boxes = {placement.item.name: box_of(placement) for placement in arrangement.placements}
    feet = {
        placement.item.name: placement.at(_foot(placement.item.symbol.sockets.values()))
        for placement in arrangement.placements
    }
    for route in arrangement.routes:
        if route.link is None:
            continue
        for end, point in ((route.link.start, route.whole[0]), (route.link.end, route.whole[-1])):
            if end.part in boxes:
                left, top, right, bottom = boxes[end.part]
                at_side = min(abs(point[0] - left), abs(point[0] - right)) < CLOSE and top <= point[1] <= bottom
                at_end = min(abs(point[1] - top), abs(point[1] - bottom)) < CLOSE and left <= point[0] <= right
                at_foot = abs(point[0] - feet[end.part][0]) < CLOSE and abs(point[1] - feet[end.part][1]) < CLOSE
                if not (at_side or at_end or at_foot):
                    yield f"{name_of(route)} ends at {point}, off {end.part} {boxes[end.part]}"
            elif not any(_is_on(point, a, b) for a, b in _lines_of(arrangement, end.part, route)):
                yield f"{name_of(route)} ends at {point}, off the joint {end.part}"


def _foot(sockets: Iterable[Point]) -> Point:
    return next(iter(sockets), (0.0, 0.0))


def _lines_of(arrangement: Arrangement, joint: str, but: Route) -> Iterator[tuple[Point, Point]]:
    for each in arrangement.junctions:
        if each.item.name == joint:
            yield from ((dot, dot) for dot in each.dots)
    for route in arrangement.routes:
        names = {route.joint} if route.link is None else {route.link.start.part, route.link.end.part}
        if route is not but and joint in names:
            yield from pairwise(route.points)


def _on_each_other(arrangement: Arrangement) -> Iterator[str]:
    """Two pipes on one line; those that meet in a joint may touch at its dots and no further."""
    for along, across in ((0, 1), (1, 0)):
        level = [each for each in arrangement.segments if abs(each[1][across] - each[2][across]) < 4.0]
        for (one, a, b), (other, c, d) in combinations(level, 2):
            if abs(c[across] - a[across]) >= 2.0 or one == other:  # most are told apart by this
                continue
            if max(abs(p[across] - a[across]) for p in (b, d)) >= 2.0:
                continue
            low = max(min(a[along], b[along]), min(c[along], d[along]))
            high = min(max(a[along], b[along]), max(c[along], d[along]))
            if high - low > 1.0:
                yield f"{name_of(arrangement.routes[one])} lies on {name_of(arrangement.routes[other])} at {a}, {b}"


def _symbols_that_touch(arrangement: Arrangement) -> Iterator[str]:
    for (one, its), (other, others) in combinations(_outer_boxes(arrangement), 2):
        if _overlap(its, others):
            yield f"{one} touches {other}"


def _words_that_touch(arrangement: Arrangement) -> Iterator[str]:
    boxes = _words_boxes(arrangement)
    for (one, its), (other, others) in combinations(boxes, 2):
        if _overlap(its, others):
            yield f"the words of {one} touch those of {other}"
    symbols = _outer_boxes(arrangement)
    for one, its in boxes:
        middle = _shrunk(its, 0.5)
        for other, box in symbols:
            if _overlap(middle, box):
                yield f"the words of {one} touch {other}"


def _words_on_pipes(arrangement: Arrangement) -> Iterator[str]:
    pipes = [(number, _thin(a, b)) for number, a, b in arrangement.segments]
    for name, box in _words_boxes(arrangement):
        middle = _shrunk(box, 0.5)
        for number, line in pipes:
            if _overlap(middle, line):
                yield f"the words of {name} stand on {name_of(arrangement.routes[number])}"


def _outer_boxes(arrangement: Arrangement) -> list[tuple[str, Box]]:
    """Each symbol by its name, with its strokes, its ring and its frame."""
    return [(placement.item.name, placement.outer_box) for placement in arrangement.placements]


def _words_boxes(arrangement: Arrangement) -> list[tuple[str, Box]]:
    """The words of each symbol that has some."""
    return [(each.item.name, each.words_box) for each in arrangement.placements if each.item.lines]


def name_of(route: Route) -> str:
    """A pipe by what it joins."""
    if route.link is None:
        return f"the run of {route.joint}"
    return f"{route.link.start.part}.{route.link.start.port} -> {route.link.end.part}.{route.link.end.port}"


def box_of(placement: Placement) -> Box:
    """Left, top, right and bottom of a symbol without the strokes that go beyond it."""
    symbol = placement.item.symbol
    wide, high = symbol.width / 2, symbol.height * placement.stretch / 2
    if placement.quarters % 2:
        wide, high = high, wide
    return placement.x - wide, placement.y - high, placement.x + wide, placement.y + high


def _thin(a: Point, b: Point) -> Box:
    return min(a[0], b[0]) - 0.1, min(a[1], b[1]) - 0.1, max(a[0], b[0]) + 0.1, max(a[1], b[1]) + 0.1


def _shared(one: Box, other: Box) -> Box:
    return max(one[0], other[0]), max(one[1], other[1]), min(one[2], other[2]), min(one[3], other[3])


def _shrunk(box: Box, by: float) -> Box:
    return box[0] + by, box[1] + by, box[2] - by, box[3] - by


def _overlap(one: Box, other: Box) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


def _is_on(point: Point, a: Point, b: Point) -> bool:
    left, top, right, bottom = min(a[0], b[0]), min(a[1], b[1]), max(a[0], b[0]), max(a[1], b[1])
    return left - CLOSE <= point[0] <= right + CLOSE and top - CLOSE <= point[1] <= bottom + CLOSE
