"""A component laid out by itself, as any drawing is, with a door for each place where risers join it."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import NamedTuple

from plumbnet.drawing.items import Diagram, Item, Link
from plumbnet.drawing.lettering import name_lines
from plumbnet.drawing.palette import Service
from plumbnet.drawing.riser.stacking.doors import SERVICE_RANK, DoorKey, doors_of
from plumbnet.drawing.riser.stacking.movement import moved, moved_points
from plumbnet.drawing.riser.structure import Component, RiserEnd, Structure
from plumbnet.drawing.routing import Arrangement, Box, Route, arrangement_of
from plumbnet.drawing.symbols import Letter, Point, Stroke, Symbol
from plumbnet.layout.model import End

_DOOR = Symbol("door", 2.0, 2.0, (Letter(0.0, 0.0, "", 0.0),), {"p": (-1.0, 0.0)}, is_two_sided=True)
_TAP = Symbol(
    "riser_end",
    4.0,
    14.0,
    (Stroke(((0.0, -7.0), (0.0, 7.0)), width=1.6), Stroke(((0.0, 0.0), (2.0, 0.0)), width=1.6)),
    {"p": (-2.0, 0.0)},
    is_two_sided=True,
    said="riser, drawn in its shaft",
)
_STEP_M = 30.0
"""Between the heights of two services' doors, so that hot goes above cold."""


@dataclass(frozen=True, slots=True)
class Stand:
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


def block_of(structure: Structure, component: Component, on_right: frozenset[DoorKey] = frozenset()) -> Stand:
    """A component laid out, a branch with the doors `on_right` at its right edge, a plant with its ways out there."""
    laid = _laid_out(structure, component, _Places(len(structure.diagram.links), _DOOR, on_right))
    names, numbers = (
        {door.item.name for door in laid.doors.values()},
        {door.link.number for door in laid.doors.values()},
    )
    left, top, right, foot = box_of(laid.arrangement, names)
    placed = moved(laid.arrangement, -left, -foot)
    routes = {route.link.number: route for route in placed.routes if route.link is not None}
    ways = {}
    for key, door in laid.doors.items():
        route = routes[door.link.number]
        points = route.whole if key.port else route.points
        ways[key] = points if door.link.end.part == door.item.name else points[::-1]
    bare = replace(
        placed,
        placements=tuple(each for each in placed.placements if each.item.name not in names),
        routes=tuple(route for route in placed.routes if route.link is None or route.link.number not in numbers),
    )
    sides = {key: 1 if door.item.is_last else -1 for key, door in laid.doors.items()}
    services = {key: door.link.service for key, door in laid.doors.items()}
    return Stand(component, right - left, foot - top, ways, sides, services, bare)


@dataclass(frozen=True, slots=True)
class Detail:
    """A branch drawn out beside the building, from its lower left corner (0, 0), with the ends of its risers.

    `origins` are the ends that stand behind those.
    """

    component: Component
    width: float
    height: float
    arrangement: Arrangement
    origins: Mapping[End, End]


def detail_of(structure: Structure, component: Component, first_number: int, called: str) -> Detail:
    """A branch laid out with an end of a riser at each door; their pipes are numbered from `first_number` on.

    Its name stands on its card, so that of `called/tap` only `tap` is written.
    """
    laid = _laid_out(structure, component, _Places(first_number, _TAP, frozenset()), called)
    left, top, right, foot = box_of(laid.arrangement, set())
    origins = {}
    for door in laid.doors.values():
        near = next(end for end in door.link.ends if end.part != door.item.name)
        origins[next(end for end in door.link.ends if end.part == door.item.name)] = near
    return Detail(component, right - left, foot - top, moved(laid.arrangement, -left, -foot), origins)


@dataclass(frozen=True, slots=True)
class _Laid:
    """A component with its doors, somewhere on paper."""

    doors: Mapping[DoorKey, "_Door"]
    arrangement: Arrangement


class _Places(NamedTuple):
    """The number of the first door's pipe, the symbol of all doors, and which are at the right edge."""

    first_number: int
    symbol: Symbol
    on_right: frozenset[DoorKey]


def _laid_out(structure: Structure, component: Component, places: _Places, called: str = "") -> _Laid:
    doors = {
        key: _door(structure, component, _Place(places.first_number + at, places.symbol, key in places.on_right), ends)
        for at, (key, ends) in enumerate(doors_of(structure, component).items())
    }
    links = dict.fromkeys(link for name in component.members for link in structure.diagram.links_at[name])
    inside = [link for link in links if link.number not in structure.upright]
    items = {name: _named_within(structure.diagram.items[name], called) for name in component.members}
    items |= {door.item.name: door.item for door in doors.values()}
    laid = [_backward(link) if places.on_right and link.service is Service.COLD else link for link in inside]
    laid += [door.laid for door in doors.values()]
    arrangement = arrangement_of(Diagram(items, tuple(laid)))
    own = {link.number: link for link in (*inside, *(door.link for door in doors.values()))}
    return _Laid(doors, _restored(arrangement, own))


def _named_within(item: Item, called: str) -> Item:
    """An item of an instance by what it is called there."""
    lines = name_lines(item.name)
    if not item.name.startswith(f"{called}/") or item.lines[: len(lines)] != lines:
        return item
    return replace(item, lines=(*name_lines(item.name.removeprefix(f"{called}/")), *item.lines[len(lines) :]))


class _Place(NamedTuple):
    """The number of a door's pipe, its symbol, and the edge at which it is."""

    number: int
    symbol: Symbol
    is_right: bool


@dataclass(frozen=True, slots=True)
class _Door:
    """A door as an item, its pipe, and that pipe as it is laid out."""

    item: Item
    link: Link
    laid: Link


def _door(structure: Structure, component: Component, place: _Place, ends: Sequence[RiserEnd]) -> _Door:
    first, name = ends[0], f"\x01door {component.number} {place.number}"
    service, begins = first.chain.service, first.chain.begins_at(first.end)
    near, far = first.end, End(name, "p")
    if component.is_plant:
        leads_out, is_last = begins, begins or service is Service.RETURN
        laid_as = Service.HOT if begins and service is Service.RETURN else service
    else:
        leads_out, is_last = service is Service.RETURN, place.is_right
        over = Service.HOT if service is Service.RETURN else Service.RETURN
        laid_as = over if is_last else service
    foot_m = min((structure.height[name] for name in component.members), default=0.0)
    height_m = 0.0 if component.is_plant else foot_m + _STEP_M * SERVICE_RANK[service]
    item = Item(name, place.symbol, ("p",), elevation_m=height_m, is_source=not is_last, is_last=is_last)
    link = Link(place.number, *((near, far) if leads_out else (far, near)), service)
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
