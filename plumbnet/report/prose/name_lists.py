"""A sentence with long lists of parts in it to the same sentence with them in short."""

import re
from collections.abc import Container, Iterator, Sequence

from plumbnet.report.prose.name_ranges import name_ranges, names_in_short

MANY_NAMES = 4
"""From so many names on a list is told in short; one less that make a single range is, too."""
LONG = 1000
"""Letters from which on a paragraph in the terminal is long: some dozens of names."""
_LONGEST = 600
"""Letters of a name that is looked for beside other words."""
_BETWEEN = re.compile(r"(, | and )")
_EDGE = re.compile(r"(?<![\w/-])(?=[\w/-])|(?<=[\w/-])(?![\w/-])")
"""Where a word begins or ends, of such as names are made of."""


def lists_in_short(text: str, known: Container[str]) -> str:
    """The text with each list of many names that are `known` in ranges, and of more than a few how many more.

    What else stands in it stays as it is. Cost: linear in the text.

    >>> lists_in_short("serves r1, r2, r3 and r4, as the hall.", {"r1", "r2", "r3", "r4"})
    'serves r1 to 4, as the hall.'
    """
    pieces = _BETWEEN.split(text)
    written, place = "", 0
    while place < len(pieces):
        names = list(_names_from(pieces, place, known))
        if len(names) < MANY_NAMES and not _is_one_range(names):
            end = place + 2 * max(1, len(names) - 1)
            written += "".join(pieces[place:end])
            place = end
            continue
        last = place + 2 * (len(names) - 1)
        before = pieces[place].removesuffix(names[0])
        written += before + names_in_short(names)
        pieces[last] = pieces[last].removeprefix(names[-1])
        place = last
    return written


def long_in_short(text: str, known: Container[str]) -> str:
    """A text that many names make long with its lists in short; any other as it is."""
    return lists_in_short(text, known) if len(text) > LONG else text


def _names_from(pieces: Sequence[str], place: int, known: Container[str]) -> Iterator[str]:
    """The names of a list that begins at the end of a piece; none where it ends with no name."""
    first = _at_end(pieces[place], known)
    if not first:
        return
    yield first
    for number in range(place + 2, len(pieces), 2):
        piece = pieces[number]
        if piece in known:
            yield piece
            continue
        last = _at_start(piece, known)
        if last:
            yield last
        return


def _is_one_range(names: Sequence[str]) -> bool:
    return len(names) >= MANY_NAMES - 1 and len(name_ranges(names)) == 1


def _at_end(piece: str, known: Container[str]) -> str:
    end = piece[-_LONGEST:]
    return next((end[edge.start() :] for edge in _EDGE.finditer(end) if end[edge.start() :] in known), "")


def _at_start(piece: str, known: Container[str]) -> str:
    start = piece[:_LONGEST]
    ends = (start[: edge.start()] for edge in reversed(list(_EDGE.finditer(start))))
    return next((name for name in ends if name in known), "")
