"""What `times` says to the labels of the instances, and the word behind a `/` to those that it selects."""

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from typing import Final, TypeAlias

from plumbnet.layout.assemblies.wrong import Wrong, cut_short, meant
from plumbnet.layout.yaml import Plain

MOST_TIMES: Final = 100_000
"""Most instances that one part stands for."""
EACH, NEXT, FIRST, LAST, CAPPED = "each", "next", "first", "last", "capped"
RESERVED: Final = (EACH, NEXT, FIRST, LAST, CAPPED)
"""Words that select, and so are the names of nothing."""
SELECTING: Final = (EACH, NEXT, FIRST, LAST)

Labels: TypeAlias = tuple[str, ...]

_RANGE = re.compile(r"([0-9]{1,6})-([0-9]{1,6})")
_LABEL = re.compile(r"\w(?:[\w-]{0,29}\w)?")


def labels_of(times: Plain) -> Labels:
    """The labels of the instances, in the order written. Raises Wrong.

    >>> labels_of(3), labels_of("08-10"), labels_of(["west", "1-2"])
    (('1', '2', '3'), ('08', '09', '10'), ('west', '1', '2'))
    """
    if isinstance(times, int) and not isinstance(times, bool):
        if not 1 <= times <= MOST_TIMES:
            raise Wrong(f"times: {times:,} is no count from 1 to {MOST_TIMES:,}")
        return tuple(map(str, range(1, times + 1)))
    if not isinstance(times, str | list):
        raise Wrong("times takes a count (20), a range (101-120) or a list of them")
    labels: list[str] = []
    for word in times if isinstance(times, list) else [times]:
        labels += _labels(word)
        if len(labels) > MOST_TIMES:
            raise Wrong(f"times names more than {MOST_TIMES:,} instances")
    _refuse_unclear(labels)
    return tuple(labels)


def _labels(word: Plain) -> Iterable[str]:
    """A range as its numbers, with its noughts; any other word as it is."""
    text = str(word)
    ends = _RANGE.fullmatch(text)
    if ends is None:
        if isinstance(word, bool | dict | list | None) or not _LABEL.fullmatch(text) or text in RESERVED:
            raise Wrong(f'"{cut_short(text)}" is no name for an instance; use letters, digits and -')
        return (text,)
    low, high = int(ends[1]), int(ends[2])
    if low > high:
        raise Wrong(f"the range {text} runs backwards; write {ends[2]}-{ends[1]}")
    if high - low >= MOST_TIMES:
        raise Wrong(f"the range {text} is longer than {MOST_TIMES:,}")
    width = len(ends[1]) if ends[1].startswith("0") else 0
    return (str(number).zfill(width) for number in range(low, high + 1))


def _refuse_unclear(labels: Sequence[str]) -> None:
    if not labels:
        raise Wrong("times names no instance")
    known = Counter(labels)
    twice = next((label for label, count in known.items() if count > 1), None)
    if twice is not None:
        raise Wrong(f"times names {twice} twice")
    for label in labels:
        if "-" in label and any(low in known and high in known for low, high in _cuts(label)):
            raise Wrong(f"{label} is an instance and a range of others; call it something else")


def _cuts(word: str) -> Iterator[tuple[str, str]]:
    """The two words on either side of each hyphen."""
    yield from ((word[:at], word[at + 1 :]) for at, sign in enumerate(word) if sign == "-")


def selected(name: str, word: str, labels: Labels) -> Labels:
    """The labels that a word behind the `/` selects of `name`; `next` those of `each`. Raises Wrong.

    >>> selected("rooms", "2-3", ("1", "2", "3")), selected("rooms", "last", ("1", "2", "3"))
    (('2', '3'), ('3',))
    """
    if word in {EACH, NEXT}:
        return labels
    if word in {FIRST, LAST}:
        return (labels[-1 if word == LAST else 0],)
    if word in labels:
        return (word,)
    for low, high in _cuts(word):
        if low in labels and high in labels:
            begin, end = labels.index(low), labels.index(high)
            if begin > end:
                raise Wrong(f"the range {word} runs backwards")
            return labels[begin : end + 1]
    known = f"it has {labels[0]} to {labels[-1]}" if len(labels) > 1 else f"it has {labels[0]}"
    raise Wrong(f"{name} has no {cut_short(word)}; {known}{meant(word, [*labels, *SELECTING])}")


def say_which(name: str, labels: Labels) -> str:
    """What is wrong where a name stands alone that stands for several."""
    first = f"{name}/{labels[0]}"
    if len(labels) == 1:
        return f"{name} is numbered; say which: {first}, {name}/first, or {name}/each"
    stands = f"{name} stands for {len(labels)} ({labels[0]} to {labels[-1]})"
    return f"{stands}; say which: {first}, {name}/first, {name}/last, a range, or {name}/each"


def span(labels: Sequence[str], of: Labels) -> str | None:
    """Labels as the word that selects them, None where there is none.

    >>> span(("2", "3"), ("1", "2", "3")), span(("1", "3"), ("1", "2", "3"))
    ('2-3', None)
    """
    if len(labels) == 1:
        return labels[0]
    if tuple(labels) == of:
        return EACH
    begin = of.index(labels[0])
    return f"{labels[0]}-{labels[-1]}" if of[begin : begin + len(labels)] == tuple(labels) else None
