"""A report as a tradesperson reads it: heater by heater the verdict first, then why, then what to do."""

import textwrap
from collections.abc import Callable, Iterable, Iterator, Sequence

from plumbnet.analysis.report import Report
from plumbnet.layout.fault import visible
from plumbnet.layout.part import Role
from plumbnet.layout.quantity import PRESSURE, TEMPERATURE, VOLUME, Units, show
from plumbnet.report.words import listed, where
from plumbnet.rules.facts import Facts, HeaterFacts, Verdict
from plumbnet.rules.finding import Finding, Severity

WIDTH = 100
MANY = 3
"""From this many heaters on a table comes first."""
CAUTION = (
    "Local code and a licensed person decide; this report supports their judgement and does not replace it. "
    "A relief valve is a safety device: never plug, cap or remove one."
)

Paint = Callable[[str, str], str]
"""Called with a text and what it is (a verdict or a severity); returns the text coloured or as it is."""


def plain(text: str, _meaning: str) -> str:
    """The text as it is."""
    return text


def to_text(report: Report, *, paint: Paint = plain) -> str:
    """The whole report; ends with a line break."""
    facts = report.facts
    lines = list(_heading(report))
    if len(report.heaters) >= MANY:
        lines += ["", *_table(facts, paint)]
    for heater in report.heaters:
        lines += ["", *_heater(facts, heater, paint)]
    if not report.heaters:
        lines += ["", "Nothing in this layout heats water."]
    lines += ["", *_findings(report.findings, paint)]
    if facts.assumed:
        lines += ["", "Taken where the file says nothing:"]
        lines += [line for words, parts in facts.assumed.items() for line in _hung(f"  {words}: ", listed(parts))]
    lines += ["", *textwrap.wrap(CAUTION, WIDTH)]
    return "\n".join(lines) + "\n"


def _heading(report: Report) -> Iterator[str]:
    title = f": {visible(report.system.title)}" if report.system.title else ""
    yield f"{visible(report.system.record.file)}{title}"
    yield f"under {report.profile.profile} ({report.profile.title})"


def _table(facts: Facts, paint: Paint) -> Iterator[str]:
    rows = [("heater", "verdict", "static", "limit", "settles at", "grows by", "opens first")]
    for heater in facts.heaters:
        first = heater.ladder[0] if heater.ladder else None
        rows.append(
            (
                heater.name,
                heater.verdict.value,
                _pressure(heater.static_pa, facts.units),
                _pressure(heater.limit_pa, facts.units),
                _pressure(heater.settled_pa, facts.units),
                show(heater.expansion_m3, VOLUME, facts.units),
                f"{first.outlet} at {_pressure(first.opens_pa, facts.units)}" if first else "nothing",
            )
        )
    yield from _columns(rows, paint)


def _columns(rows: Sequence[tuple[str, ...]], paint: Paint) -> Iterator[str]:
    widths = [max(len(row[column]) for row in rows) for column in range(len(rows[0]))]
    for number, row in enumerate(rows):
        cells = [cell.ljust(width) for cell, width in zip(row, widths, strict=True)]
        if number:
            cells[1] = paint(cells[1], row[1])
        yield "  ".join(cells).rstrip()


def _heater(facts: Facts, heater: HeaterFacts, paint: Paint) -> Iterator[str]:
    place = f"{heater.kind}, line {heater.line}" if heater.line else heater.kind
    yield f"{heater.name}: {paint(heater.verdict.value.upper(), heater.verdict.value)}  ({place})"
    for label, text in _story(facts, heater):
        yield from _hung(f"  {label:<14}", text)


def _story(facts: Facts, heater: HeaterFacts) -> Iterator[tuple[str, str]]:
    """What is to be said of a heater, as labels and sentences: why first, then what to do."""
    yield "because", _reason(facts, heater)
    if heater.static_pa is None:
        yield "pressure", f"no supply reaches it; limit {_pressure(heater.limit_pa, facts.units)} ({heater.limit_by})"
    else:
        static, limit = _pressure(heater.static_pa, facts.units), _pressure(heater.limit_pa, facts.units)
        kept = ", kept from before a valve was shut" if heater.is_cut_off else ""
        yield "pressure", f"static {static}{kept}; limit {limit} ({heater.limit_by})"
    yield "expansion", _growth(facts, heater)
    if heater.ladder:
        rungs = (f"{rung.outlet} at {_pressure(rung.opens_pa, facts.units)}" for rung in heater.ladder)
        yield "opens", "; ".join(rungs)
    if heater.settled_pa is not None and heater.verdict in {Verdict.CONTROLLED, Verdict.TRAPPED}:
        yield "settles", f"at {_pressure(heater.settled_pa, facts.units)} when all is hot"
    if heater.loops:
        yield "loops", "; ".join(" > ".join(loop) for loop in heater.loops)
    yield from _advice(facts, heater)


