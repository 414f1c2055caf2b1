"""Pairs of events; tests/oracles/test_sweep.py holds them against analyses of the whole."""

from conftest import system

import plumbnet
from plumbnet.study.contingency.contingencies import happenings
from plumbnet.study.contingency.event_pairs import Pairs, pairs_of
from plumbnet.study.contingency.worlds import Worlds

RUNS = """street -> tee -> valve -> tee2 -> heater -> tap.hot
          tee2 -> tank
          tee -> valve2 -> tee3 -> heater2 -> tap2.hot
          tee -> tap3.cold
          tee -> tap4.cold"""
RELIEF = "relief: {pressure: 150 psi}"


def pairs(runs: str, *, most_work: int = 10**9, **parts: str) -> Pairs:
    worlds = Worlds(plumbnet.check(system(runs, **parts)))
    found = happenings(worlds.report.system, worlds.report.profile)
    return pairs_of(worlds, [worlds.single(event) for event in found], most_work=most_work)


def titles(found: Pairs) -> list[str]:
    return [pair.title for pair in found.found]


def test_two_valves_side_by_side_close_what_neither_closes_alone() -> None:
    runs = """street -> tee -> valve -> tee2 -> heater -> tap.hot
              tee -> valve2 -> tee2"""
    found = pairs(runs, heater=RELIEF)
    assert "valve: shut, and valve2: shut" in titles(found)
    assert found.is_complete
    assert found.tried == found.possible


def test_valve_and_tank_together_leave_a_heater_trapped() -> None:
    found = pairs(RUNS, heater=RELIEF, heater2=RELIEF)
    by_title = {pair.title: pair.outcome for pair in found.found}
    told = by_title["valve: shut, and tank: waterlogged"]
    assert [(turn.heater, turn.before.value, turn.after.value) for turn in told.turns] == [
        ("heater", "open", "trapped")
    ]


def test_events_in_districts_apart_change_nothing_together() -> None:
    found = pairs(RUNS, heater=RELIEF, heater2=RELIEF)
    assert not [title for title in titles(found) if "valve: " in title and "valve2: " in title]


def test_error_that_rests_on_facts_of_both_is_found_though_they_are_apart() -> None:
    runs = """street -> tee -> valve -> heater -> tap.hot
              tee -> valve2 -> tank
              tee -> heater2 -> tap2.hot
              tee -> tap3.cold"""
    found = {pair.title: pair.outcome for pair in pairs(runs, heater=RELIEF, heater2=RELIEF).found}
    (error,) = found["valve: shut, and valve2: shut"].errors
    assert (error.name, error.part) == ("tank-cut-off", "tank")


def test_two_events_of_one_part_are_no_pair() -> None:
    found = pairs(RUNS, heater=RELIEF, heater2=RELIEF)
    assert not [title for title in titles(found) if title.count("tank: ") > 1 or title.count("heater: ") > 1]


def test_search_that_is_too_much_work_ends_and_says_where() -> None:
    found = pairs(RUNS, most_work=200, heater=RELIEF, heater2=RELIEF)
    assert 0 < found.tried < found.possible
    assert not found.is_complete


def test_the_worst_pair_comes_first() -> None:
    found = pairs(RUNS, heater=RELIEF, heater2=RELIEF)
    assert found.found[0].outcome.turns[0].after.value == "sealed"
    assert [pair.outcome.rank for pair in found.found] == sorted(pair.outcome.rank for pair in found.found)
