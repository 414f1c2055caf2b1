"""What is drawn, before it has a place: items with a symbol and words, and links between their ports."""

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property

from plumbnet.drawing.lettering import LABEL_SIZE
from plumbnet.drawing.palette import Service
from plumbnet.drawing.symbols import Symbol
from plumbnet.layout.model import End


@dataclass(frozen=True, slots=True)
class Item:
    """A part, or a quiet branch in one symbol, with its ports and the lines of words beside it.

    With a `tone` the last of the lines stands out in that shade. `is_ringed` draws a heavy ring round it, for which
    `keeps_ring_room` only keeps the room, `is_framed` keeps room for a frame round all of it, `is_on_roof` draws it to
    the top, `is_last` in the last column; a joint that `is_named` has its name, whatever that covers. Water passes
    freely between the two ports of each of `ways`. A quiet item may go into the symbol of its branch where all cannot
    be drawn.
    """

    name: str
    symbol: Symbol
    ports: tuple[str, ...]
    lines: tuple[str, ...] = ()
    tone: str | None = None
    elevation_m: float = 0.0
    is_source: bool = False
    is_ringed: bool = False
    keeps_ring_room: bool = False
    is_framed: bool = False
    is_on_roof: bool = False
    is_last: bool = False
    is_named: bool = False
    is_quiet: bool = False
    ways: tuple[tuple[str, str], ...] = ()
    letter_size: float = LABEL_SIZE
    """Size of its words, in points; the name of a joint stands back behind the names of devices."""


@dataclass(frozen=True, slots=True)
class Link:
    """A pipe to be drawn, and its number among the links of its diagram."""

    number: int
    start: End
    end: End
    service: Service

    @property
    def ends(self) -> tuple[End, End]:
        """Start and end."""
        return self.start, self.end

    def far(self, name: str) -> End:
        """The end that is not at the part `name`."""
        return self.end if self.start.part == name else self.start

    def near(self, name: str) -> End:
        """The end at the part `name`."""
        return self.start if self.start.part == name else self.end

    @property
    def is_round(self) -> bool:
        """Whether it joins two ports of one part."""
        return self.start.part == self.end.part


@dataclass(frozen=True)
class Diagram:
    """Items by name, in the order of the file, and the links between them.

    `origins` are the ports of parts that stand behind the ports of folded branches.
    """

    items: Mapping[str, Item]
    links: tuple[Link, ...]
    origins: Mapping[End, End] = field(default_factory=dict)

    def origin(self, end: End) -> End:
        """The port of the layout that stands behind an end."""
        return self.origins.get(end, end)

    @cached_property
    def links_at(self) -> Mapping[str, list[Link]]:
        """The links of each item, each once."""
        found: dict[str, list[Link]] = defaultdict(list)
        for link in self.links:
            for name in dict.fromkeys((link.start.part, link.end.part)):
                found[name].append(link)
        return found
