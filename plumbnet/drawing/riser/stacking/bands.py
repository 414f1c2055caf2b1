"""Plants and stops to the height of every level: its floor line, what runs above it, what stands on it."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from plumbnet.drawing.palette import Service
from plumbnet.drawing.riser.likeness import DrawnShaft, LevelBreak, device_levels, hidden_levels
from plumbnet.drawing.riser.stacking.door_block import Stand
from plumbnet.drawing.riser.stacking.doors import DoorKey
from plumbnet.drawing.riser.stacking.riser_columns import device_step
from plumbnet.drawing.riser.structure import Chain, Structure
from plumbnet.drawing.symbols import Point

_PAD = 9.0
"""Between a floor line and what stands on it."""
_HEADER = 9.0
"""Between two headers."""
_BETWEEN_PLANTS = 16.0
_UPRIGHT = 10.0
"""Between a plant and the first upright of its doors."""
_STOREY = 7.0
_OVER = 8.0
"""Room for a return that goes over the top of its riser."""
BREAK = 30.0
"""Height of what is left out."""


@dataclass(slots=True)
class Bands:
    """Heights on paper by level, y downwards; and where plants stand and their headers run.

    `is_below`: plants lie below all shafts, their headers above them; else they reach up at the left of the shafts, and
    their headers lie just above the floor. `floor` is the line, `foot` where devices begin that stand at the foot of
    risers, `base` the line on which branches stand. `corner` is the lower left one of each plant, `header` the upright
    and the level line of each door.
    """

    is_below: bool = False
    floor: list[float] = field(default_factory=list)
    foot: list[float] = field(default_factory=list)
    base: list[float] = field(default_factory=list)
    corner: dict[int, Point] = field(default_factory=dict)
    header: dict[tuple[int, DoorKey], Point] = field(default_factory=dict)
    width: float = 0.0
    """Of the widest plant; plants end there."""
    most_doors: int = 0
    top: float = 0.0

    @property
    def right(self) -> float:
        """Right of all uprights of plants."""
        return self.width + _UPRIGHT + _HEADER * self.most_doors

    @property
    def start(self) -> float:
        """Where the first shaft may begin."""
        return 0.0 if self.is_below else self.right

    def widen(self, width: float) -> None:
        """Move plants and their uprights to the right, so that they end no further left than that."""
        more = max(0.0, width - self.width)
        self.width += more
        self.corner = {number: (x + more, y) for number, (x, y) in self.corner.items()}
        self.header = {door: (x + more, y) for door, (x, y) in self.header.items()}


def bands_of(  # noqa: PLR0913  what stands on levels
    structure: Structure,
    plants: Sequence[Stand],
    shafts: Sequence[DrawnShaft],
    stops: Mapping[int, Stand],
    breaks: Sequence[LevelBreak],
    *,
    is_below: bool = False,
) -> Bands:
    """The heights of all levels, the ground at 0.

    A plant reaches up beside the storeys, and the next one starts above it; or all are on the ground, below all else.
    """
    count = len(structure.floors)
    feet, tall = _feet(structure, shafts, count), _tall(structure, shafts, stops, count)
    hidden, starts = hidden_levels(breaks), {each.first for each in breaks}
    bands = Bands(is_below, width=max((plant.width for plant in plants), default=0.0))
    y, plants_top = 0.0, 0.0
    for level in range(count):
        here = [plant for plant in plants if plant.component.level == level]
        if here and bands.floor:
            y = min(y, plants_top - _BETWEEN_PLANTS)
        bands.floor.append(y)
        y -= _PAD
        if here:
            plants_top = _stand(bands, here, y)
            y = _raise_headers(bands, here, plants_top) if is_below else _run_headers(bands, here, y)
        bands.foot.append(y)
        y -= feet[level]
        bands.base.append(y)
        y -= BREAK if level in starts else 0.0 if level in hidden else tall[level] + _STOREY
    bands.top = min(y, plants_top)
    return bands


def _stand(bands: Bands, plants: Sequence[Stand], y: float) -> float:
    """Put plants on one level above each other; their upper edge."""
    for plant in plants:
        y -= _HEADER * sum(side < 0 for side in plant.sides.values())
        bands.corner[plant.component.number] = (bands.width - plant.width, y)
        y -= plant.height + _BETWEEN_PLANTS
    return y + _BETWEEN_PLANTS


def way_out(bands: Bands, plant: Stand, key: DoorKey) -> list[Point]:
    """From a plant's joint out to its right edge; what comes in at its left edge goes round below it."""
    corner = bands.corner[plant.component.number]
    points = list(plant.way(key, corner))
    if plant.sides[key] > 0:
        return points
    at = [each for each, side in plant.sides.items() if side < 0].index(key) + 1
    x, y = points[-1][0] - _HEADER * at, corner[1] + _HEADER * at
    return [*points, (x, points[-1][1]), (x, y), (bands.width, y)]


