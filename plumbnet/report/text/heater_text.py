"""A report as a tradesperson reads it: heater by heater the verdict first, then why, then what to do."""

import textwrap
from collections.abc import Iterator, Sequence

from plumbnet.analysis import Report
from plumbnet.layout.model import Role
from plumbnet.layout.units import TEMPERATURE, VOLUME, show
from plumbnet.layout.yaml import visible
from plumbnet.report.output import record_lines
from plumbnet.report.prose import (
    Paint,
    driven_round,
    left_as_it_is,
    limit_in_words,
    long_in_short,
    plain,
    pressure_in_words,
    settled_in_words,
    spoken,
    table,
    tempered,
    where,
)
from plumbnet.report.text.findings_text import LABEL, WIDTH, findings_lines, hung
from plumbnet.rules import NO_WAY, agreeing, is_same_water, listed, needed, not_held, stops_in_words
from plumbnet.rules.facts import ROUNDING_PA, Facts, HeaterFacts, RungFacts, Verdict

_MANY = 3
"""From this many heaters on a table comes first."""
CAUTION = (
    "Local code and a licensed person decide; this report supports their judgement and does not replace it. "
    "A relief valve is a safety device: never plug, cap or remove one."
)


def report_text(report: Report, *, paint: Paint = plain, more: Sequence[str] = ()) -> str:
    """The whole report, with `more` lines behind the findings; ends with a line break."""
    facts = report.facts
    lines = list(_heading(report))
    if len(report.heaters) >= _MANY:
        lines += ["", *table(facts, paint)]
    for heater in report.heaters:
        lines += ["", *_heater(facts, heater, paint)]
    if not report.heaters:
        lines += ["", "Nothing in this layout heats water."]
    lines += ["", *findings_lines(report, paint), *(["", *more] if more else [])]
    if facts.assumed:
        lines += ["", "Assumed where the file says nothing:"]
        lines += [line for words, parts in facts.assumed.items() for line in hung(f"  {words}: ", listed(parts))]
    lines += ["", *record_lines(report), "", *textwrap.wrap(CAUTION, WIDTH)]
    return "\n".join(lines) + "\n"


def _heading(report: Report) -> Iterator[str]:
    title = f": {visible(report.system.title)}" if report.system.title else ""
    yield f"{visible(report.system.record.file)}{title}"
    yield f"rules: {report.rules.in_full}"


def _heater(facts: Facts, heater: HeaterFacts, paint: Paint) -> Iterator[str]:
    kind = spoken(heater.kind).partition(" ")[2]
    place = f"{kind}, line {heater.line}" if heater.line else kind
    yield f"{heater.name}: {paint(heater.verdict.value.upper(), heater.verdict.value)}  ({place})"
    for label, text in story(facts, heater):
        yield from hung(f"  {label:<{LABEL}}", long_in_short(text, facts.system.parts))


def story(facts: Facts, heater: HeaterFacts) -> Iterator[tuple[str, str]]:
    """What is to be said of a heater, as labels and sentences: why first, then what to do."""
    yield "because", _reason(facts, heater)
    yield "pressure", _pressures(facts, heater)
    yield "expansion", _growth(facts, heater)
    yield "opens first", _openings(facts, heater)
    if settles(heater):
        beyond = ", past the limit" if heater.is_past_limit else ""
        yield "settles", f"at {settled_in_words(facts, heater)}{beyond}"
    if heater.locked is not None:
        yield "left as it is", left_as_it_is(facts, heater.locked)
    if heater.loops:
        yield "loops", "; ".join(map(driven_round, heater.loops))
    yield from _advice(facts, heater)


def _pressures(facts: Facts, heater: HeaterFacts) -> str:
    limit = limit_in_words(facts, heater)
    if heater.static_pa is None:
        return f"no supply reaches it; limit {limit}"
    kept = ", kept from before a valve was shut" if heater.is_cut_off else ""
    highest = ", the street at its highest" if heater.is_at_highest else ""
    return f"static {pressure_in_words(heater.static_pa, facts.units)}{highest}{kept}; limit {limit}"


def _openings(facts: Facts, heater: HeaterFacts) -> str:
    """The ladder: what opens first, what would open after it, and what of it only past the limit."""
    if not heater.ladder:
        return "nothing, at any pressure"
    bound_pa = heater.bound_pa
    below = [_rung(facts, rung) for rung in heater.ladder if rung.opens_pa <= bound_pa]
    beyond = [_rung(facts, rung) for rung in heater.ladder if rung.opens_pa > bound_pa]
    first = ", then ".join(below) or "nothing below the limit"
    return f"{first}; past it {', then '.join(beyond)}" if beyond else first


