"""A report to what the drawing says beyond the piping: trapped zones, what stops the water, the way out."""

from collections.abc import Iterator, Sequence

from plumbnet.analysis import Report
from plumbnet.drawing.items import Shading
from plumbnet.rules.facts import Verdict

_MOST_NAMED = 3
_LONGEST_NAME = 30


def stop_remarks(report: Report) -> frozenset[str]:
    """The devices that stand against the water of some heater."""
    return frozenset(name for heater in report.heaters for names in heater.stopped_by.sets for name in names)


def ways(report: Report) -> tuple[tuple[str, ...], ...]:
    """The parts on the way out of each open heater, from the heater on."""
    open_ways = (heater.way_out for heater in report.heaters if heater.verdict is Verdict.OPEN)
    return tuple(dict.fromkeys(rung.way for rung in open_ways if rung is not None))


def shadings(report: Report) -> Iterator[Shading]:
    """The water in trouble."""
    for water in report.facts.shut_in:
        yield Shading(water.verdict, tag(water.verdict, water.heaters), water.ends)


def tag(verdict: Verdict, heaters: Sequence[str]) -> str:
    """The words that mark a zone: its verdict, and the heaters it is about."""
    names = [name if len(name) <= _LONGEST_NAME else f"{name[: _LONGEST_NAME - 3]}..." for name in heaters]
    more = ["..."] if len(names) > _MOST_NAMED else []
    return f"{verdict.value.upper()}: {', '.join([*names[:_MOST_NAMED], *more])}"
