"""Words to lines that fit a drawing, and the room they take on paper."""

import unicodedata
from functools import lru_cache

from matplotlib.font_manager import FontProperties, findfont, get_font

from plumbnet.layout.yaml import visible

LABEL_SIZE = 7.0
"""Size of a label, in points."""
LEADING = 1.2
"""Height of a line of text, as a multiple of its size."""
_LONGEST_LINE = 18
"""Signs in a line of a name, at most."""
_LONGEST = 64
_BREAKS = "-_ "


@lru_cache(maxsize=4096)
def width(text: str, size: float = LABEL_SIZE, *, bold: bool = False) -> float:
    """Width of one line in points, measured with the font that is drawn.

    Signs that the font lacks count as a full square where Unicode calls them wide (Standard Annex 11).
    """
    font = get_font(findfont(FontProperties(family="DejaVu Sans", weight="bold" if bold else "normal")))
    font.set_size(100.0, 72.0)
    known = "".join(sign for sign in text if font.get_char_index(ord(sign)))
    font.set_text(known, 0.0)
    measured = font.get_width_height()[0] / 64.0 / 100.0
    lacking = sum(1.0 if unicodedata.east_asian_width(sign) in "WF" else 0.62 for sign in text if sign not in known)
    return (measured + lacking) * size


def size_of(lines: tuple[str, ...], size: float = LABEL_SIZE, *, bold: bool = False) -> tuple[float, float]:
    """Width and height of lines of text, in points."""
    if not lines:
        return 0.0, 0.0
    return max(width(line, size, bold=bold) for line in lines), len(lines) * size * LEADING


def name_lines(name: str, longest: int = _LONGEST_LINE) -> tuple[str, ...]:
    """A name in lines of at most `longest` signs, broken after a slash, a hyphen, an underscore or a space.

    >>> name_lines("second-floor-cold-water-tee")
    ('second-floor-cold-', 'water-tee')
    """
    rest, lines = visible(name), list[str]()
    while len(rest) > longest:
        slash = rest.rfind("/", 3, longest) + 1
        at = slash or max(rest.rfind(sign, 3, longest) for sign in _BREAKS) + 1 or longest
        lines.append(rest[:at].rstrip(" "))
        rest = rest[at:]
    return (*lines, rest) if rest else tuple(lines)


def shortened(words: str, longest: int = _LONGEST) -> str:
    """Words made visible and cut to a length.

    >>> shortened("a" * 80, 10)
    'aaaaaaa...'
    """
    plain = visible(words)
    return plain if len(plain) <= longest else f"{plain[: longest - 3]}..."