def _raise_headers(bands: Bands, plants: Sequence[Stand], top: float) -> float:
    """Put the headers of plants above them, the first to come out lowest; their upper edge."""
    ways = {(plant.component.number, key): way_out(bands, plant, key)[-1][1] for plant in plants for key in plant.ways}
    doors = sorted(ways, key=lambda door: (ways[door], door[0]))
    bands.most_doors = len(doors)
    for number, door in enumerate(doors):
        along = _HEADER * number
        bands.header[door] = (bands.width + _UPRIGHT + along, top - _BETWEEN_PLANTS - along)
    return top - _BETWEEN_PLANTS - _HEADER * len(doors)


def _run_headers(bands: Bands, plants: Sequence[Stand], y: float) -> float:
    """Put the headers of plants just above the floor line, in the order in which they come out; their upper edge."""
    ways = {(plant.component.number, key): way_out(bands, plant, key)[-1][1] for plant in plants for key in plant.ways}
    doors = sorted(ways, key=lambda door: (ways[door], door[0]))
    if not doors:
        return y
    bands.most_doors = max(bands.most_doors, len(doors))
    at = max(ways[doors[0]], min(y, ways[doors[-1]]) - _HEADER * (len(doors) - 1))
    first = at
    for number, door in enumerate(doors):
        at = max(at, ways[door])
        bands.header[door] = (bands.width + _UPRIGHT + _HEADER * (len(doors) - 1 - number), at)
        at += _HEADER
    return first - _STOREY


def _feet(structure: Structure, shafts: Sequence[DrawnShaft], count: int) -> list[float]:
    """What devices at the foot of a level take: those of risers from a plant, and those with a height of their own."""
    found = [0.0] * count
    for chain in _chains(shafts):
        home = structure.home[chain.low.part]
        for level, names in devices_by_level(structure, chain).items():
            if home.is_plant or level != home.level:
                found[level] = max(found[level], devices_length(structure, names))
    return found


def devices_by_level(structure: Structure, chain: Chain) -> dict[int, list[str]]:
    """The devices of a chain by the level at which they stand, from the lowest."""
    found: dict[int, list[str]] = {}
    for name, level in zip(chain.devices, device_levels(structure, chain), strict=True):
        found.setdefault(level, []).append(name)
    return found


def devices_length(structure: Structure, names: Sequence[str]) -> float:
    """Height of devices one above the other."""
    return sum(device_step(structure.diagram.items[name]) for name in names) + _PAD if names else 0.0


def _tall(structure: Structure, shafts: Sequence[DrawnShaft], stops: Mapping[int, Stand], count: int) -> list[float]:
    """Height of the branches on each level, with the devices in risers that stand above them."""
    found = [0.0] * count
    for number in (number for shaft in shafts for number in shaft.branches):
        component, stop = structure.components[number], stops[number]
        above = 0.0
        for each in component.ends:
            if each.is_low:
                own = devices_by_level(structure, each.chain).get(component.level, [])
                above = max(above, devices_length(structure, own))
            elif each.chain.service is Service.RETURN:
                above = max(above, _OVER)
        found[component.level] = max(found[component.level], stop.height + above)
    return found


def _chains(shafts: Sequence[DrawnShaft]) -> list[Chain]:
    return [chain for shaft in shafts for riser in shaft.risers for chain in riser.chains]
