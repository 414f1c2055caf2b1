"""What a page holds, before anyone knows whether it becomes HTML or PDF: chapters of blocks, entries and pictures."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import TypeAlias

from matplotlib.figure import Figure

from plumbnet.report.prose import Block, Paragraph

WIDE_IN = 9.0
"""A picture wider than this lies across its sheet, in print."""


@dataclass(frozen=True, slots=True)
class Entry:
    """Something under a mark: a heater under its verdict, a finding under its severity.

    `meaning` is the verdict or severity that the mark is coloured by; `lights` are the parts that a picture on the
    page shows up for it. One of which nothing is told only lights up parts, and is not printed.
    """

    mark: str
    meaning: str
    title: str
    told: tuple[Paragraph, ...]
    lights: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class PagePicture:
    """A picture that `draw` makes anew at each call; `words` tell what it shows to those who do not see it.

    `shows_parts` says that it is the piping, in which entries light up their parts; `is_small` that it stands in the
    column of text however large it was drawn.
    """

    title: str
    words: str
    draw: Callable[[], Figure]
    shows_parts: bool = False
    is_small: bool = False

    def is_wide(self, width_in: float) -> bool:
        """Whether a drawing of that width lies across its sheet, in print."""
        return width_in > WIDE_IN and not self.is_small


@dataclass(frozen=True, slots=True)
class PageFrame:
    """Another page, whole, in a frame of this one in HTML; in print it is left out. `words` stand under it.

    `script_hash` is that of its only script, which this page must allow as well.
    """

    title: str
    words: str
    document: str
    script_hash: str


PageBlock: TypeAlias = Block | Entry | PagePicture | PageFrame


@dataclass(frozen=True, slots=True)
class Chapter:
    """A chapter; `key` is its name in links. In print one may open a sheet of its own."""

    key: str
    title: str
    blocks: tuple[PageBlock, ...]
    opens_sheet: bool = False


@dataclass(frozen=True, slots=True)
class Page:
    """A page: title, lines under it, the caution, chapters."""

    title: str
    under: tuple[str, ...]
    caution: str
    chapters: tuple[Chapter, ...]
