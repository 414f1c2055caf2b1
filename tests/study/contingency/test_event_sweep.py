"""Every single event of a layout and what it changes."""

from collections.abc import Iterable

from conftest import system

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.report.studies.sweep_report import sweep_text
from plumbnet.study.contingency.event_sweep import sweep
from plumbnet.study.long_runs.progress import Item

RUNS = """street -> meter -> valve -> tee -> heater -> tap.hot
          tee -> tank"""


def report(**parts: str) -> Report:
    return plumbnet.check(system(RUNS, **{"heater": "relief: {pressure: 150 psi, temperature: 210 degF}", **parts}))


def test_events_stand_worst_first_and_those_that_change_nothing_are_counted() -> None:
    found = sweep(report(meter="check: true"))
    assert [(one.event.title, [turn.after.value for turn in one.outcome.turns]) for one in found.changing] == [
        ("tank: waterlogged", ["trapped"]),
        ("heater: as hot as its relief valve lets it", ["trapped"]),
        ("street: pressure up to the limit", ["trapped"]),
        ("tank: charge lost", ["trapped"]),
        ("heater/relief: plugged", []),
        ("heater: exchanged for a tankless one", ["on-demand"]),
        ("meter: check stuck open", ["open"]),
    ]
    assert found.idle_count == len(found.events) - 7
    assert {one.event.title for one in found.events} - {one.event.title for one in found.changing} == {
        "valve: shut",
        "tap: crossover",
    }


def test_pairs_are_looked_for_only_where_asked_for() -> None:
    assert sweep(report()).pairs is None
    found = sweep(report(), pairs=True).pairs
    assert found is not None
    assert "valve: shut, and tank: waterlogged" in [pair.title for pair in found.found]


def test_search_can_be_watched() -> None:
    counts: list[int] = []
    seen: list[object] = []

    def watch(tried: Iterable[Item], count: int, /) -> Iterable[Item]:
        counts.append(count)
        for one in tried:
            seen.append(one)
            yield one

    found = sweep(report(), pairs=True, watch=watch)
    assert found.pairs is not None
    assert counts == [len(found.events), found.pairs.possible]
    assert len(seen) == sum(counts)


def test_layout_without_heaters_is_swept_too() -> None:
    found = sweep(plumbnet.check(system("street -> valve -> tap.cold")))
    assert [one.outcome.turns for one in found.events] == [()] * len(found.events)


def test_plugged_relief_valve_is_never_a_gain() -> None:
    """A circuit whose tank is too small below the margin of 30 psi: it stays so, and nothing stands behind it."""
    circuit = "street -> loop -> tee -> boiler -> emitter -> pump -> tee\ntee -> tank"
    boiler = "relief: {pressure: 30 psi}"
    given = system(circuit, boiler=boiler, emitter="volume: 20 gal", tank="volume: 2 gal, precharge: 12 psi")
    found = sweep(plumbnet.check(given))
    (plugged,) = (one.outcome for one in found.events if one.event.title == "boiler/relief: plugged")
    assert [(turn.before.value, turn.after.value) for turn in plugged.turns] == [("trapped", "sealed")]


def test_sweep_shows_itself_as_the_command_prints_it() -> None:
    found = sweep(plumbnet.check(system("street -> valve -> cv -> heater -> tap.hot")))
    assert found.to_text() == sweep_text(found)
    assert found.to_text(top=1) == sweep_text(found, top=1) != found.to_text()


def test_layout_is_swept_as_its_report_is() -> None:
    house = system("street -> valve -> heater -> tap.hot")
    assert sweep(house) == sweep(plumbnet.check(house))


def test_heater_put_back_in_service_is_asked_all_that_a_heater_is() -> None:
    """The cold feed of a heater that was cold has not been looked at before: the whole layout is."""
    runs = "street -> tee -> heater -> tap.hot\ntee -> heater2 -> tap2.hot"
    cold = "relief: {pressure: 100 psi}, state: out_of_service"
    report = plumbnet.check(system(runs, heater="relief: {pressure: 100 psi}", heater2=cold), rules="en-806")
    titles = [one.event.title for one in sweep(report).events]
    assert "heater2: put back in service" in titles
