"""A component laid out by itself, by the layers of any drawing, with a door for each place where risers join it."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from plumbnet.drawing.items import Diagram, Item, Link
from plumbnet.drawing.palette import Service
from plumbnet.drawing.riser.stacking.doors import SERVICE_RANK, DoorKey, doors_of
from plumbnet.drawing.riser.stacking.movement import moved, moved_points
from plumbnet.drawing.riser.structure import Component, RiserEnd, Structure, chains_in
from plumbnet.drawing.routing import Arrangement, Box, Route, arrangement_of
from plumbnet.drawing.symbols import Letter, Point, Symbol
from plumbnet.layout.model import End

_DOOR = Symbol("door", 2.0, 2.0, (Letter(0.0, 0.0, "", 0.0),), {"p": (-1.0, 0.0)}, is_two_sided=True)
_STEP_M = 30.0
"""Between the heights of two services' doors, so that hot goes above cold."""


@dataclass(frozen=True, slots=True)
class Stop:
    """What stands on a level, from its lower left corner (0, 0): the way from each door's joint out to an edge.

    `sides` says to which edge: -1 left, 1 right. A stop without an arrangement is drawn as the box of its letter.
    """

    component: Component
    width: float
    height: float
    ways: Mapping[DoorKey, tuple[Point, ...]]
    sides: Mapping[DoorKey, int]
    services: Mapping[DoorKey, Service]
    arrangement: Arrangement | None = None

    def way(self, key: DoorKey, corner: Point) -> tuple[Point, ...]:
        """The way out of a door, the stop's lower left corner being where it stands on paper."""
        return moved_points(self.ways[key], *corner)


def block_of(structure: Structure, component: Component, on_right: frozenset[DoorKey] = frozenset()) -> Stop:
    """A component laid out, a branch with the doors `on_right` at its right edge, a plant with its ways out there."""
    doors = doors_of(structure, component)
    made = [_door(structure, component, number, key, ends, on_right) for number, (key, ends) in enumerate(doors.items())]
    upright = {link.number for chain in chains_in(structure.risers) for link in chain.links}
    inside = [
        link
        for link in dict.fromkeys(link for name in component.members for link in structure.diagram.links_at[name])
        if link.number not in upright
    ]
    items = {name: structure.diagram.items[name] for name in component.members}
    items |= {door.item.name: door.item for door in made}
    from_right = bool(on_right) and not component.is_plant
    laid = [_backward(link) if from_right and link.service is Service.COLD else link for link in inside]
    laid += [door.laid for door in made]
    arrangement = arrangement_of(Diagram(items, tuple(laid)))
    restored = _restored(arrangement, {link.number: link for link in (*inside, *(door.link for door in made))})
    names = {door.item.name for door in made}
    left, top, right, foot = box_of(restored, names)
    placed = moved(restored, -left, -foot)
    routes = {route.link.number: route for route in placed.routes if route.link is not None}
    ways = {}
    for key, door in zip(doors, made, strict=True):
        points = routes[door.link.number].whole
        ways[key] = points if door.link.end.part == door.item.name else points[::-1]
    numbers = {door.link.number for door in made}
    bare = Arrangement(
        tuple(each for each in placed.placements if each.item.name not in names),
        placed.junctions,
        tuple(route for route in placed.routes if route.link is None or route.link.number not in numbers),
        placed.forks,
    )
    sides = {key: 1 if door.item.is_last else -1 for key, door in zip(doors, made, strict=True)}
    services = {key: ends[0].chain.service for key, ends in doors.items()}
    return Stop(component, right - left, foot - top, ways, sides, services, bare)


@dataclass(frozen=True, slots=True)
class _Door:
    """A door as an item, its pipe, and that pipe as it is laid out."""

    item: Item
    link: Link
    laid: Link


def _door(  # noqa: PLR0913, PLR0917  what a door is made of
    structure: Structure,
    component: Component,
    number: int,
    key: DoorKey,
    ends: Sequence[RiserEnd],
    on_right: frozenset[DoorKey],
) -> _Door:
    first, name = ends[0], f"\x01door {number}"
    service, begins = first.chain.service, first.chain.begins_at(first.end)
    near, far = first.end, End(name, "p")
    if component.is_plant:
        leads_out = begins
        is_last = begins or service is Service.RETURN
        laid_as = Service.HOT if begins and service is Service.RETURN else service
    else:
        is_last = key in on_right
        leads_out = service is Service.RETURN
        laid_as = Service.RETURN if is_last and service is not Service.RETURN else service
        laid_as = Service.HOT if is_last and service is Service.RETURN else laid_as
    foot_m = min((structure.height[name] for name in component.members), default=0.0)
    height_m = 0.0 if component.is_plant else foot_m + _STEP_M * SERVICE_RANK[service]
    item = Item(name, _DOOR, ("p",), elevation_m=height_m, is_source=not is_last, is_last=is_last)
    link = Link(len(structure.diagram.links) + number, *((near, far) if leads_out else (far, near)), service)
    return _Door(item, link, replace(link, service=laid_as))


def _backward(link: Link) -> Link:
    return replace(link, service=Service.RETURN)


def _restored(arrangement: Arrangement, links: Mapping[int, Link]) -> Arrangement:
    """The arrangement with the pipes as they are, whatever they were laid out as."""
    at: dict[str, list[Service]] = {}
    for link in links.values():
        for end in link.ends:
            at.setdefault(end.part, []).append(link.service)

    def route(each: Route) -> Route:
        if each.link is not None:
            link = links[each.link.number]
            return replace(each, link=link, service=link.service)
        return replace(each, service=max(at[each.joint], key=SERVICE_RANK.__getitem__))

    return replace(arrangement, routes=tuple(map(route, arrangement.routes)))


def box_of(arrangement: Arrangement, but: set[str]) -> Box:
    """Left, top, right and foot of all that is arranged, but for some symbols."""
    boxes = list(_boxes(arrangement, but))
    lefts, tops, rights, feet = zip(*boxes, strict=True)
    return min(lefts), min(tops), max(rights), max(feet)


def _boxes(arrangement: Arrangement, but: set[str]) -> Iterator[Box]:
    for placement in arrangement.placements:
        if placement.item.name not in but:
            yield placement.outer_box
            if placement.item.lines:
                yield placement.words_box
    for route in arrangement.routes:
        yield from ((x, y, x, y) for x, y in route.whole)
    for joint in arrangement.junctions:
        yield from ((x - 3.0, y - 3.0, x + 3.0, y + 3.0) for x, y in joint.dots)
