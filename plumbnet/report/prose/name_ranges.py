"""Names of parts in short: those that differ in their numbers alone as ranges, "rooms 1 to 200/mixer"."""

import re
from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import product
from typing import TypeAlias

from plumbnet.rules import MOST_LISTED, listed

MOST_NAMED = 6
"""Names, or ranges of them, that are told; the rest are counted."""
_LEAST_RUN = 3
"""Numbers one behind the other from which on they are a range; of those in other steps one more."""
_MOST_RUNS = 5
"""Runs and single numbers that are told of one range; the rest are counted."""
_NUMBER = re.compile(r"([0-9]{1,9})")
_STEPS = re.compile(r"(/|--)")
"""Between the steps of a name, from an instance to what is in it."""

_Fixed: TypeAlias = tuple[tuple[str, ...], ...]
"""For each step of a name, and each mark between two, what stands before, between and behind what differs."""
_Axes: TypeAlias = tuple[tuple[str, ...], ...]
"""For each place of a name in which others differ, what stands there; every choice of one from each is a name."""


@dataclass(frozen=True, slots=True)
class NameRange:
    """Names told in one: `words`, and the names that they stand for, in the order in which they came."""

    words: str
    names: tuple[str, ...]


def name_ranges(names: Iterable[str]) -> tuple[NameRange, ...]:
    """Names, each once, in the order of the first of each range; a range stands for exactly the names it holds.

    Cost: the number of names times that of numbers in one.

    >>> [one.words for one in name_ranges(["rooms/1/tap", "rooms/2/tap", "rooms/3/tap", "hall"])]
    ['rooms 1 to 3/tap', 'hall']
    >>> [one.words for one in name_ranges(["r7-cold", "r8-cold", "r9-cold", "pump-1", "pump-2"])]
    ['r7-cold to r9-cold', 'pump-1 and 2']
    """
    places = {name: place for place, name in enumerate(dict.fromkeys(names))}
    groups: dict[_Fixed, list[_Axes]] = defaultdict(list)
    for name in places:
        fixed, moving = _split(name)
        groups[fixed].append(tuple((each,) for each in moving))
    found = [_range(fixed, axes, places) for fixed, boxes in groups.items() for axes in _merged(boxes)]
    return tuple(sorted(found, key=lambda one: places[one.names[0]]))


def listed_whole(names: Sequence[str]) -> str:
    """Names as a person lists them, none left out unless in ranges: of very many the ranges stand for them.

    >>> listed_whole(["a", "b", "c"])
    'a, b and c'
    """
    return listed(names) if len(names) <= MOST_LISTED else names_in_short(names)


def names_in_short(names: Iterable[str], most: int = MOST_NAMED) -> str:
    """Names as part of a sentence, ranges of them where there are, and beyond `most` only how many more there are.

    >>> names_in_short(["a", "b", "c", "d"], most=2)
    'a, b and 2 more'
    """
    return _in_short(tuple(names), most)


@lru_cache(maxsize=512)  # of very many heaters that share their water most are told with the same first others
def _in_short(names: tuple[str, ...], most: int) -> str:
    ranges = name_ranges(names)
    if len(ranges) <= most + 1:
        return listed([one.words for one in ranges])
    left = sum(len(one.names) for one in ranges[most:])
    return f"{', '.join(one.words for one in ranges[:most])} and {left} more"


@lru_cache(maxsize=4096)  # of heaters that share their water each is told with nearly the same others
def _split(name: str) -> tuple[_Fixed, tuple[str, ...]]:
    """What must be the same in names told together, and what may differ."""
    steps = _STEPS.split(name)
    fixed, moving = list[tuple[str, ...]](), list[str]()
    for step, is_label in zip(steps, _labels(steps), strict=True):
        pieces = ["", step, ""] if is_label else _NUMBER.split(step)
        fixed.append(tuple(pieces[::2]))
        moving += pieces[1::2]
    return tuple(fixed), tuple(moving)


def _labels(steps: Sequence[str]) -> Iterator[bool]:
    """Whether each step, or mark between two, is a word that tells one instance from others, as in plants/low/pump.

    It stands behind what it is one of, which may have a number instead, and before what is meant in it.
    """
    was_label = True
    for place, step in enumerate(steps):
        if place % 2:
            yield False
            continue
        is_number = step.isdecimal()
        is_counted = place + 2 < len(steps) and steps[place + 2].isdecimal()
        is_label = not (was_label or is_number or is_counted) and place + 2 < len(steps) and not _NUMBER.search(step)
        yield is_label
        was_label = is_label or is_number


