"""Every event of the sweep can be supposed by its name, and is the change that the sweep makes."""

from pathlib import Path

import pytest
from conftest import layout

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.model.change import Change
from plumbnet.study.contingency.contingencies import event_name, happenings
from plumbnet.study.contingency.event_names import UnknownEvent, with_events

SYSTEMS = sorted((Path(__file__).parents[3] / "systems").glob("*.yaml"))
RUNS = "street -> meter -> valve -> tee -> heater -> tap.hot\ntee -> tank"
SCENARIO = "scenarios: {hung: {change: [{remove: tank}]}}\n"


def house() -> Report:
    text = layout(RUNS, heater="relief: {pressure: 150 psi}")
    return plumbnet.check(plumbnet.read_bytes(f"{text}\n{SCENARIO}".encode(), file="house.yaml"))


def fail(part: str, how: str = "") -> Change:
    return Change.model_validate({"fail": {"part": part, "how": how} if how else part})


@pytest.mark.parametrize("path", SYSTEMS[::5], ids=lambda path: path.stem)
def test_every_event_of_a_showcase_is_found_by_its_name_and_by_its_words(path: Path) -> None:
    report = plumbnet.check(plumbnet.read(path))
    for event in happenings(report.system, report.rules, report.facts.circuit_of):
        part, _, name = event.failure.partition(":")
        for how in (name, event.words):
            (made,) = with_events(report, [fail(part, how)])
            assert with_changes(report.system, [made]) == with_changes(report.system, [event.change])


def test_names_of_the_events_of_a_part_are_all_different() -> None:
    for path in SYSTEMS:
        report = plumbnet.check(plumbnet.read(path))
        names = [one.failure for one in happenings(report.system, report.rules, report.facts.circuit_of)]
        assert len(names) == len(set(names))
        assert all(name == name.lower() for name in map(event_name, names))


def test_event_of_a_part_that_a_change_before_it_brought_in_is_found() -> None:
    tank = {"part": "new", "kind": "expansion_tank", "volume": 5, "precharge": 60, "run": "tee -> new"}
    made = with_events(house(), [Change.model_validate({"add": tank}), fail("new", "charge_lost")])
    assert made[1] == Change.model_validate({"set": {"part": "new", "precharge": "0 psi"}})


def test_failure_of_the_kind_and_what_cannot_be_made_stay_as_they_are() -> None:
    for change in (fail("tank"), fail("tank", "waterlogged"), fail("nobody", "shut"), Change(close="nobody")):
        assert with_events(house(), [change]) == (change,)
    assert with_events(house(), [fail("tank", "charge_lost")], scenario="hung") == (fail("tank", "charge_lost"),)


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (
            fail("tank", "charg_lost"),
            'tank, an expansion_tank, cannot fail as "charg_lost": did you mean "charge_lost"?',
        ),
        (fail("tank", "x"), 'tank, an expansion_tank, cannot fail as "x"; write how: waterlogged, charge_lost'),
        (fail("valve"), "valve, a valve, fails in no way of its own; write how: shut"),
    ],
)
def test_event_that_there_is_not_is_told_with_those_there_are(change: Change, words: str) -> None:
    with pytest.raises(UnknownEvent) as caught:
        with_events(house(), [Change(open="valve"), change])
    assert str(caught.value) == words
    assert caught.value.index == 1