def _reason(facts: Facts, heater: HeaterFacts) -> str:
    match heater.verdict:
        case Verdict.OPEN:
            way = next(rung for rung in heater.ladder if rung.role.is_way_out)
            return f"its water can go back to {way.outlet}: {' > '.join(way.way)}"
        case Verdict.CONTROLLED:
            taken = listed([*heater.tanks, *(r.outlet for r in heater.ladder if r.role is Role.EXPANSION_RELIEF)])
            return f"{_stopped(facts, heater)}; {taken} takes up the expansion"
        case Verdict.ON_DEMAND:
            return (
                f"{_stopped(facts, heater)}, but it fires only while water is drawn and no pump drives water through it"
            )
        case Verdict.TRAPPED:
            return f"{_stopped(facts, heater)}, and nothing keeps the pressure at or below the limit"
        case Verdict.SEALED:
            return f"{_stopped(facts, heater)}, and no relief valve can open: DANGER"


def _stopped(facts: Facts, heater: HeaterFacts) -> str:
    stops = heater.stopped_by
    if not stops.sets:
        return "no pipe leads back to the main or to open air"
    sets = " or ".join(" and ".join(where(facts.system, name) for name in names) for names in stops.sets)
    more = f" or any of {stops.more}{'+' if stops.most else ''} other sets" if stops.more else ""
    return f"its way back is stopped by {sets}{more}"


def _growth(facts: Facts, heater: HeaterFacts) -> str:
    cold = "cold" if heater.cold_k is None else show(heater.cold_k, TEMPERATURE, facts.units)
    volume, hot = show(heater.heated_volume_m3, VOLUME, facts.units), show(heater.hot_k, TEMPERATURE, facts.units)
    text = f"{volume} heated from {cold} to {hot} grows by {show(heater.expansion_m3, VOLUME, facts.units)}"
    if heater.shares_with:
        together = show(heater.shared_expansion_m3, VOLUME, facts.units)
        text += f"; together with {listed(heater.shares_with)} by {together}"
    return text


def _advice(facts: Facts, heater: HeaterFacts) -> Iterator[tuple[str, str]]:
    if heater.short_m3 and heater.tanks:
        short = show(heater.short_m3, VOLUME, facts.units)
        yield "short", f"{listed(heater.tanks)} cannot take {short} of it at the limit"
    need = heater.need
    if need is not None:
        yield "needs", _needed(facts, heater)
    closings = heater.closes_if_shut
    if closings.sets:
        yield "closes if shut", " or ".join(" and ".join(names) for names in closings.sets)
    if not closings.complete:
        yield "", "more pairs of valves may close it; there were too many to search"


def _needed(facts: Facts, heater: HeaterFacts) -> str:
    need = heater.need
    if need is None or need.tank_m3 is None:
        return "no tank can do this: the static pressure stands at the limit; lower the static pressure first"
    volume, charge = show(need.tank_m3, VOLUME, facts.units), _pressure(need.precharge_pa, facts.units)
    if need.nominal_m3 is None:
        size = f"expansion tanks of at least {volume} together, more than the largest nominal size,"
    else:
        size = f"an expansion tank of at least {volume}, so {show(need.nominal_m3, VOLUME, facts.units)},"
    return f"{size} charged to {charge}, connected at {need.at}"


def _findings(found: Iterable[Finding], paint: Paint) -> Iterator[str]:
    found = list(found)
    if not found:
        yield "No findings."
        return
    yield "Findings:"
    for one in found:
        severity = paint(one.severity.value, one.severity.value)
        place = f", line {one.line}" if one.line else ""
        yield f"  {severity}: {one.name}{place}"
        for text in (one.text, one.advice, _clause(one)):
            yield from _hung("    ", text)


def _clause(one: Finding) -> str:
    return f"[{one.clause}]" if one.verified else f"[{one.clause}; from memory: check the edition in force]"


def _hung(label: str, text: str) -> list[str]:
    """Text wrapped behind its label, following lines under the text."""
    indent = " " * min(len(label), 16)
    return textwrap.wrap(text, WIDTH, initial_indent=label, subsequent_indent=indent, break_on_hyphens=False)


def _pressure(pressure_pa: float | None, units: Units) -> str:
    return "not held" if pressure_pa is None else show(pressure_pa, PRESSURE, units)


PAINTS = {
    Verdict.OPEN.value: "green",
    Verdict.CONTROLLED.value: "cyan",
    Verdict.ON_DEMAND.value: "blue",
    Verdict.TRAPPED.value: "red",
    Verdict.SEALED.value: "bright_red",
    Severity.ERROR.value: "red",
    Severity.WARNING.value: "yellow",
    Severity.NOTE.value: "blue",
}
"""Colours of the words that carry a meaning, by their names in ANSI."""
