"""The heated water of a sheet as rows of a table: equal pipes in one row, then the sum of each water."""

from collections.abc import Iterator, Sequence
from itertools import pairwise
from pathlib import PurePath

from plumbnet.analysis.sizing_sheet import Content, Sheet
from plumbnet.layout.units import Units
from plumbnet.report.prose import printed_number
from plumbnet.rules import listed

_PIPE = "pipe "
_ARROW = " -> "


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
    """Pipes that hold as much and come from the same line together, whatever else by itself."""
    groups: dict[object, list[Content]] = {}
    for number, one in enumerate(contents):
        key: object = (one.heater, one.volume_m3, one.origin) if one.name.startswith(_PIPE) else number
        groups.setdefault(key, []).append(one)
    return list(groups.values())


def _row(sheet: Sheet, group: Sequence[Content], units: Units) -> tuple[str, str, str, str]:
    first = group[0]
    each = printed_number("V", first.volume_m3, "volume", units).with_unit
    volume = each if len(group) == 1 else f"{len(group)} x {each}"
    return _name(group), volume, first.heater, origin_on_sheet(sheet, first.origin)


def _name(group: Sequence[Content]) -> str:
    """A pipe by its two parts; several by all the parts that they join, one behind the other where they are."""
    if len(group) == 1:
        return group[0].name
    ends = [one.name.removeprefix(_PIPE).split(_ARROW) for one in group]
    if all(one[-1] == other[0] for one, other in pairwise(ends)):
        return f"pipes {_ARROW.join([*(first for first, *_ in ends), ends[-1][-1]])}"
    return f"pipes {listed([_ARROW.join(one) for one in ends])}"
