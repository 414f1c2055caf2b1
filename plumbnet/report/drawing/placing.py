"""A model to its places on paper: where every symbol stands, and how every pipe runs."""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import NamedTuple

from plumbnet.report.drawing.channels import Channel, Net, Strand, channels
from plumbnet.report.drawing.columns import columns
from plumbnet.report.drawing.corners import dots, simple
from plumbnet.report.drawing.grid import Grid, grid_of
from plumbnet.report.drawing.heights import APART, Apart, Ranks, heights, ranks
from plumbnet.report.drawing.model import Model, layered, stacks
from plumbnet.report.drawing.order import order
from plumbnet.report.drawing.places import Body, Joint, Placed, Route
from plumbnet.report.drawing.plan import plan_of
from plumbnet.report.drawing.stance import FOOT, Room, Stance, Stances, Tip, foot, standing
from plumbnet.report.drawing.symbol import Point
from plumbnet.report.palette import Service

TRACK = 8.0
"""Between two uprights side by side."""
_EDGE = 7.0
"""Between an upright and the columns on its sides."""
_NARROWEST = 13.0
"""Between two columns, at least."""
_TRIES = 3
_NO_ROOM = Room(0.0, 0.0, 0.0, 0.0)


def placed(model: Model) -> Placed:
    """The places of a model's symbols and pipes.

    Columns from supply to use, few crossings, straight pipes, uprights on tracks of their own; heights are found
    again where two pipes would come to lie on each other.
    """
    standing_up = stacks(model)
    rest = layered(model, standing_up)
    plan = plan_of(rest)
    grid = grid_of(plan, columns(plan))
    in_order = order(grid)
    stances = Stances(grid, in_order, model, standing_up).all()
    ranked = ranks(grid, in_order, stances)
    further: list[Apart] = []
    for _ in range(_TRIES):
        height = heights(grid, ranked, stances, further)
        between = channels(grid, ranked, stances, height)
        clashes = [clash for channel in between for clash in channel.clashes]
        if not clashes:
            break
        for left, right in clashes:
            upper, lower = (left, right) if left.y <= right.y else (right, left)
            offset = (upper.y - height[upper.node]) - (lower.y - height[lower.node])
            further.append(Apart(upper.node, lower.node, APART + offset))
    ends = _without_stubs(grid, stances, between)
    if ends:
        height = height | ends
        between = channels(grid, ranked, stances, height)
    return _Placing(model, grid, ranked, stances, height, between).placed()


def _without_stubs(grid: Grid, stances: Sequence[Stance], between: Sequence[Channel]) -> dict[int, float]:
    """New heights of joints at which no pipe arrives and all leave to one side, so that none is left a dead stub."""
    found: dict[int, float] = {}
    for net in (net for channel in between for net in channel.nets):
        if net.home is None:
            continue
        cell = net.home.node
        arcs = grid.arcs_at[cell]
        one_way = len({arc.tail == cell for arc in arcs}) == 1
        if grid.plan.cells[cell].is_joint and one_way and not stances[cell].hung:
            branches = [(each.end if each.start == net.home else each.start).y for each in net.strands]
            if min(branches) > net.home.y:
                found[cell] = min(branches)
            elif max(branches) < net.home.y:
                found[cell] = max(branches)
    return found


class _Line(NamedTuple):
    """The points of a pipe, and the ways before and after it that it shares with other pipes of its joints."""

    points: tuple[Point, ...]
    before: tuple[Point, ...]
    after: tuple[Point, ...]

    @property
    def turned(self) -> "_Line":
        return _Line(self.points[::-1], self.after[::-1], self.before[::-1])


