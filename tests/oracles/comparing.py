"""A report held against the definitions, subject by subject: what differs, and how often each thing occurred."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field

import pytest

from oracles.held_water import HeldWater, TooMany
from oracles.sizing_by_definition import assert_fits_a_heater, assert_is_charged
from oracles.trying import TRIED, with_tank
from oracles.verdicts_by_definition import WHOLE_PA, Place, answer, loops
from oracles.warm_water import AIR_PA
from plumbnet.analysis.report import Report
from plumbnet.rules.facts.heater_answer import HeaterFacts

CLOSE_PA = 1e-2  # the formula halves the range of pressures until a hundredth of this is left
CLOSE_LEVEL = 2e-6  # of a pressure that a dozen portions of heat come to, or a ceiling sought by halving
CLOSE = 1e-9  # relative: properties from another library, sums in another order
BURST_PA = 1e8  # a thousand bar
MOST_SETS = 16


@dataclass
class Tally:
    """What was compared, by subject, and what occurred, by word."""

    compared: Counter[str] = field(default_factory=Counter)
    seen: Counter[str] = field(default_factory=Counter)

    def count(self, subject: str, *words: str) -> None:
        """One more comparison of a subject, with what it showed."""
        self.compared[subject] += 1
        self.seen.update(words)


def compare(report: Report, tally: Tally) -> None:
    """Hold every heater of a report against the definitions; AssertionError where they differ."""
    water = HeldWater(report.system)
    _compare_loops(water, report, tally)
    for facts in report.heaters:
        _compare_heater(water, facts, tally)


def _compare_loops(water: HeldWater, report: Report, tally: Tally) -> None:
    """Where the program says that a loop would have taken too long to try, it may have more in it, and no less."""
    is_tried = not report.network.circulation.whole
    for facts in report.heaters:
        told, found = {frozenset(parts) for parts in facts.loops}, loops(water, facts.name)
        assert told == found if is_tried else all(any(some <= whole for whole in told) for some in found)
        tally.count("loops", *(["loop"] if facts.loops else []), *([] if is_tried else ["loops taken whole"]))


def _compare_heater(water: HeldWater, facts: HeaterFacts, tally: Tally) -> None:
    try:
        place = answer(water, facts.name)
        is_judged_by_bound = place.verdict != str(facts.verdict)
        if is_judged_by_bound:
            assert _turns_on_the_bound(place, facts), (place.verdict, facts.verdict)
            tally.count("bound")
            return
        _compare_settled(place, facts, tally)
        _compare_broken(place, facts, tally)
    except TooMany:
        tally.seen["more heated zones than are played"] += 1
        return
    assert place.end.part == facts.stands_at
    tally.count("verdict", str(facts.verdict))
    _compare_growth(place, facts)
    _compare_ladder(place, facts, tally)
    _compare_stops(place, facts, tally)
    _compare_need(place, facts, tally)


def _turns_on_the_bound(place: Place, facts: HeaterFacts) -> bool:
    """Whether only what no history is known to come to breaks the limits of a heater that is held as far as played."""
    return place.verdict == "controlled" and all(
        one.reached_pa <= one.limit_pa + WHOLE_PA < one.highest_pa for one in facts.broken
    )


def _head_pa(place: Place, facts: HeaterFacts) -> float:
    return place.water.head_pa(place.water.inlet(facts.name))


def _compare_growth(place: Place, facts: HeaterFacts) -> None:
    water, head_pa = place.water, _head_pa(place, facts)
    volume_m3 = sum(piece.volume_m3 for piece in water.pieces(facts.name))
    assert facts.heated_volume_m3 == pytest.approx(volume_m3, rel=CLOSE)
    assert facts.expansion_m3 == pytest.approx(volume_m3 * water.warmth(facts.name).growth, rel=CLOSE)
    assert facts.limit_pa == pytest.approx(place.limit_pa - head_pa, abs=CLOSE_PA)
    static_pa = float("-inf") if facts.static_pa is None else facts.static_pa
    assert static_pa == pytest.approx(place.static_pa - head_pa, abs=CLOSE_PA)


def _compare_settled(place: Place, facts: HeaterFacts, tally: Tally) -> None:
    """What was played lies between what is said to be reached and what none passes; those are nearly always one."""
    settled_pa, head_pa = place.settled_pa, _head_pa(place, facts)
    played_pa = _told_pa(None if settled_pa is None else settled_pa - head_pa)
    most_pa, least_pa = _told_pa(facts.settled_pa), _told_pa(facts.settled_least_pa)
    if most_pa > played_pa and _is_pair(
        facts
    ):  # what none passes lifts a relief valve, and what is reached is not told
        least_pa = min(least_pa, played_pa)
    assert min(most_pa, least_pa) == pytest.approx(min(played_pa, most_pa, least_pa), rel=CLOSE_LEVEL, abs=CLOSE_PA)
    assert most_pa == pytest.approx(max(played_pa, most_pa), rel=CLOSE_LEVEL, abs=CLOSE_PA)
    rises = settled_pa is not None and settled_pa > place.water.start_pa[place.zone] + CLOSE_PA
    pair = most_pa > least_pa + WHOLE_PA
    order = len(facts.history) > 1
    told = {"settles above its start": rises, "a pair": pair, "in an order": order}
    tally.count("settled", *(words for words, is_so in told.items() if is_so))


def _is_pair(facts: HeaterFacts) -> bool:
    """Whether of a broken place it is not known how high it comes."""
    return any(one.highest_pa > one.reached_pa + WHOLE_PA for one in facts.broken)


def _compare_broken(place: Place, facts: HeaterFacts, tally: Tally) -> None:
    """By how much each broken place comes above its limit, with the limits of its height left out."""
    if str(facts.verdict) not in {"trapped", "sealed"}:
        assert not facts.broken
        return
    water = place.water
    above = sorted(_told_pa(water.level_pa(zone) - place.place_limit_pa(zone)) for zone in place.broken)
    told = sorted(_told_pa(one.highest_pa - one.limit_pa) for one in facts.broken)
    if _is_pair(facts):
        tally.seen["a broken place by a pair"] += 1
        assert len(above) <= len(told)
    else:
        assert told == pytest.approx(above, rel=1e-5, abs=1.0)
    where = "broken beyond alone" if place.zone not in place.broken else "broken here and beyond"
    tally.count("broken", *([where] if place.broken - {place.zone} else []))


def _told_pa(settled_pa: float | None) -> float:
    """A pressure to compare: in a tank that is all but full it may be anything, and beyond `BURST_PA` it is all one."""
    return float("inf") if settled_pa is None or settled_pa > BURST_PA else settled_pa


def _compare_ladder(place: Place, facts: HeaterFacts, tally: Tally) -> None:
    """Outlets of its own zone, and all others up to the first way out; of one pressure those before it or not."""
    head_pa = _head_pa(place, facts)
    sites = {site.end: site.part for site in place.water.sites}
    own = {site.end for site in place.water.sites_in(place.zone)}
    below = {end for end, opens_pa in place.opens_pa.items() if opens_pa < place.way_out_pa - CLOSE_PA}
    at_most = {end for end, opens_pa in place.opens_pa.items() if opens_pa <= place.way_out_pa + CLOSE_PA} | own
    listed = [(rung.outlet, rung.opens_pa + head_pa) for rung in facts.ladder]
    expected = [(sites[end], place.opens_pa[end]) for end in at_most]
    if len(expected) <= MOST_SETS:
        assert Counter(sites[end] for end in own | below) <= Counter(name for name, _ in listed)
    for name, opens_pa in listed:
        assert any(name == other and opens_pa == pytest.approx(pa, abs=CLOSE_PA) for other, pa in expected), name
    heights = [(rung.opens_pa, not rung.role.is_way_out, rung.outlet) for rung in facts.ladder]
    assert heights == sorted(heights)
    tally.count("ladder", *(f"rung {rung.role}" for rung in facts.ladder))


def _compare_stops(place: Place, facts: HeaterFacts, tally: Tally) -> None:
    if not place.water.has_one_datum:
        tally.seen["a gate past a pump that counts as height"] += 1
        return
    expected = place.stopped_by()
    found = {frozenset(devices) for devices in facts.stopped_by.sets}
    several = {name for name, part in place.water.system.parts.items() if len(list(part.passages())) > 1}
    plain = {devices for devices in expected if not devices & several}
    if plain == expected:
        assert found <= expected
        assert len(found) + facts.stopped_by.more == len(expected)
        tally.count("stops", *(f"stop {reason}" for devices in expected for reason in _reasons(place, devices)))
    else:  # a device of several gates counts twice where water meets it twice in a row, and is then in no least set
        assert facts.stopped_by.more or plain <= found
        tally.seen["a stop of several gates"] += 1
    if facts.closes_if_shut.complete:
        closings = place.closings()
        found_closings = list(facts.closes_if_shut.sets)
        assert set(found_closings) <= set(closings)
        assert len(found_closings) == min(MOST_SETS, len(closings))
        tally.count("closings", *(f"closes {len(valves)}" for valves in found_closings))


def _reasons(place: Place, devices: frozenset[str]) -> Iterator[str]:
    """The kinds of a set of devices, shut valves and bypasses told apart."""
    for name in devices:
        part = place.water.system.parts[name]
        yield part.drawn_as()


def _compare_need(place: Place, facts: HeaterFacts, tally: Tally) -> None:
    """The heater is among those served, and the tank stands in the cold pipe of one of them or of a broken place."""
    if facts.need is None:
        assert str(facts.verdict) not in {"trapped", "sealed"}
        assert facts.short_m3 == 0.0
        return
    assert facts.name in facts.need.serves
    assert_fits_a_heater(place, facts.need.at)
    assert_is_charged(place, facts.need)
    _compare_short(place, facts, tally)
    tally.count("need", "no tank" if facts.need.tank_m3 is None else "a tank")


def _compare_short(place: Place, facts: HeaterFacts, tally: Tally) -> None:
    """What is short is what the least tank takes in the worst history, once it is there."""
    assert facts.need is not None
    if facts.need.tank_m3 is None:
        return
    water = HeldWater(with_tank(place.water.system, facts.need, facts.need.tank_m3))
    zone = next(water.zone_of[site.end] for site in water.sites if site.part == TRIED)
    tank = next(gas for gas in water.company.vessels[zone].tanks if gas.shell_m3 == pytest.approx(facts.need.tank_m3))
    try:
        level_pa = water.level_pa(zone)
    except TooMany:
        return
    taken_m3 = tank.water_m3(level_pa + AIR_PA) - tank.water_m3(water.start_pa[zone] + AIR_PA)
    tally.count("short", *["short as played"] * (facts.short_m3 == pytest.approx(taken_m3, rel=1e-4, abs=1e-9)))
    assert taken_m3 <= facts.short_m3 * (1 + 1e-4) + 1e-9, (taken_m3, facts.short_m3)
