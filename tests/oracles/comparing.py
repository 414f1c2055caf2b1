"""A report held against the definitions, subject by subject: what differs, and how often each thing occurred."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field

import pytest

from oracles.held_water import HeldWater
from oracles.pooled_water import NoHeights, TooMany
from oracles.sizing_by_definition import need
from oracles.verdicts_by_definition import Place, answer, loops
from plumbnet.analysis.report import Report
from plumbnet.rules.facts import HeaterFacts

CLOSE_PA = 1e-2  # the formula halves the range of pressures until a hundredth of this is left
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
    for facts in report.heaters:
        assert {frozenset(parts) for parts in facts.loops} == loops(water, facts.name)
        tally.count("loops", *(["loop"] if facts.loops else []))


def _compare_heater(water: HeldWater, facts: HeaterFacts, tally: Tally) -> None:
    try:
        place = answer(water, facts.name)
        assert place.verdict == str(facts.verdict)
        _compare_settled(place, facts, tally)
    except (NoHeights, TooMany) as error:
        tally.seen[type(error).__name__] += 1
        return
    assert place.end.part == facts.stands_at
    tally.count("verdict", str(facts.verdict))
    _compare_growth(place, facts)
    _compare_ladder(place, facts, tally)
    _compare_stops(place, facts, tally)
    _compare_sizing(place, facts, tally)


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
    settled_pa, head_pa = place.settled_pa, _head_pa(place, facts)
    expected_pa = _told_pa(None if settled_pa is None else settled_pa - head_pa)
    assert _told_pa(facts.settled_pa) == pytest.approx(expected_pa, rel=1e-6, abs=CLOSE_PA)
    assert facts.short_m3 == pytest.approx(place.short_m3, rel=1e-6, abs=1e-12)
    rises = settled_pa is not None and settled_pa > place.water.start_pa[place.zone] + CLOSE_PA
    tally.count("settled", *(["settles above its start"] if rises else []), *(["short"] if facts.short_m3 else []))


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


def _compare_sizing(place: Place, facts: HeaterFacts, tally: Tally) -> None:
    if facts.need is None:
        assert str(facts.verdict) not in {"trapped", "sealed"}
        return
    expected = need(place, facts.need.at)
    assert facts.need.tank_m3 == (None if expected.tank_m3 is None else pytest.approx(expected.tank_m3, rel=CLOSE))
    assert facts.need.precharge_pa == pytest.approx(expected.precharge_pa, abs=CLOSE_PA)
    tally.count("sizing", f"sized by {expected.method}")
