"""A state of a layout to what stands in it, as the page shows it: plain data, a fault never taken for a cure."""

from collections.abc import Mapping, Sequence
from typing import TypedDict

from plumbnet.analysis import Report
from plumbnet.analysis.observations import heater_waters
from plumbnet.boards.one_sentence import board_sentence, safety_rung
from plumbnet.layout.model import End
from plumbnet.layout.units import PRESSURE, show
from plumbnet.rules.facts import FROM_BEST_TO_WORST, HeaterFacts, Verdict
from plumbnet.study.touching import Touch, TouchStates, code_of


class HeaterShown(TypedDict):
    """The answer for one heater: pressures in the units of the report, `zone` bits as a hexadecimal number."""

    name: str
    verdict: str
    by_fault: bool
    sentence: str
    cold: float | None
    limit: float | None
    end: float | None
    needle: str
    ladder: list[tuple[str, float | None, str]]
    way: list[str]
    stops: list[str]
    zone: str


class StateAnswer(TypedDict):
    """What stands in a state; `picture` is the code of what was put into pipes, by which its picture is asked for."""

    heaters: list[HeaterShown]
    symbols: dict[str, str]
    stops: list[str]
    faults: list[str]
    cut_off: list[str]
    picture: str


def board_answer(states: TouchStates, touches: Sequence[Touch]) -> StateAnswer:
    """What stands in a state: an answer for each heater, how parts are drawn, which stop the water, what is a fault.

    Raises UnknownTouch; ChangeError and LayoutError where the state cannot be made or nothing be computed of it.
    """
    report = states.report_in(touches)
    better = _better_by_a_fault(states, touches, report)
    zones = heater_waters(report.network, report.heaters)
    stops = {name for heater in report.heaters for names in heater.stopped_by.sets for name in names}
    return {
        "heaters": [_heater(report, heater, zones, is_by_fault=heater.name in better) for heater in report.heaters],
        "symbols": _symbols(states.drawn, report),
        "stops": sorted(stops),
        "faults": sorted({states.touchables[one.at].name for one in touches if states.is_fault(one)}),
        "cut_off": [tank.name for tank in report.facts.tanks if tank.stopped_by],
        "picture": code_of(states.put_in(touches)),
    }


def _better_by_a_fault(states: TouchStates, touches: Sequence[Touch], report: Report) -> frozenset[str]:
    """The heaters that would be worse off if nothing had failed: that is no cure."""
    sound = states.sound(touches)
    if len(sound) == len(touches):
        return frozenset()
    rank = {verdict: place for place, verdict in enumerate(FROM_BEST_TO_WORST)}
    before = states.verdicts_in(sound)
    return frozenset(
        one.name for one in report.heaters if one.name in before and rank[one.verdict] < rank[before[one.name]]
    )


def _heater(
    report: Report, heater: HeaterFacts, zones: Mapping[str, frozenset[End]], *, is_by_fault: bool
) -> HeaterShown:
    top, word = _needle(heater)
    return {
        "name": heater.name,
        "verdict": heater.verdict.value,
        "by_fault": is_by_fault,
        "sentence": board_sentence(report, heater),
        "cold": _number(report, heater.static_pa),
        "limit": _number(report, heater.limit_pa),
        "end": _number(report, top),
        "needle": word,
        "ladder": [(rung.outlet, _number(report, rung.opens_pa), rung.role.value) for rung in heater.ladder],
        "way": list(heater.way_out.way) if heater.verdict is Verdict.OPEN and heater.way_out is not None else [],
        "stops": sorted({name for names in heater.stopped_by.sets for name in names}),
        "zone": f"{zone_bits(report, zones[heater.name]):x}",
    }


def _needle(heater: HeaterFacts) -> tuple[float | None, str]:
    """Where the pressure comes to when all is hot, and the word beside it; None where something breaks first."""
    relief = safety_rung(heater)
    match heater.verdict:
        case Verdict.OPEN:
            opens_pa = 0.0 if heater.way_out is None else heater.way_out.opens_pa
            return max(heater.static_pa or 0.0, opens_pa), "stays"
        case Verdict.ON_DEMAND:
            return heater.static_pa, "stays"
        case Verdict.SEALED:
            return None, "nothing opens"
        case _:
            if heater.settled_pa is not None:
                return heater.settled_pa, "all hot"
            return (None, "nothing opens") if relief is None else (relief.opens_pa, "relief")


def _number(report: Report, pressure_pa: float | None) -> float | None:
    """A pressure as the sentence has it, without its unit."""
    return None if pressure_pa is None else float(show(pressure_pa, PRESSURE, report.facts.units).split(" ")[0])


def zone_bits(report: Report, ports: frozenset[End]) -> int:
    """The pipes of a zone, a bit each, and behind them the parts that lie in it whole, as the drawing shades it."""
    system, bits = report.system, 0
    joined: dict[str, list[bool]] = {name: [] for name in system.parts}
    for number, pipe in enumerate(system.pipes):
        bits |= (pipe.start in ports) << number
        for end in pipe.ends:
            joined[end.part].append(end in ports)
    for number, name in enumerate(system.parts, start=len(system.pipes)):
        bits |= (bool(joined[name]) and all(joined[name])) << number
    return bits


def _symbols(drawn: Report, report: Report) -> dict[str, str]:
    """The symbols by which parts are drawn now, of those that are drawn otherwise than in the layout as drawn."""
    before = {name: part.drawn_as() for name, part in drawn.system.parts.items()}
    now = {name: part.drawn_as() for name, part in report.system.parts.items()}
    return {name: symbol for name, symbol in now.items() if name in before and before[name] != symbol}
