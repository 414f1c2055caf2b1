"""The way of the water in words, as told at the board: where it pushes, what lets it pass, what stops it."""

import textwrap
from collections.abc import Iterator
from operator import itemgetter

from plumbnet.analysis.water_walk import WaterWalk
from plumbnet.layout.model import Role
from plumbnet.layout.units import PRESSURE, TEMPERATURE, VOLUME, show
from plumbnet.report.prose import driven_round, settled_in_words, spoken, tempered
from plumbnet.report.text import CAUTION, WIDTH
from plumbnet.report.trace.limit_sentence import limit_sentence
from plumbnet.report.trace.walk import walked
from plumbnet.rules import needed, not_held, stops_in_words
from plumbnet.rules.facts import ROUNDING_PA, Facts, HeaterFacts, RungFacts, Verdict


def trace_text(facts: Facts, walk: WaterWalk) -> str:
    """The walk from one heater, its ladder, and the verdict; ends with a line break."""
    heater = walk.heater
    lines = [*_wrapped(_opening(facts, walk)), "", *walked(facts, walk)]
    lines += ["", *_ladder(facts, heater), "", *_wrapped(verdict_sentences(facts, heater)), ""]
    return "\n".join([*lines, *textwrap.wrap(CAUTION, WIDTH)]) + "\n"


def _wrapped(sentences: Iterator[str]) -> Iterator[str]:
    for sentence in sentences:
        yield from textwrap.wrap(sentence, WIDTH, break_on_hyphens=False)


def _opening(facts: Facts, walk: WaterWalk) -> Iterator[str]:
    heater = walk.heater
    volume, hot = show(heater.heated_volume_m3, VOLUME, facts.units), show(heater.hot_k, TEMPERATURE, facts.units)
    cold = "cold" if heater.cold_k is None else show(heater.cold_k, TEMPERATURE, facts.units)
    grown = show(heater.expansion_m3, VOLUME, facts.units)
    if heater.verdict is Verdict.ON_DEMAND:
        yield f"{heater.name} is {spoken(heater.kind)}: it fires only while water runs through it."
        yield (
            f"With every fixture shut it stays cold. Were its {volume} heated from {cold} to {hot} even so, the water "
            f"would grow by {grown}: follow where that could go."
        )
    else:
        yield f"{heater.name} is {spoken(heater.kind)}. Every fixture is shut, and it heats up."
        mixed = tempered(heater, facts.units)
        yield (
            f"It warms {volume} from {cold} to {hot}{mixed}; that water grows by {grown}, and the growth must go "
            "somewhere."
        )
    for loop in heater.loops:
        yield f"With every fixture shut, {driven_round(loop)}."
    if heater.static_pa is not None:
        yield cold_sentence(facts, walk)


def cold_sentence(facts: Facts, walk: WaterWalk) -> str:
    """At what a heater stands cold, and its limit; empty where no water reaches it."""
    heater = walk.heater
    if heater.static_pa is None:
        return ""
    static = show(heater.static_pa, PRESSURE, facts.units)
    highest = ", the street at its highest" if heater.is_at_highest else ""
    return f"Cold, it stands at {static}{highest}. {limit_sentence(facts, walk)}"


def _ladder(facts: Facts, heater: HeaterFacts) -> Iterator[str]:
    if not heater.ladder:
        yield "Nothing it can reach opens, at any pressure."
        return
    yield "As the pressure climbs, these open in turn (read at the heater):"
    lines = [(rung.opens_pa, _rung(heater, rung)) for rung in heater.ladder]
    if heater.static_pa is not None:
        lines.append((heater.limit_pa + ROUNDING_PA, "- the limit -"))
    for pressure_pa, words in sorted(lines, key=itemgetter(0)):
        yield f"  {facts.pressure(pressure_pa):>10}  {words}"


def _rung(heater: HeaterFacts, rung: RungFacts) -> str:
    beyond = "  past the limit" if rung.opens_pa > heater.bound_pa else ""
    return f"{rung.outlet}, {rung.role.value}{beyond}"


def verdict_sentences(facts: Facts, heater: HeaterFacts) -> Iterator[str]:
    """What stops the water of a heater, what it is therefore, what it needs, and what would close it."""
    if heater.stopped_by.sets:
        yield f"What stops it on its way out: {stops_in_words(heater.stopped_by.sets)}."
    yield _outcome(facts, heater)
    if heater.need is not None:
        yield f"What it needs: {needed(facts, heater)}."
    if heater.closes_if_shut.sets:
        yield f"Shut {stops_in_words(heater.closes_if_shut.sets)}, and it would have nowhere to go."


def _outcome(facts: Facts, heater: HeaterFacts) -> str:
    name = heater.name
    match heater.verdict:
        case Verdict.OPEN:
            way = next(rung for rung in heater.ladder if rung.role.is_way_out)
            return f"So {name} is OPEN: {' > '.join(way.way)}."
        case Verdict.CONTROLLED:
            hot = "" if heater.settled_pa is None else f" It comes to {settled_in_words(facts, heater)}."
            return f"So {name} is closed but CONTROLLED: the growth is taken up below the limit.{hot}"
        case Verdict.ON_DEMAND:
            return f"So {name} is closed, but ON-DEMAND: it fires only while water runs, out of an open tap."
        case Verdict.TRAPPED:
            return f"So {name} is TRAPPED: {_passed(facts, heater)}.{_lifts(facts, heater)}"
        case Verdict.SEALED:
            return f"So {name} is SEALED: not even a relief valve opens. DANGER: heated, something breaks."


def _passed(facts: Facts, heater: HeaterFacts) -> str:
    if any(place.way for place in heater.broken):
        return not_held(facts, heater)
    return f"nothing holds it at or below {facts.pressure(heater.limit_pa)}"


def _lifts(facts: Facts, heater: HeaterFacts) -> str:
    """The relief valve that stands behind it: its own, where it has one."""
    reliefs = [rung for rung in heater.ladder if rung.role is Role.SAFETY_RELIEF]
    relief = min(reliefs, key=lambda rung: rung.outlet not in heater.relieved_by, default=None)
    if relief is None:
        return ""
    return (
        f" The last to stand behind it is {relief.outlet} at {facts.pressure(relief.opens_pa)}, for emergencies only."
    )
