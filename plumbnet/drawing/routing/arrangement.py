"""A diagram to its places on paper: where every symbol stands, and how every pipe runs."""

from collections import defaultdict
from collections.abc import Iterator, Sequence

from plumbnet.drawing.columns import APART, Apart, Footprint, Grid, Layers, accessories, layers_of, node_heights
from plumbnet.drawing.items import Diagram
from plumbnet.drawing.palette import Service
from plumbnet.drawing.routing.channels import Channel, channels
from plumbnet.drawing.routing.coordinates import Coordinates
from plumbnet.drawing.routing.corners import dots, simple
from plumbnet.drawing.routing.placement import Arrangement, Junction, Placement, Route
from plumbnet.drawing.routing.polylines import branch_height, polylines
from plumbnet.drawing.symbols import Point

_RUN_RANK = {Service.HOT: 0, Service.MIXED: 1, Service.COLD: 2, Service.RETURN: 3}
_TRIES = 3


def arrangement_of(diagram: Diagram) -> Arrangement:
    """The places of a diagram's symbols and pipes.

    Columns from supply to use, few crossings, straight pipes, uprights on tracks of their own; heights are found
    again where two pipes would come to lie on each other.
    """
    layers = layers_of(diagram)
    further: list[Apart] = []
    for _ in range(_TRIES):
        height = node_heights(layers, further)
        between = channels(layers, height)
        clashes = [clash for channel in between for clash in channel.clashes]
        if not clashes:
            break
        for left, right in clashes:
            upper, lower = (left, right) if left.y <= right.y else (right, left)
            offset = (upper.y - height[upper.node]) - (lower.y - height[lower.node])
            further.append(Apart(upper.node, lower.node, APART + offset))
    ends = _without_stubs(layers, between)
    if ends:
        height = height | ends
        between = channels(layers, height)
    return _set_out(diagram, Coordinates(layers, height, between))


def _without_stubs(layers: Layers, between: Sequence[Channel]) -> dict[int, float]:
    """New heights of joints at which no pipe arrives and all leave to one side, so that none is left a dead stub."""
    found: dict[int, float] = {}
    for net in (net for channel in between for net in channel.nets):
        if net.home is None:
            continue
        station = net.home.node
        arcs = layers.grid.arcs_at[station]
        one_way = len({arc.tail == station for arc in arcs}) == 1
        if layers.grid.graph.stations[station].is_joint and one_way and not layers.footprints[station].mounts:
            branches = [branch_height(net, strand) for strand in net.strands]
            if min(branches) > net.home.y:
                found[station] = min(branches)
            elif max(branches) < net.home.y:
                found[station] = max(branches)
    return found


def _set_out(diagram: Diagram, coordinates: Coordinates) -> Arrangement:
    routes = [*_routes(coordinates), *_runs(coordinates), *_stems(diagram, coordinates)]
    junctions, forks = _junctions(diagram, coordinates, routes), _forks(coordinates, routes)
    return Arrangement(tuple(_placements(diagram, coordinates)), tuple(junctions), tuple(routes), tuple(forks))


def _routes(coordinates: Coordinates) -> Iterator[Route]:
    """The pipes between stations; the two halves of one that joins a part to itself are made one."""
    halves: dict[int, tuple[Point, ...]] = {}
    for arc, line in zip(coordinates.graph.arcs, polylines(coordinates), strict=True):
        drawn = line.turned if arc.is_turned else line
        if arc.link is None:
            yield Route(None, coordinates.name(arc.tail), arc.service, *drawn)
        elif not arc.link.is_round:
            yield Route(arc.link, "", arc.service, *drawn)
        elif arc.link.number in halves:
            yield Route(arc.link, "", arc.service, simple([*halves[arc.link.number], *drawn.points]))
        else:
            halves[arc.link.number] = drawn.points


def _runs(coordinates: Coordinates) -> Iterator[Route]:
    """The run of every joint that has more than one spot."""
    for station in coordinates.graph.stations:
        left, right = coordinates.run(station.number) if station.is_joint else (0.0, 0.0)
        if right > left:
            y = coordinates.height[station.number]
            service = min(
                (arc.service for arc in coordinates.layers.grid.arcs_at[station.number]), key=_RUN_RANK.__getitem__
            )
            yield Route(None, coordinates.name(station.number), service, ((left, y), (right, y)))


def _stems(diagram: Diagram, coordinates: Coordinates) -> Iterator[Route]:
    """The pipes of what stands on a host."""
    for station in coordinates.graph.stations:
        x, y = coordinates.x(station.number), coordinates.height[station.number]
        for mount in coordinates.layers.footprints[station.number].mounts:
            from_y, at_x = y + mount.foot[1], x + mount.foot[0]
            sign = -1.0 if mount.rises else 1.0
            for link, each in zip(mount.stack.links, accessories(diagram, mount), strict=True):
                symbol = diagram.items[each.name].symbol
                half = (symbol.width if each.quarters % 2 else symbol.height) / 2
                middle = y + each.middle[1]
                points = ((at_x, from_y), (at_x, middle - sign * half))
                yield Route(link, "", link.service, points if link.end.part == each.name else points[::-1])
                from_y = middle + sign * half


def _placements(diagram: Diagram, coordinates: Coordinates) -> Iterator[Placement]:
    for station in coordinates.graph.stations:
        x, y, footprint = (
            coordinates.x(station.number),
            coordinates.height[station.number],
            coordinates.layers.footprints[station.number],
        )
        if station.item is not None and not station.is_joint:
            facing = (footprint.is_mirrored, footprint.is_turned, footprint.stretch, footprint.words_at_side)
            yield Placement(station.item, x, y, 0, *facing, tuple(_joined(coordinates.layers.grid, footprint)))
        for mount in footprint.mounts:
            for name, (dx, dy), quarters in accessories(diagram, mount):
                yield Placement(diagram.items[name], x + dx, y + dy, quarters, words_at_side=1)


def _joined(grid: Grid, footprint: Footprint) -> Iterator[tuple[str, float]]:
    """Ports that pipes join, and on which side."""
    for tip, (x, _) in footprint.tips.items():
        arc = grid.graph.arcs[tip.arc]
        yield (arc.head_port if tip.is_head else arc.tail_port), (1.0 if x > 0.0 else -1.0)


def _junctions(diagram: Diagram, coordinates: Coordinates, routes: Sequence[Route]) -> Iterator[Junction]:
    met: dict[str, list[Route]] = defaultdict(list)
    for route in routes:
        names = (route.joint,) if route.link is None else (route.link.start.part, route.link.end.part)
        for name in dict.fromkeys(names):
            met[name].append(route)
    for name, pieces in coordinates.graph.pieces.items():
        item = diagram.items[name]
        if item.symbol.is_joint:
            spots = [
                (x, coordinates.height[station])
                for station in pieces
                for x in coordinates.spots[station] or [coordinates.x(station)]
            ]
            yield Junction(item, dots(met[name], spots))


def _forks(coordinates: Coordinates, routes: Sequence[Route]) -> Iterator[Point]:
    """Where pipes part that leave a port together which is no joint."""
    by_link = {route.link.number: route for route in routes if route.link is not None}
    for number, channel in enumerate(coordinates.between):
        for at, net in enumerate(channel.nets):
            if net.home is not None and not coordinates.is_joint(net.home.node):
                links = [coordinates.graph.arcs[strand.arc].link for strand in net.strands]
                met = [by_link[link.number] for link in links if link is not None and not link.is_round]
                yield from dots(met, [(coordinates.track_x(number, at), net.home.y)])