@dataclass(slots=True)
class _Placing:
    """Turns heights and tracks into points."""

    model: Model
    grid: Grid
    ranked: Ranks
    stances: Sequence[Stance]
    height: Mapping[int, float]
    between: Sequence[Channel]
    middles: list[float] = field(default_factory=list)
    starts: list[float] = field(default_factory=list)
    spots: dict[int, list[float]] = field(default_factory=lambda: defaultdict(list))

    def placed(self) -> Placed:
        self._spread()
        self._hang_spots()
        self._track_spots()
        routes = [*self._routes(), *self._runs(), *self._stems()]
        return Placed(tuple(self._bodies()), tuple(self._joints(routes)), tuple(routes), tuple(self._forks(routes)))

    def _spread(self) -> None:
        """The middle of every column, and the left edge of every channel."""
        cells = len(self.grid.plan.cells)
        x = 0.0
        for number, channel in enumerate(self.between):
            self.starts.append(x)
            count = channel.track_count
            if count or 0 < number < len(self.between) - 1:
                x += max(_NARROWEST, 2 * _EDGE + (count - 1) * TRACK)
            if number < len(self.ranked.columns):
                rooms = [self.stances[node].room for node in self.ranked.columns[number] if node < cells]
                x += max((room.left for room in rooms), default=0.0)
                self.middles.append(x)
                x += max((room.right for room in rooms), default=0.0)

    def _x(self, cell: int) -> float:
        return self.middles[self.grid.column_of[cell]]

    def _track_x(self, channel: int, net: int) -> float:
        return self.starts[channel] + _EDGE + TRACK * self.between[channel].tracks.get(net, 0)

    def _is_joint(self, node: int) -> bool:
        return not self.grid.is_waypoint(node) and self.grid.plan.cells[node].is_joint

    def _hang_spots(self) -> None:
        for cell in self.grid.plan.cells:
            if cell.is_joint:
                self.spots[cell.number] += [
                    self._x(cell.number) + hung.foot[0] for hung in self.stances[cell.number].hung
                ]

    def _track_spots(self) -> None:
        """Uprights that a joint's pipes share, and those that come down on its run from another's."""
        uprights = [
            (self._track_x(number, at), net)
            for number, channel in enumerate(self.between)
            for at, net in enumerate(channel.nets)
        ]
        for x, net in uprights:
            if net.home is not None:
                self.spots[net.home.node].append(x)
        for x, net in uprights:
            for strand in net.strands if not net.is_straight else ():
                spots = self.spots.get(strand.end.node)
                if strand.end != net.home and spots and x > min(spots) and self._is_joint(strand.end.node):
                    spots.append(x)

    def _run(self, cell: int) -> tuple[float, float]:
        """Left and right end of a joint's run."""
        spots = self.spots[cell] or [self._x(cell)]
        return min(spots), max(spots)

    def _routes(self) -> Iterator[Route]:
        uprights = self._uprights()
        halves: dict[int, tuple[Point, ...]] = {}
        for number, arc in enumerate(self.grid.plan.arcs):
            line = self._points(number, uprights[number])
            if arc.is_turned:
                line = line.turned
            if arc.link is None:
                yield Route(None, self._joint_name(arc.tail), arc.service, *line)
            elif not arc.link.is_round:
                yield Route(arc.link, "", arc.service, *line)
            elif arc.link.number in halves:
                yield Route(arc.link, "", arc.service, simple([*halves[arc.link.number], *line.points]))
            else:
                halves[arc.link.number] = line.points

    def _joint_name(self, cell: int) -> str:
        item = self.grid.plan.cells[cell].item
        return "" if item is None else item.name

    def _uprights(self) -> dict[int, list[tuple[float, Strand, Net]]]:
        """The strands of every arc from left to right, each with its net and the place of its upright."""
        found: dict[int, list[tuple[float, Strand, Net]]] = defaultdict(list)
        for number, channel in enumerate(self.between):
            for at, net in enumerate(channel.nets):
                for strand in net.strands:
                    found[strand.arc].append((self._track_x(number, at), strand, net))
        for strands in found.values():
            # A turn round the tail lies to the left of the rest, so only its own order needs mending.
            strands.sort(key=lambda each: self._rank(each[1]))
        return found

    def _rank(self, strand: Strand) -> tuple[int, int]:
        if not strand.start.is_left and not strand.end.is_left:
            return -1, 0
        if strand.start.is_left and strand.end.is_left:
            return len(self.between), 0
        return self._column(strand.start.node), 0

    def _column(self, node: int) -> int:
        if node < len(self.grid.column_of):
            return self.grid.column_of[node]
        return next(number for number, column in enumerate(self.ranked.columns) if node in column)

    def _points(self, number: int, uprights: Sequence[tuple[float, Strand, Net]]) -> _Line:
        """The way of an arc from tail to head, and what it shares with other pipes before it and after it."""
        points: list[Point] = []
        before: tuple[Point, ...] = ()
        after: tuple[Point, ...] = ()
        for x, strand, net in uprights:
            start, end = (x, strand.start.y), (x, strand.end.y)
            if net.home is not None and strand.start == net.home:
                before, start = self._shared(number, x, strand, net)
            elif net.home is not None and strand.end == net.home:
                after, end = self._shared(number, x, strand, net)
            points += [start, end]
        arc = self.grid.plan.arcs[number]
        if not self._is_met(uprights[0], at_start=True):
            points[:0] = [*self._inside(arc.tail), self._tip(arc.tail, Tip(number, is_head=False), points[0][0])]
        if not self._is_met(uprights[-1], at_start=False):
            points += [self._tip(arc.head, Tip(number, is_head=True), points[-1][0]), *self._inside(arc.head)[::-1]]
        return _Line(simple(points), simple(before), simple(after[::-1]))

    def _is_met(self, upright: tuple[float, Strand, Net], *, at_start: bool) -> bool:
        """Whether an arc begins, or ends, on the upright of its joint, or where another pipe has drawn the way."""
        _, strand, net = upright
        if net.home is None or (strand.start if at_start else strand.end) != net.home:
            return False
        return self._is_joint(net.home.node) or strand is not _nearest(net)

    def _shared(self, number: int, x: float, strand: Strand, net: Net) -> tuple[tuple[Point, ...], Point]:
        """What a strand shares with others of its net, from where they meet; and where it goes on alone."""
        home = net.home or strand.start
        base, branch = (x, home.y), (x, _alone_from(net, strand))
        if self._is_joint(home.node):
            return (base, branch) if branch != base else (), branch
        if strand is _nearest(net):
            return (), base
        tip = self._tip(home.node, Tip(number, is_head=strand.end == home), x)
        return (tip, base, branch), branch

    def _tip(self, cell: int, tip: Tip, beyond: float) -> Point:
        """Where an arc joins a cell."""
        y = self.height[cell]
        if self.grid.plan.cells[cell].is_joint:
            left, right = self._run(cell)
            return (max(left, beyond) if tip.is_head and left < beyond <= right else left if tip.is_head else right), y
        x, dy = self.stances[cell].tips[tip]
        return self._x(cell) + x, y + dy

    def _inside(self, cell: int) -> list[Point]:
        """The way from the foot of an accessory down to where its pipe comes in from the side."""
        item = self.grid.plan.cells[cell].item
        if item is None or not item.symbol.hangs:
            return []
        x, y = self._x(cell), self.height[cell]
        return [(x, y + foot(item.symbol)), (x, y + foot(item.symbol) + FOOT)]

    def _runs(self) -> Iterator[Route]:
        """The run of every joint that has more than one spot."""
        for cell in self.grid.plan.cells:
            left, right = self._run(cell.number) if cell.is_joint else (0.0, 0.0)
            if right > left:
                y = self.height[cell.number]
                arcs = self.grid.arcs_at[cell.number]
                service = min((arc.service for arc in arcs), key=_RUN_RANK.__getitem__)
                yield Route(None, self._joint_name(cell.number), service, ((left, y), (right, y)))

    def _stems(self) -> Iterator[Route]:
        """The pipes of what stands on a host."""
        for cell in self.grid.plan.cells:
            x, y = self._x(cell.number), self.height[cell.number]
            for hung in self.stances[cell.number].hung:
                from_y = y + hung.foot[1]
                sign = -1.0 if hung.rises else 1.0
                for link, each in zip(hung.stack.links, standing(self.model, hung), strict=True):
                    symbol = self.model.items[each.name].symbol
                    half = (symbol.width if each.quarters % 2 else symbol.height) / 2
                    middle = y + each.middle[1]
                    points = ((x + hung.foot[0], from_y), (x + hung.foot[0], middle - sign * half))
                    outward = link.end.part == each.name
                    yield Route(link, "", link.service, points if outward else points[::-1])
                    from_y = middle + sign * half

    def _bodies(self) -> Iterator[Body]:
        for cell in self.grid.plan.cells:
            x, y, stance = self._x(cell.number), self.height[cell.number], self.stances[cell.number]
            if cell.item is not None and not cell.is_joint:
                facing = (stance.is_mirrored, stance.is_turned, stance.stretch, stance.words_at_side)
                yield Body(cell.item, x, y, 0, *facing, tuple(self._joined(stance)))
            for hung in stance.hung:
                for name, (dx, dy), quarters in standing(self.model, hung):
                    yield Body(self.model.items[name], x + dx, y + dy, quarters, words_at_side=1)

    def _joined(self, stance: Stance) -> Iterator[tuple[str, float]]:
        for tip, (x, _) in stance.tips.items():
            arc = self.grid.plan.arcs[tip.arc]
            yield (arc.head_port if tip.is_head else arc.tail_port), (1.0 if x > 0.0 else -1.0)

    def _joints(self, routes: Sequence[Route]) -> Iterator[Joint]:
        lines: dict[str, list[Route]] = defaultdict(list)
        for route in routes:
            names = {route.joint} if route.link is None else {route.link.start.part, route.link.end.part}
            for name in sorted(names):
                lines[name].append(route)
        for name, pieces in self.grid.plan.pieces.items():
            item = self.model.items[name]
            if item.symbol.is_joint:
                spots = [(x, self.height[cell]) for cell in pieces for x in self.spots[cell] or [self._x(cell)]]
                yield Joint(item, dots(lines[name], spots))

    def _forks(self, routes: Sequence[Route]) -> Iterator[Point]:
        """Where pipes part that leave a port together which is no joint."""
        by_link = {route.link.number: route for route in routes if route.link is not None}
        for number, channel in enumerate(self.between):
            for at, net in enumerate(channel.nets):
                if net.home is not None and not self._is_joint(net.home.node):
                    links = [self.grid.plan.arcs[strand.arc].link for strand in net.strands]
                    met = [by_link[link.number] for link in links if link is not None and not link.is_round]
                    yield from dots(met, [(self._track_x(number, at), net.home.y)])


_RUN_RANK = {Service.HOT: 0, Service.MIXED: 1, Service.COLD: 2, Service.RETURN: 3}


def _nearest(net: Net) -> Strand:
    """The strand that branches off first from where those of a net meet."""
    home = net.home or net.strands[0].start
    return min(net.strands, key=lambda each: abs((each.end if each.start == home else each.start).y - home.y))


def _alone_from(net: Net, strand: Strand) -> float:
    """Height to which a strand's upright is drawn already as that of pipes that branch off nearer to the joint."""
    home = 0.0 if net.home is None else net.home.y
    own = strand.end.y if strand.start == net.home else strand.start.y
    others = [each.end.y if each.start == net.home else each.start.y for each in net.strands]
    if own >= home:
        return max((y for y in others if home < y < own), default=home)
    return min((y for y in others if own < y < home), default=home)
