"""A warm-up as text for people, as CSV a row to a moment, and as JSON in SI units."""

import csv
import io
import math
import textwrap
from collections.abc import Iterator, Sequence

from plumbnet.analysis.staging import Fired
from plumbnet.analysis.warming import Warming
from plumbnet.layout.fault import visible
from plumbnet.layout.quantity import FRACTION, PRESSURE, TEMPERATURE, TIME, VOLUME, Dimension, show, to
from plumbnet.physics.course import Event, Happening
from plumbnet.report.json1 import Json, written
from plumbnet.report.record import record_lines
from plumbnet.report.text import CAUTION, WIDTH
from plumbnet.rules.sentences import listed

ROWS = 12
"""The table of the text has about so many rows."""
_AT_ONCE_S = 0.5
_ROUND = (1.0, 2.0, 5.0, 10.0)


def to_text(warming: Warming) -> str:
    """The course as a short table, what happens, and the sums; ends with a line break."""
    record, title = warming.report.system.record, warming.report.system.title
    lines = [f"{visible(record.file)}: {visible(title)}" if title else visible(record.file)]
    if warming.report.scenario is not None:
        lines.append(f"Scenario: {visible(warming.report.scenario)}")
    lines += [*_wrapped(_setting(warming)), "", *_table(warming), ""]
    for event in told(warming):
        minutes = time_in_words(warming, event.time_s)
        lines += textwrap.wrap(f"{minutes:>9}  {in_words(warming, event)}", WIDTH, subsequent_indent=" " * 11)
    lines += ["", *(line for sentence in _sums(warming) for line in _wrapped(sentence))]
    lines += ["", *record_lines(warming.report), "", *_wrapped(CAUTION)]
    return "\n".join(lines) + "\n"


def time_in_words(warming: Warming, time_s: float) -> str:
    """A time in the units of the report; what happens within half a second of the start happens at the start."""
    return show(time_s if time_s >= _AT_ONCE_S else 0.0, TIME, warming.report.facts.units)


def _wrapped(text: str) -> list[str]:
    return textwrap.wrap(text, WIDTH, break_on_hyphens=False)


def _setting(warming: Warming) -> str:
    share = show(warming.efficiency, FRACTION, warming.report.facts.units)
    names = listed([one.name for one in warming.fired])
    return (
        f"Warm-up of {names} from cold, every fixture shut. {share} of the input reaches the water, as is usual for "
        "gas; electric heat warms it sooner. No heat is lost and the walls take none, so that times are the shortest "
        "there can be."
    )


def _table(warming: Warming) -> Iterator[str]:
    """The chosen heater's course, at round times."""
    units, one = warming.report.facts.units, warming.fired[0]
    rows = [("time", "temperature", "pressure", "in tanks", "let out")]
    temperatures, pressures = warming.temperatures_k(one), warming.pressures_pa(one)
    for index in _instants(warming.run.times_s):
        moment = warming.run.moments[index]
        rows.append(
            (
                show(moment.time_s, TIME, units),
                show(temperatures[index], TEMPERATURE, units),
                show(pressures[index], PRESSURE, units),
                show(math.fsum(moment.taken_m3.values()), VOLUME, units),
                show(math.fsum(moment.lost_m3.values()), VOLUME, units),
            )
        )
    widths = [max(len(row[column]) for row in rows) for column in range(len(rows[0]))]
    for row in rows:
        yield "  ".join(cell.rjust(width) for cell, width in zip(row, widths, strict=True))


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


def told(warming: Warming) -> Iterator[Event]:
    """Events worth a line: not that a burner goes out where it has just been said that all is hot."""
    hot = {(event.time_s, event.name) for event in warming.run.events if event.what is Happening.SETPOINT_REACHED}
    for event in warming.run.events:
        if event.what is not Happening.BURNER_OFF or (event.time_s, event.name) not in hot:
            yield event


def in_words(warming: Warming, event: Event) -> str:
    """What happens, with its pressure or temperature in the units of the report."""
    facts, name = warming.report.facts, event.name
    pressure = facts.pressure(warming.gauge_pa(name, event.pressure_abs_pa))
    hot = "hot" if event.temperature_k is None else show(event.temperature_k, TEMPERATURE, facts.units)
    return {
        Happening.BURNER_ON: f"the burner of {name} lights",
        Happening.BURNER_OFF: f"the burner of {name} goes out",
        Happening.SETPOINT_REACHED: f"{name} reaches its setpoint, {hot}, and its burner goes out",
        Happening.TANK_OPENS: f"{name} takes its first water, at {pressure}",
        Happening.TANK_FULL: f"{name} is full, at {pressure}: its membrane lets in no more",
        Happening.OUTLET_OPENS: f"{name} opens at {pressure} and lets out what must go",
        Happening.OUTLET_RESEATS: f"{name} closes again at {pressure}, once nothing more grows",
        Happening.LIMIT_PASSED: f"the pressure at {name} passes the limit of {pressure}",
        Happening.ELEMENT_OPENS: f"{name} is so hot, {hot}, that the temperature element of its relief valve opens; "
        "the warm-up ends here",
        Happening.BOILS: f"the water of {name} boils at {hot} and {pressure}; the warm-up ends here",
        Happening.BREAKS: f"{name} stands at {pressure}, the pressure to which a heater is tested: DANGER, expect it "
        "to break; the warm-up ends here",
    }[event.what]