def _merged(boxes: Sequence[_Axes]) -> list[_Axes]:
    """The same names in fewer boxes: those that differ in one place alone are one, from the last place on."""
    for axis in reversed(range(len(boxes[0]))):
        beside: dict[tuple[_Axes, _Axes], list[str]] = defaultdict(list)
        for box in boxes:
            beside[box[:axis], box[axis + 1 :]] += box[axis]
        boxes = [(*before, tuple(sorted(values)), *after) for (before, after), values in beside.items()]
    return list(boxes)


def _range(fixed: _Fixed, axes: _Axes, places: dict[str, int]) -> NameRange:
    names = sorted(_names(fixed, axes), key=places.__getitem__)
    return NameRange(_words(fixed, axes), tuple(names))


def _names(fixed: _Fixed, axes: _Axes) -> Iterator[str]:
    """Every name of a box."""
    for values in product(*axes):
        left = iter(values)
        yield "".join(texts[0] + "".join(next(left) + text for text in texts[1:]) for texts in fixed)


def _words(fixed: _Fixed, axes: _Axes) -> str:
    """The name with what differs said in words."""
    left, words = iter(axes), ""
    for texts in fixed:
        words = _joined(words, *_step(texts, [next(left) for _ in texts[1:]]))
    return words


def _joined(words: str, step: str, is_numbered: bool) -> str:  # noqa: FBT001  what `_step` says
    """Words with one more step: what counts instances stands behind their name, "rooms 1 to 9"."""
    mark = next((mark for mark in ("--", "/") if words.endswith(mark)), "")
    return f"{words.removesuffix(mark)} {step}" if is_numbered and mark else words + step


def _step(texts: Sequence[str], axes: Sequence[tuple[str, ...]]) -> tuple[str, bool]:
    """One step in words, and whether it is nothing but which of several instances are meant."""
    moving = sum(len(values) > 1 for values in axes)
    if moving == 1 and len(axes) == 1 and texts[1]:
        return listed(_ends(axes[0], texts[0], texts[1])), False
    words = texts[0]
    for values, text in zip(axes, texts[1:], strict=True):
        said = listed(_ends(values))
        words += f"({said}){text}" if len(values) > 1 and (text or moving > 1) else said + text
    return words, moving == 1 and not any(texts)


def _ends(values: Sequence[str], before: str = "", after: str = "") -> list[str]:
    """What differs, runs of numbers as a range: "1 to 5", "9"; each with what stands before and after it."""
    said, runs = list[str](), _runs(values)
    most = _MOST_RUNS if len(runs) > _MOST_RUNS + 1 else len(runs)
    for run in runs[:most]:
        first, last = (f"{before}{value}{after}" for value in (run[0], run[-1]))
        step = int(run[1]) - int(run[0]) if len(run) > 1 else 1
        steps = f" in steps of {step}" if step > 1 else ""
        said.append(f"{first} to {last}{steps}" if len(run) > 1 else first)
    left = sum(map(len, runs[most:]))
    return [*said, f"{left} more"] if left else said


def _runs(values: Sequence[str]) -> list[list[str]]:
    """Numbers in runs of one step, from the lowest on, others one by one; words one by one."""
    if not all(value.isascii() and value.isdecimal() for value in values):
        return [[value] for value in sorted(values)]
    widths = {len(value) for value in values if value.startswith("0") and value != "0"}
    ordered = sorted(values, key=lambda value: (len(value) if len(value) in widths else 0, int(value)))
    runs, start = list[list[str]](), 0
    while start < len(ordered):
        end = _run_end(ordered, start)
        runs.append(ordered[start:end])
        start = end
    return runs


def _run_end(ordered: Sequence[str], start: int) -> int:
    """Where the run ends that begins at a place; right behind it where there is none."""
    if start + 1 == len(ordered):
        return start + 1
    step, end = int(ordered[start + 1]) - int(ordered[start]), start + 1
    while end < len(ordered) and ordered[end] == str(int(ordered[end - 1]) + step).zfill(len(ordered[end - 1])):
        end += 1
    return end if end - start >= _LEAST_RUN + (step > 1) else start + 1
