"""A warm-up as text for people: both ends of its bracket, rigid walls and typical ones."""

import math
import textwrap
from bisect import bisect_right
from collections.abc import Iterator, Sequence

from plumbnet.analysis.warmup import Fired, HeaterWarmup
from plumbnet.layout.units import FLOW, FRACTION, TEMPERATURE, TIME, VOLUME, show
from plumbnet.layout.yaml import visible
from plumbnet.physics.warmup import Moment, WarmupEvent, WarmupHappening
from plumbnet.report.output import record_lines
from plumbnet.report.text import CAUTION, WIDTH
from plumbnet.rules import listed

ROWS = 12
"""The table of the text has about so many rows."""
_AT_ONCE_S = 0.5
_SAME_S = 1e-6
_ENDED = "ended"
_BRACKET = (
    "The truth lies between rigid walls, which yield to nothing, and typical ones, which are no maker's data: "
    "both are told."
)
_NO_BRACKET = "Rigid walls and typical ones come to the same here."
_ROUND = (1.0, 2.0, 5.0, 10.0)


def warmup_text(warming: HeaterWarmup) -> str:
    """The course as a short table, what happens, and the sums; ends with a line break."""
    record, title = warming.report.system.record, warming.report.system.title
    lines = [f"{visible(record.file)}: {visible(title)}" if title else visible(record.file)]
    if warming.report.scenario is not None:
        lines.append(f"Scenario: {visible(warming.report.scenario)}")
    lines += [*_wrapped(_setting(warming)), "", *_table(warming), "", *_happenings(warming)]
    lines += ["", *(line for sentence in _sums(warming) for line in _wrapped(sentence))]
    lines += ["", *record_lines(warming.report), "", *_wrapped(CAUTION)]
    return "\n".join(lines) + "\n"


def _happenings(warming: HeaterWarmup) -> Iterator[str]:
    """What happens, line by line; at each end of the bracket where they differ."""
    if not warming.walls_matter:
        yield from _told_lines(warming)
        return
    for each in warming.bracket:
        yield f"With {each.walls} walls:"
        yield from _told_lines(each)


def _told_lines(warming: HeaterWarmup) -> Iterator[str]:
    for event in warmup_told(warming):
        minutes = time_in_words(warming, event.time_s)
        yield from textwrap.wrap(f"{minutes:>9}  {in_words(warming, event)}", WIDTH, subsequent_indent=" " * 11)


def time_in_words(warming: HeaterWarmup, time_s: float) -> str:
    """A time in the units of the report; what happens within half a second of the start happens at the start."""
    return show(time_s if time_s >= _AT_ONCE_S else 0.0, TIME, warming.report.facts.units)


def _wrapped(text: str) -> list[str]:
    return textwrap.wrap(text, WIDTH, break_on_hyphens=False)


def _setting(warming: HeaterWarmup) -> str:
    share = show(warming.efficiency, FRACTION, warming.report.facts.units)
    names = listed([one.name for one in warming.fired])
    return (
        f"Warm-up of {names} from cold, every fixture shut. {share} of the input reaches the water, as is usual for "
        "gas; electric heat warms it sooner. No heat is lost and the walls take none, so that times are the shortest "
        f"there can be. {_BRACKET if warming.walls_matter else _NO_BRACKET}"
    )


def _table(warming: HeaterWarmup) -> Iterator[str]:
    """The chosen heater's course, at round times; at both ends of the bracket where they differ."""
    both = warming.walls_matter
    rows = [("time", "temperature", *_ends("pressure", both=both), "in tanks", *_ends("let out", both=both))]
    rows += [_row(warming, warming.run.moments[index]) for index in _instants(warming.run.times_s)]
    widths = [max(len(row[column]) for row in rows) for column in range(len(rows[0]))]
    for row in rows:
        yield "  ".join(cell.rjust(width) for cell, width in zip(row, widths, strict=True))


def _ends(words: str, *, both: bool) -> tuple[str, ...]:
    """The heads of the columns of what may differ."""
    return (f"{words}, rigid", f"{words}, typical") if both else (words,)


def _row(warming: HeaterWarmup, moment: Moment) -> tuple[str, ...]:
    units = warming.report.facts.units
    ends: list[tuple[HeaterWarmup, Moment | None]] = [(warming, moment)]
    if warming.walls_matter:
        ends = [(warming.rigid, _last_before(warming.rigid, moment.time_s)), *ends]
    return (
        show(moment.time_s, TIME, units),
        show(moment.temperatures_k[warming.fired[0].body], TEMPERATURE, units),
        *(_pressure(end, then) for end, then in ends),
        show(math.fsum(moment.taken_m3.values()), VOLUME, units),
        *(_let_out(end, then) for end, then in ends),
    )


def _pressure(warming: HeaterWarmup, moment: Moment | None) -> str:
    if moment is None:
        return _ENDED
    one = warming.fired[0]
    return warming.report.facts.pressure(warming.gauge_pa(one.name, moment.pressures_abs_pa[one.zone]))


def _let_out(warming: HeaterWarmup, moment: Moment | None) -> str:
    return _ENDED if moment is None else warming.report.facts.volume(math.fsum(moment.lost_m3.values()))


def _last_before(warming: HeaterWarmup, time_s: float) -> Moment | None:
    """The last moment up to a time; None where the warm-up has ended before it for what ends every warm-up."""
    moments = warming.run.moments
    number = bisect_right(warming.run.times_s, time_s + _SAME_S)
    if number == len(moments) and warming.run.is_cut_short and moments[-1].time_s < time_s - _SAME_S:
        return None
    return moments[number - 1]