def _sums(warming: Warming) -> Iterator[str]:
    facts, run = warming.report.facts, warming.run
    for one in warming.fired:
        hot_s = warming.hot_after_s(one)
        hot = "not hot yet" if hot_s is None else f"hot after {show(hot_s, TIME, facts.units)}"
        yield f"{one.name}: {hot}; highest pressure {facts.pressure(max(warming.pressures_pa(one)))}."
    if warming.outlets:
        parts = [f"{facts.volume(run.books.lost_m3[name])} by {name}" for name in warming.outlets]
        yield f"Let out at this heat-up: {listed(parts)}."
    else:
        yield "No water is let out."
    if run.returned_m3 > 0.0:
        yield f"Gone back to the supply: {facts.volume(run.returned_m3)}."


def to_csv(warming: Warming) -> str:
    """A row to a moment, in the units of the report; its head says which."""
    units = warming.report.facts.units

    def unit(dimension: Dimension) -> str:
        return dimension.us if units == "us" else dimension.metric

    def number(value: float, dimension: Dimension) -> str:
        return f"{to(value, unit(dimension), dimension):.8g}"

    head = [f"time ({unit(TIME)})"]
    for one in warming.fired:
        head += [f"{one.name} temperature ({unit(TEMPERATURE)})", f"{one.name} pressure ({unit(PRESSURE)})"]
        head += [f"{one.name} firing"]
    head += [f"{name} water taken ({unit(VOLUME)})" for name in warming.tanks]
    head += [f"{name} let out ({unit(VOLUME)})" for name in warming.outlets]
    text = io.StringIO()
    table = csv.writer(text, lineterminator="\n")
    table.writerow(visible(cell) for cell in head)
    for moment in warming.run.moments:
        row = [number(moment.time_s, TIME)]
        for one in warming.fired:
            row += [number(moment.temperatures_k[one.body], TEMPERATURE)]
            row += [number(warming.gauge_pa(one.name, moment.pressures_abs_pa[one.zone]), PRESSURE)]
            row += [str(int(one.name in moment.firing))]
        row += [number(moment.taken_m3[name], VOLUME) for name in warming.tanks]
        row += [number(moment.lost_m3.get(name, 0.0), VOLUME) for name in warming.outlets]
        table.writerow(row)
    return text.getvalue()


def to_json(warming: Warming) -> str:
    """The course in SI units; pressures gauge, at each heater's, tank's and outlet's own height."""
    run, record = warming.run, warming.report.system.record
    document: Json = {
        "file": record.file,
        "sha256": record.sha256,
        "scenario": warming.report.scenario,
        "efficiency": warming.efficiency,
        "times_s": list(run.times_s),
        "heaters": [_heater(warming, one) for one in warming.fired],
        "tanks": {name: [moment.taken_m3[name] for moment in run.moments] for name in warming.tanks},
        "let_out_m3": {name: [moment.lost_m3.get(name, 0.0) for moment in run.moments] for name in warming.outlets},
        "returned_m3": run.returned_m3,
        "events": [_event(warming, event) for event in run.events],
    }
    return written(document) + "\n"


def _heater(warming: Warming, one: Fired) -> Json:
    pressures = warming.pressures_pa(one)
    return {
        "name": one.name,
        "input_w": one.input_w,
        "setpoint_k": one.hot_k,
        "limit_pa": one.limit_pa,
        "hot_after_s": warming.hot_after_s(one),
        "highest_pa": max(pressures),
        "temperature_k": list(warming.temperatures_k(one)),
        "pressure_pa": list(pressures),
        "firing": [one.name in moment.firing for moment in warming.run.moments],
    }


def _event(warming: Warming, event: Event) -> Json:
    return {
        "time_s": event.time_s,
        "what": event.what.value,
        "name": event.name,
        "pressure_pa": warming.gauge_pa(event.name, event.pressure_abs_pa),
        "temperature_k": event.temperature_k,
    }