def _rung(facts: Facts, rung: RungFacts) -> str:
    return f"{rung.outlet} at {pressure_in_words(rung.opens_pa, facts.units)}"


def settles(heater: HeaterFacts) -> bool:
    """Whether it is worth saying where the pressure comes to rest: of an open heater, only where it climbs."""
    if heater.settled_pa is None:
        return False
    if heater.verdict is Verdict.OPEN:
        return heater.settled_pa > (heater.static_pa or 0.0) + ROUNDING_PA
    return heater.verdict in {Verdict.CONTROLLED, Verdict.TRAPPED}


def _reason(facts: Facts, heater: HeaterFacts) -> str:
    match heater.verdict:
        case Verdict.OPEN:
            way = next(rung for rung in heater.ladder if rung.role.is_way_out)
            return f"its water can go back to {way.outlet}: {' > '.join(way.way)}"
        case Verdict.CONTROLLED:
            return f"{_stopped(facts, heater)}; {_control(heater)}"
        case Verdict.ON_DEMAND:
            return f"{_stopped(facts, heater)}, but it fires only while water runs, and then the open tap lets it out"
        case Verdict.TRAPPED:
            late = _late(facts, heater)
            return f"{_stopped(facts, heater)}, and {not_held(facts, heater)}{late}"
        case Verdict.SEALED:
            return f"{_stopped(facts, heater)}, and no relief valve can open: DANGER, heated, something breaks"


def _control(heater: HeaterFacts) -> str:
    """What takes the growth of a controlled heater: tanks, and the expansion relief valves that do open."""
    held_pa = (heater.settled_pa or 0.0) + ROUNDING_PA
    spills = [r.outlet for r in heater.ladder if r.role is Role.EXPANSION_RELIEF and r.opens_pa <= held_pa]
    if not heater.tanks:
        if not spills:
            return "nothing need take its water, which does not grow"
        return f"{agreeing(spills, 'lets')} the growth off to a drain below the limit"
    rest = f" and {agreeing(spills, 'lets')} the rest off to a drain" if spills else ""
    return f"{agreeing(heater.tanks, 'takes')} up the growth{rest} below the limit"


def _late(facts: Facts, heater: HeaterFacts) -> str:
    """A way out that opens, but only past the limit."""
    way = heater.way_out
    return (
        ""
        if way is None
        else f"; the way to {way.outlet} opens only above {pressure_in_words(way.opens_pa, facts.units)}"
    )


def _stopped(facts: Facts, heater: HeaterFacts) -> str:
    stops = heater.stopped_by
    if not stops.sets:
        return NO_WAY
    placed = stops_in_words([[where(facts.system, name) for name in names] for names in stops.sets])
    more = f", or any of {stops.more}{'+' if stops.most else ''} other sets" if stops.more else ""
    return f"its way back is stopped by {placed}{more}"


def _growth(facts: Facts, heater: HeaterFacts) -> str:
    cold = "cold" if heater.cold_k is None else show(heater.cold_k, TEMPERATURE, facts.units)
    volume, hot = show(heater.heated_volume_m3, VOLUME, facts.units), show(heater.hot_k, TEMPERATURE, facts.units)
    grown = show(heater.expansion_m3, VOLUME, facts.units)
    text = f"{volume} heated from {cold} to {hot}{tempered(heater, facts.units)} grows by {grown}"
    if heater.shares_with:
        together = show(heater.shared_expansion_m3, VOLUME, facts.units)
        text += (
            f"; {agreeing(heater.shares_with, 'warms')} the same water"
            if is_same_water(heater)
            else f"; together with {listed(heater.shares_with)} by {together}"
        )
    return text


def _advice(facts: Facts, heater: HeaterFacts) -> Iterator[tuple[str, str]]:
    if heater.short_m3 and heater.tanks:
        short = show(heater.short_m3, VOLUME, facts.units)
        yield "short", f"{short} of the growth finds no room in {listed(heater.tanks)} below the limit"
    if heater.need is not None:
        yield "needs", needed(facts, heater)
    closings = heater.closes_if_shut
    if closings.sets:
        yield "closes if shut", stops_in_words(closings.sets)
    if not closings.complete:
        yield "", "more pairs of valves may close it; there were too many to search"
