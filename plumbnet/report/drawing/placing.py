"""A model to its places on paper: where every symbol stands, and how every pipe runs."""

from collections import defaultdict
from collections.abc import Iterator, Sequence

from plumbnet.report.drawing.channels import Channel, channels
from plumbnet.report.drawing.columns import columns
from plumbnet.report.drawing.corners import dots, simple
from plumbnet.report.drawing.grid import Grid, grid_of
from plumbnet.report.drawing.hanging import standing
from plumbnet.report.drawing.heights import APART, Apart, heights, ranks
from plumbnet.report.drawing.lines import branch_height, lines
from plumbnet.report.drawing.model import Model, layered, stacks
from plumbnet.report.drawing.order import order
from plumbnet.report.drawing.places import Body, Joint, Placed, Route
from plumbnet.report.drawing.plan import plan_of
from plumbnet.report.drawing.stage import Stage
from plumbnet.report.drawing.stance import Stance, Stances
from plumbnet.report.drawing.symbol import Point
from plumbnet.report.palette import Service

_RUN_RANK = {Service.HOT: 0, Service.MIXED: 1, Service.COLD: 2, Service.RETURN: 3}
_TRIES = 3


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
    return _set_out(model, Stage(grid, ranked, stances, height, between))


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
            branches = [branch_height(net, strand) for strand in net.strands]
            if min(branches) > net.home.y:
                found[cell] = min(branches)
            elif max(branches) < net.home.y:
                found[cell] = max(branches)
    return found


def _set_out(model: Model, stage: Stage) -> Placed:
    routes = [*_routes(stage), *_runs(stage), *_stems(model, stage)]
    joints, forks = _joints(model, stage, routes), _forks(stage, routes)
    return Placed(tuple(_bodies(model, stage)), tuple(joints), tuple(routes), tuple(forks))


def _routes(stage: Stage) -> Iterator[Route]:
    """The pipes between cells; the two halves of one that joins a part to itself are made one."""
    halves: dict[int, tuple[Point, ...]] = {}
    for arc, line in zip(stage.grid.plan.arcs, lines(stage), strict=True):
        drawn = line.turned if arc.is_turned else line
        if arc.link is None:
            yield Route(None, stage.name(arc.tail), arc.service, *drawn)
        elif not arc.link.is_round:
            yield Route(arc.link, "", arc.service, *drawn)
        elif arc.link.number in halves:
            yield Route(arc.link, "", arc.service, simple([*halves[arc.link.number], *drawn.points]))
        else:
            halves[arc.link.number] = drawn.points


def _runs(stage: Stage) -> Iterator[Route]:
    """The run of every joint that has more than one spot."""
    for cell in stage.grid.plan.cells:
        left, right = stage.run(cell.number) if cell.is_joint else (0.0, 0.0)
        if right > left:
            y = stage.height[cell.number]
            service = min((arc.service for arc in stage.grid.arcs_at[cell.number]), key=_RUN_RANK.__getitem__)
            yield Route(None, stage.name(cell.number), service, ((left, y), (right, y)))


def _stems(model: Model, stage: Stage) -> Iterator[Route]:
    """The pipes of what stands on a host."""
    for cell in stage.grid.plan.cells:
        x, y = stage.x(cell.number), stage.height[cell.number]
        for hung in stage.stances[cell.number].hung:
            from_y, at_x = y + hung.foot[1], x + hung.foot[0]
            sign = -1.0 if hung.rises else 1.0
            for link, each in zip(hung.stack.links, standing(model, hung), strict=True):
                symbol = model.items[each.name].symbol
                half = (symbol.width if each.quarters % 2 else symbol.height) / 2
                middle = y + each.middle[1]
                points = ((at_x, from_y), (at_x, middle - sign * half))
                yield Route(link, "", link.service, points if link.end.part == each.name else points[::-1])
                from_y = middle + sign * half


def _bodies(model: Model, stage: Stage) -> Iterator[Body]:
    for cell in stage.grid.plan.cells:
        x, y, stance = stage.x(cell.number), stage.height[cell.number], stage.stances[cell.number]
        if cell.item is not None and not cell.is_joint:
            facing = (stance.is_mirrored, stance.is_turned, stance.stretch, stance.words_at_side)
            yield Body(cell.item, x, y, 0, *facing, tuple(_joined(stage.grid, stance)))
        for hung in stance.hung:
            for name, (dx, dy), quarters in standing(model, hung):
                yield Body(model.items[name], x + dx, y + dy, quarters, words_at_side=1)


def _joined(grid: Grid, stance: Stance) -> Iterator[tuple[str, float]]:
    """Ports that pipes join, and on which side."""
    for tip, (x, _) in stance.tips.items():
        arc = grid.plan.arcs[tip.arc]
        yield (arc.head_port if tip.is_head else arc.tail_port), (1.0 if x > 0.0 else -1.0)


def _joints(model: Model, stage: Stage, routes: Sequence[Route]) -> Iterator[Joint]:
    met: dict[str, list[Route]] = defaultdict(list)
    for route in routes:
        names = (route.joint,) if route.link is None else (route.link.start.part, route.link.end.part)
        for name in dict.fromkeys(names):
            met[name].append(route)
    for name, pieces in stage.grid.plan.pieces.items():
        item = model.items[name]
        if item.symbol.is_joint:
            spots = [(x, stage.height[cell]) for cell in pieces for x in stage.spots[cell] or [stage.x(cell)]]
            yield Joint(item, dots(met[name], spots))


def _forks(stage: Stage, routes: Sequence[Route]) -> Iterator[Point]:
    """Where pipes part that leave a port together which is no joint."""
    by_link = {route.link.number: route for route in routes if route.link is not None}
    for number, channel in enumerate(stage.between):
        for at, net in enumerate(channel.nets):
            if net.home is not None and not stage.is_joint(net.home.node):
                links = [stage.grid.plan.arcs[strand.arc].link for strand in net.strands]
                met = [by_link[link.number] for link in links if link is not None and not link.is_round]
                yield from dots(met, [(stage.track_x(number, at), net.home.y)])
