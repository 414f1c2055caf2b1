"""Shafts side by side: those with the deepest headers last, the risers of each in the order that crosses least."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import permutations, product

from plumbnet.drawing.lettering import width
from plumbnet.drawing.riser.likeness import DrawnShaft
from plumbnet.drawing.riser.stacking.branch_names import caption_lines
from plumbnet.drawing.riser.stacking.doors import SERVICE_RANK
from plumbnet.drawing.riser.stacking.riser_columns import columns_of, riser_width
from plumbnet.drawing.riser.stacking.riser_marks import COUNT_SIZE, LEVEL_SIZE
from plumbnet.drawing.riser.stacking.setting import Setting
from plumbnet.drawing.riser.structure import Riser

_GAP = 15.0
"""Between risers and branches."""
_NARROWEST = 20.0
_BETWEEN = 26.0
"""Between two shafts."""
_LEAD = 44.0
"""Left of the first shaft, for the heights of levels."""
_MOST_PERMUTED = 5
_HEADER_CROSSED = 0.9


@dataclass(frozen=True, slots=True)
class ShaftPlace:
    """A shaft on paper, from `left` to `right`."""

    shaft: DrawnShaft
    left: float
    right: float


def put_side_by_side(setting: Setting) -> list[ShaftPlace]:
    """The shafts from left to right; sets the x of every riser and the corner of every stop."""
    is_below = setting.bands.is_below
    x = setting.bands.start + (0.0 if is_below else _LEAD)
    sign = -1 if is_below else 1  # headers come from the right then, and the lowest has to lead furthest
    found: list[ShaftPlace] = []
    for shaft in sorted(setting.folding.shafts, key=lambda shaft: (sign * round(_header(setting, shaft)), shaft.place)):
        lines = caption_lines(setting.structure, shaft)
        said = max((width(words, LEVEL_SIZE) for words in lines), default=0.0)
        end = max(_put(setting, shaft, x), x + said)
        found.append(ShaftPlace(shaft, x, end))
        x = end + _BETWEEN
    setting.bands.widen(x - _BETWEEN if is_below else 0.0)
    return found


def count_words(shaft: DrawnShaft) -> str:
    """How many a shaft stands for."""
    return f"× {shaft.count} shafts alike"


def _put(setting: Setting, shaft: DrawnShaft, start: float) -> float:
    left, right = _ordered(setting, shaft)
    xs, end = columns_of([riser_width(setting.structure, riser) for riser in left], 1)
    setting.x.update((riser.number, start + x) for riser, x in zip(left, xs, strict=True))
    zone = start + end + (_GAP if left else 0.0)
    wide = max([setting.stops[number].width for number in shaft.branches] + [_NARROWEST])
    if shaft.others:
        wide = max(wide, width(count_words(shaft), COUNT_SIZE, bold=True) - end)
    for number in shaft.branches:
        stop = setting.stops[number]
        inward = (wide - stop.width) / 2 if right else 0.0
        level = setting.structure.components[number].level
        setting.corner[number] = (zone + inward, setting.bands.base[level])
    if not right:
        return zone + wide
    xs, end = columns_of([riser_width(setting.structure, riser) for riser in right], 0)
    setting.x.update((riser.number, zone + wide + _GAP + x) for riser, x in zip(right, xs, strict=True))
    return zone + wide + _GAP + end


def _header(setting: Setting, shaft: DrawnShaft) -> float:
    """Mean height of the headers from which a shaft starts."""
    heights = list(_starts(setting, shaft.risers))
    return sum(heights) / len(heights) if heights else 0.0


def _starts(setting: Setting, risers: Sequence[Riser]) -> Iterator[float]:
    for riser in risers:
        chain = riser.chains[0]
        if setting.structure.home[chain.low.part].is_plant:
            yield setting.end_y(chain, chain.low)


def _ordered(setting: Setting, shaft: DrawnShaft) -> tuple[list[Riser], list[Riser]]:
    """The risers left of the branches and those right of them, each from left to right."""
    left = [riser for riser in shaft.risers if riser.number not in setting.right]
    right = [riser for riser in shaft.risers if riser.number in setting.right]
    crossings = _Crossings(setting, shaft)
    if max(len(left), len(right)) > _MOST_PERMUTED:
        by_service = sorted(left, key=lambda riser: SERVICE_RANK[riser.service])
        return by_service, right
    best = min(product(permutations(left), permutations(right)), key=lambda both: crossings.of(*both))
    return list(best[0]), list(best[1])


class _Crossings:
    """Counts what an order of risers crosses."""

    def __init__(self, setting: Setting, shaft: DrawnShaft) -> None:
        self.is_below = setting.bands.is_below
        self.span = {riser.number: setting.span(riser) for riser in shaft.risers}
        self.start = {riser.number: next(_starts(setting, [riser]), None) for riser in shaft.risers}
        self.ways: list[tuple[int, float]] = []
        for number in shaft.branches:
            base = setting.bands.base[setting.structure.components[number].level]
            for key, way in setting.stops[number].ways.items():
                self.ways.append((setting.homes[key].number, base + way[-1][1]))

    def of(self, left: Sequence[Riser], right: Sequence[Riser]) -> tuple[float, tuple[int, ...]]:
        """Branch lines through risers and headers through risers, then the usual order of services."""
        crossed = self._branches([riser.number for riser in left])
        crossed += self._branches([riser.number for riser in reversed(right)])
        order = [*left, *right]
        crossed += sum(
            _HEADER_CROSSED
            for at, one in enumerate(order)
            for other in order[at + 1 :]
            if self._is_crossed(self.start[one.number], self.start[other.number])
        )
        return round(crossed, 6), tuple(SERVICE_RANK[riser.service] for riser in order)

    def _branches(self, inward: Sequence[int]) -> float:
        """Branch lines that pass a riser nearer to the branches than their own."""
        place = {number: at for at, number in enumerate(inward)}
        return sum(
            1.0
            for number, y in self.ways
            if number in place
            for nearer in inward[place[number] + 1 :]
            if self.span[nearer][0] - 1.0 < y < self.span[nearer][1] + 1.0
        )

    def _is_crossed(self, one: float | None, other: float | None) -> bool:
        """Whether the header of one riser passes another that stands further right."""
        if one is None or other is None:
            return False
        return one < other if self.is_below else other < one
