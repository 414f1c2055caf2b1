"""A stretch of pipe between two joints, with the devices that stand in it, and the place that it has in a building."""

from dataclasses import dataclass
from enum import Enum, auto


class Spot(Enum):
    """What a stretch of pipe serves, by which an experienced eye knows what may stand in it."""

    SERVICE = auto()
    """From the street to where the building's own piping begins."""
    WING = auto()
    """Cold water to a heater farther off and the taps beside it."""
    FEED = auto()
    """Cold water to heaters alone."""
    BRANCH = auto()
    """From a cold header to one of the heaters on it."""
    COLD = auto()
    """Cold water to taps alone."""
    TAP = auto()
    """Cold water to one fixture."""
    YARD = auto()
    """To a tap outdoors."""
    HOT = auto()
    """Behind a heater."""
    HOT_TAP = auto()
    """Hot water to one fixture."""
    RETURN = auto()
    """A circulation, from the hot pipe back to the cold side of its heater."""
    CONTROL = auto()
    """To a tank or an expansion relief valve."""
    CIRCUIT = auto()
    """Round from a source of heat to what it warms; what stands in it stays in it."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """Stops in the direction in which water normally flows, joints at both ends.

    `place` is None for what stays as it is drawn. `pipe` and `length` are as a file has them, empty where not known.
    """

    stops: tuple[str, ...]
    place: Spot | None
    pipe: str = ""
    length: str = ""

    @property
    def start(self) -> str:
        """The part at which it begins."""
        return part_of(self.stops[0])

    @property
    def end(self) -> str:
        """The part at which it ends."""
        return part_of(self.stops[-1])

    @property
    def devices(self) -> tuple[str, ...]:
        """What stands in line between its ends."""
        return self.stops[1:-1]

    def written(self) -> object:
        """It as a run of a file."""
        path = " -> ".join(self.stops)
        return {"path": path, "pipe": self.pipe, "length": self.length} if self.pipe else path


def part_of(stop: str) -> str:
    """The part of a stop, which may name a port behind a dot."""
    return stop.partition(".")[0]
