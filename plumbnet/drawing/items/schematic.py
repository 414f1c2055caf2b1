"""What a schematic says beyond its items and links: shaded zones, ways, and the words on its sheet."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from plumbnet.drawing.items.building_facts import BuildingFacts
from plumbnet.drawing.items.item import Diagram
from plumbnet.drawing.lettering import LABEL_SIZE
from plumbnet.drawing.palette import Service
from plumbnet.layout.model import End


@dataclass(frozen=True, slots=True)
class Shading:
    """A zone to be shaded: the tone of its shade, the words that mark it and their size in points, the ports in it."""

    tone: str
    tag: str
    ports: frozenset[End]
    letter_size: float = LABEL_SIZE


@dataclass(frozen=True, slots=True)
class BlockRow:
    """A row of the title block: what it is, what it says, and the tone that this takes."""

    name: str
    words: str
    tone: str | None = None


@dataclass(frozen=True, slots=True)
class LegendWords:
    """What lines, shades, rings, bands and letters stand for, in the order of the legend; told where there are any."""

    services: Mapping[Service, str] = field(default_factory=dict)
    tones: Mapping[str, str] = field(default_factory=dict)
    ring: str = ""
    band: str = ""
    letters: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Letters:
    """Letters in a badge: at items by name, which get a frame, and on pipes by the numbers of their links.

    Each of several letters at one place has its own meaning.
    """

    items: Mapping[str, str] = field(default_factory=dict)
    links: Mapping[int, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Schematic:
    """All that is drawn, and what stands on the sheet round it; a band marks each of `ways`, the names along it."""

    title: str
    diagram: Diagram
    block: tuple[BlockRow, ...]
    shadings: tuple[Shading, ...] = ()
    ways: tuple[tuple[str, ...], ...] = ()
    legend: LegendWords = field(default_factory=LegendWords)
    caution: str = ""
    letters: Letters = field(default_factory=Letters)
    building: BuildingFacts | None = None
    """What a riser diagram is read from; None where there is to be none."""

    @property
    def on_ways(self) -> frozenset[str]:
        """The names along all ways."""
        return frozenset(name for way in self.ways for name in way)

    @property
    def kept(self) -> frozenset[str]:
        """The names of what is drawn for itself, however large the layout is."""
        return self.on_ways | self.letters.items.keys()
