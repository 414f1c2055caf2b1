"""The heated water of a sheet as rows of a table: equal pipes in one row, then the sum of each water."""

import re
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import fsum
from pathlib import PurePath

from plumbnet.analysis.sizing_sheet import Content, Sheet
from plumbnet.layout.units import Units
from plumbnet.report.prose import MANY_NAMES, names_in_short, printed_number
from plumbnet.rules import listed

_PIPE = "pipe "
_ARROW = " -> "
_ORIGIN = re.compile(r"line ([0-9]+)(?: of [^:]*)?(?:: ([^:]*?)(?= at ))?")
"""The line of a pipe and its length, as the sheet tells them; what it is made of follows."""


def heated_water_rows(sheet: Sheet, units: Units) -> Iterator[tuple[str, str, str, str]]:
    """What holds the water, its volume, what warms it, where the volume comes from; then what each water comes to."""
    for water in dict.fromkeys(one.water for one in sheet.contents):
        own = [one for one in sheet.contents if one.water == water]
        for group in _alike(own):
            yield _row(sheet, group, units)
        total_m3 = sum(one.volume_m3 for one in own)
        yield "together", printed_number("V", total_m3, "volume", units).with_unit, water, "sum"


def origin_on_sheet(sheet: Sheet, origin: str) -> str:
    """Where a number comes from, without the name of the file, which the head of the sheet has."""
    return origin.replace(f" of {PurePath(sheet.file).name}", "") if sheet.file else origin


def _alike(contents: Sequence[Content]) -> list[list[Content]]:
    """Pipes that differ in nothing but their lines together, and many that differ in their lengths besides.

    Whatever else stands by itself.
    """
    groups: dict[object, list[Content]] = {}
    tubes: dict[object, list[Content]] = {}
    for number, one in enumerate(contents):
        origin = _origin_of(one)
        is_pipe = one.name.startswith(_PIPE)
        key: object = (one.heater, one.volume_m3, origin.length, origin.made) if is_pipe else number
        groups.setdefault(key, []).append(one)
    for key, group in groups.items():
        origin = _origin_of(group[0])
        tubes.setdefault((group[0].heater, len(group), origin.made) if origin.length else key, []).extend(group)
    many = [group for group in tubes.values() if _lengths(group) >= MANY_NAMES]
    in_many = {id(one) for group in many for one in group}
    places = {id(one): place for place, one in enumerate(contents)}
    rows = [*many, *(group for group in groups.values() if id(group[0]) not in in_many)]
    return sorted(rows, key=lambda group: places[id(group[0])])


@dataclass(frozen=True, slots=True)
class _Origin:
    """Where the volume of a pipe comes from: its line, its length, where it has one, and of what it is made."""

    line: str
    length: str
    made: str


def _origin_of(one: Content) -> _Origin:
    found = _ORIGIN.match(one.origin)
    return _Origin(found[1], found[2] or "", one.origin[found.end() :]) if found else _Origin("", "", one.origin)


def _lengths(group: Sequence[Content]) -> int:
    return len({_origin_of(one).length for one in group})


def _row(sheet: Sheet, group: Sequence[Content], units: Units) -> tuple[str, str, str, str]:
    first = group[0]
    if _lengths(group) > 1:
        volume = printed_number("V", fsum(one.volume_m3 for one in group), "volume", units).with_unit
    else:
        each = printed_number("V", first.volume_m3, "volume", units).with_unit
        volume = each if len(group) == 1 else f"{len(group)} x {each}"
    return _name(group), volume, first.heater, origin_on_sheet(sheet, _origin(group))


def _origin(group: Sequence[Content]) -> str:
    """Where the volumes come from: all lines, and each length with how often it is there."""
    origins = [_origin_of(one) for one in group]
    lines, lengths = list(dict.fromkeys(one.line for one in origins)), Counter(one.length for one in origins)
    if len(lines) == 1:
        return group[0].origin
    times = lengths[origins[0].length]
    each = f" ({times} each)" if times > 1 and len(lengths) > 1 else ""
    colon = ": " if origins[0].length else ""
    return f"lines {names_in_short(lines)}{colon}{listed(list(lengths))}{each}{origins[0].made}"


def _name(group: Sequence[Content]) -> str:
    """A pipe by its two parts; several by all the parts that they join, one behind the other where they are."""
    if len(group) == 1:
        return group[0].name
    ends = [one.name.removeprefix(_PIPE).split(_ARROW) for one in group]
    if len(group) >= MANY_NAMES:
        first, last = (names_in_short(names) for names in zip(*ends, strict=True))
        return f"{len(group)} pipes from {first} to {last}"
    if all(one[-1] == other[0] for one, other in pairwise(ends)):
        return f"pipes {_ARROW.join([*(first for first, *_ in ends), ends[-1][-1]])}"
    return f"pipes {listed([_ARROW.join(one) for one in ends])}"
