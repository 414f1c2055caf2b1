"""A warm-up for programs: as CSV a row to a moment, and as JSON in SI units; with typical walls and with rigid ones."""

import csv
import io
from collections.abc import Iterator

from plumbnet.analysis.warmup import Fired, HeaterWarmup
from plumbnet.layout.units import PRESSURE, TEMPERATURE, TIME, VOLUME, Dimension, to
from plumbnet.layout.yaml import visible
from plumbnet.physics.warmup import WarmupEvent
from plumbnet.report.formats import Json, in_order


def to_csv(warming: HeaterWarmup) -> str:
    """A row to a moment, in the units of the report; its head says which. Typical walls, and below them rigid ones."""
    text = io.StringIO()
    table = csv.writer(text, lineterminator="\n")
    table.writerow(visible(cell) for cell in _head(warming))
    for each in (warming, warming.rigid):
        table.writerows(_rows(each, warming.outlets_of_both))
    return text.getvalue()


def _head(warming: HeaterWarmup) -> Iterator[str]:
    time, temperature, pressure, volume = (_unit(warming, each) for each in (TIME, TEMPERATURE, PRESSURE, VOLUME))
    yield f"time ({time})"
    for one in warming.fired:
        yield from (f"{one.name} temperature ({temperature})", f"{one.name} pressure ({pressure})")
        yield f"{one.name} firing"
    yield from (f"{name} water taken ({volume})" for name in warming.tanks)
    yield from (f"{name} let out ({volume})" for name in warming.outlets_of_both)
    yield "walls"


def _rows(warming: HeaterWarmup, outlets: tuple[str, ...]) -> Iterator[list[str]]:
    def number(value: float, dimension: Dimension) -> str:
        return f"{to(value, _unit(warming, dimension), dimension):.8g}"

    for moment in warming.run.moments:
        row = [number(moment.time_s, TIME)]
        for one in warming.fired:
            row += [number(moment.temperatures_k[one.body], TEMPERATURE)]
            row += [number(warming.gauge_pa(one.name, moment.pressures_abs_pa[one.zone]), PRESSURE)]
            row += [str(int(one.name in moment.firing))]
        row += [number(moment.taken_m3[name], VOLUME) for name in warming.tanks]
        row += [number(moment.lost_m3.get(name, 0.0), VOLUME) for name in outlets]
        yield [*row, warming.walls]


def _unit(warming: HeaterWarmup, dimension: Dimension) -> str:
    return dimension.unit_name(warming.report.facts.units)


def warmup_json(warming: HeaterWarmup) -> str:
    """The course in SI units; pressures gauge, at each heater's, tank's and outlet's own height.

    It is that with typical walls; under `rigid` stands that with rigid ones, under the same keys.
    """
    record = warming.report.system.record
    document: Json = {
        "file": record.file,
        "sha256": record.sha256,
        "scenario": warming.report.scenario,
        "efficiency": warming.efficiency,
        **_course(warming),
        "discharge": {name: _discharge(warming, name) for name in warming.outlets_of_both},
        "rigid": _course(warming.rigid),
    }
    return in_order(document) + "\n"


def _course(warming: HeaterWarmup) -> Json:
    run = warming.run
    return {
        "walls": warming.walls,
        "times_s": list(run.times_s),
        "heaters": [_heater(warming, one) for one in warming.fired],
        "tanks": {name: [moment.taken_m3[name] for moment in run.moments] for name in warming.tanks},
        "let_out_m3": {name: [moment.lost_m3.get(name, 0.0) for moment in run.moments] for name in warming.outlets},
        "returned_m3": run.returned_m3,
        "events": [_event(warming, event) for event in run.events],
    }


def _discharge(warming: HeaterWarmup, outlet: str) -> Json:
    """The greatest flow at each end of the bracket, and the published one, which is of the whole input."""
    return {
        "rigid_m3_s": warming.rigid.discharge_m3_s(outlet),
        "typical_m3_s": warming.discharge_m3_s(outlet),
        "api_521_m3_s": warming.published_m3_s(outlet),
    }


def _heater(warming: HeaterWarmup, one: Fired) -> Json:
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


def _event(warming: HeaterWarmup, event: WarmupEvent) -> Json:
    return {
        "time_s": event.time_s,
        "what": event.what.value,
        "name": event.name,
        "pressure_pa": warming.gauge_pa(event.name, event.pressure_abs_pa),
        "temperature_k": event.temperature_k,
    }