def _instants(times_s: Sequence[float]) -> list[int]:
    """Indices of moments about a round time apart, the first and the last among them."""
    apart = _round_up(times_s[-1] / ROWS)
    chosen, following = [], 0.0
    for index, time_s in enumerate(times_s[:-1]):
        if time_s >= following:
            chosen.append(index)
            following = (math.floor(time_s / apart) + 1.0) * apart
    return [*chosen, len(times_s) - 1]


def _round_up(span_s: float) -> float:
    if span_s <= 0.0:
        return 1.0
    decade = 10.0 ** math.floor(math.log10(span_s / 60.0)) * 60.0
    return next(decade * share for share in _ROUND if decade * share >= span_s * (1.0 - 1e-9))


def warmup_told(warming: HeaterWarmup) -> Iterator[WarmupEvent]:
    """Events worth a line: not that a burner goes out where it has just been said that all is hot."""
    hot = {(event.time_s, event.name) for event in warming.run.events if event.what is WarmupHappening.SETPOINT_REACHED}
    for event in warming.run.events:
        if event.what is not WarmupHappening.BURNER_OFF or (event.time_s, event.name) not in hot:
            yield event


def in_words(warming: HeaterWarmup, event: WarmupEvent) -> str:
    """What happens, with its pressure or temperature in the units of the report."""
    facts, name = warming.report.facts, event.name
    pressure = facts.pressure(warming.gauge_pa(name, event.pressure_abs_pa))
    hot = "hot" if event.temperature_k is None else show(event.temperature_k, TEMPERATURE, facts.units)
    return {
        WarmupHappening.BURNER_ON: f"the burner of {name} lights",
        WarmupHappening.BURNER_OFF: f"the burner of {name} goes out",
        WarmupHappening.SETPOINT_REACHED: f"{name} reaches its setpoint, {hot}, and its burner goes out",
        WarmupHappening.MIXED_REACHED: f"the water behind {name} is at {hot}, and the valve lets it come no hotter",
        WarmupHappening.TANK_OPENS: f"{name} takes its first water, at {pressure}",
        WarmupHappening.TANK_FULL: f"{name} is full, at {pressure}: its membrane lets in no more",
        WarmupHappening.OUTLET_OPENS: f"{name} opens at {pressure} and lets out what must go",
        WarmupHappening.OUTLET_RUNS: f"{name} runs from the start: {pressure} stands at it, above "
        f"{_bound(warming, name)}; only growth is counted as let out",
        WarmupHappening.OUTLET_RESEATS: f"{name} closes again at {pressure}, once nothing more grows",
        WarmupHappening.LIMIT_PASSED: f"the pressure at {name} passes the limit of {pressure}",
        WarmupHappening.ELEMENT_OPENS: f"{name} is so hot, {hot}, that the temperature element of its relief valve "
        "opens; the warm-up ends here",
        WarmupHappening.BOILS: f"the water of {name} boils at {hot} and {pressure}; the warm-up ends here",
        WarmupHappening.BREAKS: f"{name} stands at {pressure}, the pressure to which a heater is tested: "
        "DANGER, expect it to break; the warm-up ends here",
    }[event.what]


def _bound(warming: HeaterWarmup, name: str) -> str:
    """What an outlet opens above: its set, or the rim of an open pipe."""
    outlet = next(iter(warming.report.system.parts[name].outlets()), None)
    if outlet is None or outlet.role.is_way_out:
        return "its rim"
    return f"its set of {warming.report.facts.pressure(outlet.opens_pa)}"


def _sums(warming: HeaterWarmup) -> Iterator[str]:
    facts, (rigid, typical) = warming.report.facts, warming.bracket
    for here, there in zip(rigid.fired, typical.fired, strict=True):
        hot = _either(_hot(rigid, here), _hot(typical, there))
        highest = _either(*(facts.pressure(max(end.pressures_pa(here))) for end in warming.bracket))
        yield f"{here.name}: {hot}; highest pressure {highest}."
    for name in warming.outlets_of_both:
        out = _either(*(facts.volume(end.run.books.lost_m3.get(name, 0.0)) for end in warming.bracket))
        yield f"Let out at this heat-up by {name}: {out}."
        yield from _flow(warming, name)
    if not warming.outlets_of_both:
        yield "No water is let out."
    if max(rigid.run.returned_m3, typical.run.returned_m3) > 0.0:
        back = _either(*(facts.volume(end.run.returned_m3) for end in warming.bracket))
        yield f"Gone back to the supply: {back}."


def _either(rigid: str, typical: str) -> str:
    """What both ends of the bracket come to, said once where it reads the same."""
    return typical if rigid == typical else f"{rigid} with rigid walls, {typical} with typical ones"


def _hot(warming: HeaterWarmup, one: Fired) -> str:
    hot_s = warming.hot_after_s(one)
    return "not hot yet" if hot_s is None else f"hot after {show(hot_s, TIME, warming.report.facts.units)}"


def _flow(warming: HeaterWarmup, outlet: str) -> Iterator[str]:
    """The greatest flow of an outlet beside the published one, each with what it assumes."""
    facts, share = warming.report.facts, show(warming.efficiency, FRACTION, warming.report.facts.units)
    flow = _either(*(show(end.discharge_m3_s(outlet), FLOW, facts.units) for end in warming.bracket))
    yield f"Greatest flow from {outlet}: {flow}; from {share} of the input, the water as warm as it then is."
    heat = facts.power(math.fsum(one.input_w for one in warming.fired))
    yield (
        f"Thermal-expansion flow of API 521 and API 520, from memory, q = av Q/(500 G c): "
        f"{show(warming.published_m3_s(outlet), FLOW, facts.units)}. It assumes that all {heat} of the input reach the "
        "water, that it stands at its setpoint, and that nothing yields."
    )
