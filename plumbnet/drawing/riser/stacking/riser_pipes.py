"""A setting to the pipes that join its plants and branches: headers, risers with their devices, ways to branches."""

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from plumbnet.drawing.columns import surround
from plumbnet.drawing.items import Link
from plumbnet.drawing.riser.stacking.bands import devices_by_level, way_out
from plumbnet.drawing.riser.stacking.door_block import Stand
from plumbnet.drawing.riser.stacking.doors import DoorKey, doors_of
from plumbnet.drawing.riser.stacking.letter_box import box_name, port_of
from plumbnet.drawing.riser.stacking.riser_columns import device_step
from plumbnet.drawing.riser.stacking.setting import Setting
from plumbnet.drawing.riser.structure import Chain, Riser
from plumbnet.drawing.routing import Placement, Route, simple
from plumbnet.drawing.symbols import Point
from plumbnet.layout.model import End

_STUB = 10.0
"""How far a return goes over the top of the riser from which it comes."""
_ABOVE_FOOT = 2.0


@dataclass(slots=True)
class RiserPipes:
    """The pipes and the devices in them as drawn; `spots` are places of joints, `origins` the ends behind boxes."""

    setting: Setting
    routes: list[Route] = field(default_factory=list)
    placements: list[Placement] = field(default_factory=list)
    count: int = 0
    spots: dict[str, list[Point]] = field(default_factory=lambda: defaultdict(list))
    origins: dict[End, End] = field(default_factory=dict)
    _lead: dict[tuple[int, End], list[Point]] = field(default_factory=dict)
    _shared: dict[tuple[int, End], list[Point]] = field(default_factory=dict)
    """What a pipe has in common with another of its port, from that port on."""

    def draw(self) -> None:
        """Draw everything that leads from component to component."""
        risers = [riser for shaft in self.setting.folding.shafts for riser in shaft.risers]
        self._headers(risers)
        for number, stop in self.setting.stops.items():
            self._branch(number, stop)
        for riser in risers:
            for chain in riser.chains:
                self._chain(riser, chain)

    def _headers(self, risers: list[Riser]) -> None:
        met: dict[tuple[int, DoorKey], list[tuple[float, Chain, End]]] = defaultdict(list)
        for riser in risers:
            for chain in riser.chains:
                for end in chain.ends:
                    home = self.setting.structure.home[end.part]
                    if home.is_plant:
                        key = self.setting.key_of(chain, end)
                        met[home.number, key].append((self.setting.x[riser.number], chain, end))
        for (number, key), joined in sorted(met.items(), key=lambda each: each[0][0]):
            self._header(self.setting.plants[number], key, joined)

    def _header(self, plant: Stand, key: DoorKey, joined: list[tuple[float, Chain, End]]) -> None:
        """The line of a door above the floor, to the last of the risers that join it."""
        x, y = self.setting.bands.header[plant.component.number, key]
        points = [*way_out(self.setting.bands, plant, key), (x, way_out(self.setting.bands, plant, key)[-1][1]), (x, y)]
        xs = [at for at, _, _ in joined]
        last = min(xs) if self.setting.bands.is_below else max(xs)
        is_joint = self.setting.structure.diagram.items[key.part].symbol.is_joint
        if is_joint:
            self.routes.append(Route(None, key.part, plant.services[key], simple([*points, (last, y)])))
            self.spots[key.part] += [(at, y) for at in sorted(set(xs))]
        for at, chain, end in joined:
            is_first = at == last
            self._lead[chain.number, end] = [*points, (at, y)] if is_first and not is_joint else [(at, y)]
            if not is_joint and not is_first:
                self._shared[chain.number, end] = [*points, (at, y)]

    def _branch(self, number: int, stop: Stand) -> None:
        """The ways from a branch's doors to the risers on which its joints sit."""
        fold = self.setting.folding.fold_of.get(number)
        doors = doors_of(self.setting.structure, stop.component)
        for key in stop.ways:
            home = self.setting.homes[key]
            points = list(stop.way(key, self.setting.corner[number]))
            at = (self.setting.x[home.number], points[-1][1])
            is_joint = self.setting.structure.diagram.items[key.part].symbol.is_joint
            if is_joint:
                self.spots[key.part].append(at)
            if stop.arrangement is not None:
                if is_joint and len(stop.component.members) > 1:
                    self.routes.append(Route(None, key.part, stop.services[key], simple([*points, at])))
                continue
            if fold is None:
                continue
            own = End(box_name(stop, fold.letter), port_of(stop, key))
            self.origins[own] = doors[key][0].end
            if is_joint:
                start = End(key.part, doors[key][0].end.port)
                link = Link(self._next(), start, own, stop.services[key])
                self._add(Route(link, "", link.service, (at, points[-1])))

    def _next(self) -> int:
        """A number that no pipe has."""
        ends = sum(len(detail.origins) for detail in self.setting.details.values())
        return len(self.setting.structure.diagram.links) + ends + self.count

    def _add(self, route: Route) -> None:
        self.routes.append(route)
        self.count += 1

    def _chain(self, riser: Riser, chain: Chain) -> None:
        x = self.setting.x[riser.number]
        low, high = self._approach(riser, chain, chain.low), self._approach(riser, chain, chain.high)
        ends = [low[-1]]
        for item_y, name in self._stacked(chain, low[-1][1]):
            item = self.setting.structure.diagram.items[name]
            link = chain.links[chain.devices.index(name)]
            quarters = 1 if item.symbol.sockets[link.near(name).port][0] < 0.0 else 3
            side = -1 if self._words_left(riser) else 1
            self.placements.append(Placement(item, x, item_y, quarters, words_at_side=side))
            half = item.symbol.width / 2
            ends += [(x, item_y + half), (x, item_y - half)]
        ends.append(high[-1])
        last = len(chain.links) - 1
        for number, link in enumerate(chain.links):
            points = [*(low[:-1] if number == 0 else []), ends[2 * number], ends[2 * number + 1]]
            points += high[:-1][::-1] if number == last else []
            below = chain.low.part if number == 0 else chain.devices[number - 1]
            start, end = self._stood_in(link.start), self._stood_in(link.end)
            before = self._shared.get((chain.number, chain.low), []) if number == 0 else []
            after = self._shared.get((chain.number, chain.high), [])[::-1] if number == last else []
            route = Route(
                replace(link, start=start, end=end), "", link.service, simple(points), *map(tuple, (before, after))
            )
            is_up = link.start.part == below
            self._add(
                route
                if is_up
                else replace(route, points=route.points[::-1], before=route.after[::-1], after=route.before[::-1])
            )

    def _words_left(self, riser: Riser) -> bool:
        """Whether it is the first of its shaft, so that its words stand at its left."""
        shaft = next(shaft for shaft in self.setting.folding.shafts if riser in shaft.risers)
        left = [self.setting.x[each.number] for each in shaft.risers if each.number not in self.setting.right]
        return bool(left) and self.setting.x[riser.number] <= min(left)

    def _stacked(self, chain: Chain, low_y: float) -> Iterator[tuple[float, str]]:
        """The middle of each device of a chain, from the lowest up."""
        home = self.setting.structure.home[chain.low.part]
        for level, names in devices_by_level(self.setting.structure, chain).items():
            at_branch = level == home.level and not home.is_plant
            y = low_y if at_branch else self.setting.bands.foot[level] + _ABOVE_FOOT
            y -= _ABOVE_FOOT
            for name in names:
                item = self.setting.structure.diagram.items[name]
                step = device_step(item)
                yield y - step / 2 - surround(item) / 2, name
                y -= step

    def _approach(self, riser: Riser, chain: Chain, end: End) -> list[Point]:
        """The way from an end of a chain to its riser, there to go up or down."""
        setting, x = self.setting, self.setting.x[riser.number]
        home = setting.structure.home[end.part]
        if home.is_plant:
            return self._lead[chain.number, end]
        y = setting.end_y(chain, end)
        if not setting.structure.diagram.items[end.part].symbol.is_joint:
            key = setting.key_of(chain, end)
            return [*setting.stops[home.number].way(key, setting.corner[home.number]), (x, y)]
        sits_on = setting.homes[setting.key_of(chain, end)]
        if sits_on.number == riser.number:
            return [(x, y)]
        at = setting.x[sits_on.number]
        if end == chain.high and self._is_top(sits_on, end.part):
            return [(at, y), (at, y - _STUB), (x, y - _STUB)]
        return [(at, y), (x, y)]

    @staticmethod
    def _is_top(riser: Riser, name: str) -> bool:
        """Whether a riser ends at a joint, coming from below."""
        ends = [chain for chain in riser.chains if name in {chain.low.part, chain.high.part}]
        return len(ends) == 1 and ends[0].high.part == name

    def _stood_in(self, end: End) -> End:
        """The end at the box that stands for a branch, where that is what the pipe ends at."""
        home = self.setting.structure.home.get(end.part)
        if home is None or home.is_plant or self.setting.structure.diagram.items[end.part].symbol.is_joint:
            return end
        stop, fold = self.setting.stops[home.number], self.setting.folding.fold_of.get(home.number)
        if stop.arrangement is not None or fold is None:
            return end
        return End(box_name(stop, fold.letter), port_of(stop, DoorKey(end.part, end.port)))
