"""Two reports to what differs between them: verdicts, key figures and findings, what became worse first."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from plumbnet.analysis import Report
from plumbnet.layout.units import PRESSURE, VOLUME, Dimension
from plumbnet.rules import Finding, Severity
from plumbnet.rules.facts import FROM_BEST_TO_WORST, ROUNDING_PA, TROUBLED, HeaterFacts
from plumbnet.study.compare.finding_match import FindingChange, matched

ROUNDING_M3 = 1e-9
"""Volumes are compared to a cubic millimetre, finer than any vessel is made and coarser than rounding in a sum."""
_ROUNDING: Final = {PRESSURE: ROUNDING_PA, VOLUME: ROUNDING_M3}


@dataclass(frozen=True, slots=True)
class Figure:
    """A number of a heater before and after, in SI; None where there is none. `key` names it as the JSON report does.

    Pressures are gauge, at the heater's own height.
    """

    key: str
    name: str
    dimension: Dimension
    before: float | None
    after: float | None

    @property
    def differs(self) -> bool:
        """Whether the number is another one, by more than rounding."""
        if self.before is None or self.after is None:
            return self.before is not self.after
        return abs(self.after - self.before) > _ROUNDING[self.dimension]


@dataclass(frozen=True, slots=True)
class HeaterChange:
    """One heater in both reports; None in the report in which there is no heater of that name."""

    name: str
    before: HeaterFacts | None
    after: HeaterFacts | None

    @property
    def figures(self) -> tuple[Figure, ...]:
        """The key figures, in the order in which a report states them, whether or not they differ."""
        return tuple(
            Figure(key, name, dimension, _number(self.before, read), _number(self.after, read))
            for key, name, dimension, read in _FIGURES
        )

    @property
    def is_worse(self) -> bool:
        """Whether its verdict is worse, or the same and its pressure now passes the limit; new and in trouble."""
        if self.before is None or self.after is None:
            return _is_in_trouble(self.after)
        step = _rank(self.after) - _rank(self.before)
        return step > 0 or (step == 0 and _passes_limit(self.after) and not _passes_limit(self.before))

    @property
    def is_better(self) -> bool:
        """The opposite of worse; a heater that was in trouble and is gone counts as better."""
        return HeaterChange(self.name, self.after, self.before).is_worse

    @property
    def differs(self) -> bool:
        """Whether the verdict, a key figure, or what stops its water is another one."""
        if self.before is None or self.after is None:
            return True
        return (
            self.before.verdict is not self.after.verdict
            or self.before.stopped_by.sets != self.after.stopped_by.sets
            or any(figure.differs for figure in self.figures)
        )


@dataclass(frozen=True, slots=True)
class Difference:
    """What differs between two reports.

    `heaters` holds every heater of either, worse ones first, then better ones, then those that differ otherwise,
    each in the order of the files. Findings come with the most severe first; those of `accepted` stand no more only
    because the later file accepts them.
    """

    heaters: tuple[HeaterChange, ...]
    new: tuple[Finding, ...]
    gone: tuple[Finding, ...]
    altered: tuple[FindingChange, ...]
    accepted: tuple[Finding, ...] = ()

    @property
    def is_worse(self) -> bool:
        """Whether a heater became worse or a finding of severity error is new; warnings and notes do not count.

        An error about a heater that replaces another error about it is its old trouble in other words (a tank
        too small, where there was none) and does not count.
        """
        return (
            any(heater.is_worse for heater in self.heaters)
            or any(finding.is_worse for finding in self.altered)
            or any(True for _ in self._fresh_errors())
        )

    @property
    def is_better(self) -> bool:
        """Whether nothing is worse, and a heater became better or an error is gone."""
        return not self.is_worse and (
            any(heater.is_better for heater in self.heaters)
            or any(finding.severity is Severity.ERROR for finding in self.gone)
            or any(FindingChange(one.after, one.before).is_worse for one in self.altered)
        )

    @property
    def differs(self) -> bool:
        """Whether anything at all is different."""
        return bool(self.new or self.gone or self.altered or self.accepted) or any(
            heater.differs for heater in self.heaters
        )

    def _fresh_errors(self) -> Iterator[Finding]:
        """New errors, less those that replace an old error about the same heater."""
        heaters = {heater.name for heater in self.heaters}
        replaced = [one.parts[0] for one in self.gone if one.severity is Severity.ERROR and one.parts[0] in heaters]
        for one in self.new:
            if one.severity is Severity.ERROR:
                if one.parts[0] in replaced:
                    replaced.remove(one.parts[0])
                else:
                    yield one


def difference(before: Report, after: Report) -> Difference:
    """What differs between two reports; heaters are matched by name, findings by name and parts."""
    found = matched(before.findings, after.findings)
    lasting = set(found.gone) - set(matched(found.gone, [one.finding for one in after.accepted]).gone)
    gone = sorted(found.gone, key=lambda one: one.severity.rank)
    return Difference(
        heaters=tuple(sorted(_heaters(before.heaters, after.heaters), key=_worse_first)),
        new=tuple(sorted(found.new, key=lambda one: one.severity.rank)),
        gone=tuple(one for one in gone if one not in lasting),
        altered=tuple(sorted(found.altered, key=lambda one: one.after.severity.rank)),
        accepted=tuple(one for one in gone if one in lasting),
    )


def _heaters(before: Sequence[HeaterFacts], after: Sequence[HeaterFacts]) -> Iterator[HeaterChange]:
    old, now = {heater.name: heater for heater in before}, {heater.name: heater for heater in after}
    for name in dict.fromkeys([*old, *now]):
        yield HeaterChange(name, old.get(name), now.get(name))


def _worse_first(heater: HeaterChange) -> tuple[bool, bool, bool]:
    return not heater.is_worse, not heater.is_better, not heater.differs


def _rank(heater: HeaterFacts) -> int:
    return FROM_BEST_TO_WORST.index(heater.verdict)


def _is_in_trouble(heater: HeaterFacts | None) -> bool:
    return heater is not None and heater.verdict in TROUBLED


def _passes_limit(heater: HeaterFacts) -> bool:
    """Whether its pressure comes to rest above the limit, or nothing at all holds it."""
    if heater.settled_pa is None:
        return _is_in_trouble(heater)
    return heater.settled_pa > heater.limit_pa + ROUNDING_PA


def _number(heater: HeaterFacts | None, read: Callable[[HeaterFacts], float | None]) -> float | None:
    return None if heater is None else read(heater)


def _need_m3(heater: HeaterFacts) -> float | None:
    return None if heater.need is None else heater.need.tank_m3


_FIGURES: Final[tuple[tuple[str, str, Dimension, Callable[[HeaterFacts], float | None]], ...]] = (
    ("static_pa", "static", PRESSURE, lambda heater: heater.static_pa),
    ("limit_pa", "limit", PRESSURE, lambda heater: heater.limit_pa),
    ("settled_pa", "settles at", PRESSURE, lambda heater: heater.settled_pa),
    ("expansion_m3", "grows by", VOLUME, lambda heater: heater.expansion_m3),
    ("short_m3", "short", VOLUME, lambda heater: heater.short_m3),
    ("need_m3", "needs a tank of at least", VOLUME, _need_m3),
)
