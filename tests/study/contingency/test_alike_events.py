"""Events told together: the same of parts of one kind, or each its own, and nothing else."""

from plumbnet.layout.edits import change_of
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.study.contingency.alike_events import SweptEvent, alike_events
from plumbnet.study.contingency.contingencies import Contingency
from plumbnet.study.contingency.outcome import Error, Outcome, Turn


def event(part: str, outcome: Outcome, words: str = "shut") -> SweptEvent:
    return SweptEvent(Contingency(part, words, change_of("close", part)), outcome)


def traps(*heaters: str) -> Outcome:
    return Outcome(tuple(Turn(heater, Verdict.OPEN, Verdict.TRAPPED) for heater in heaters))


def told(*events: SweptEvent, **kinds: str) -> list[list[str]]:
    by_name = {one.event.part: "valve" for one in events} | kinds
    groups = alike_events(events, by_name)
    assert sorted(one.event.title for group in groups for one in group.events) == sorted(
        one.event.title for one in events
    )
    return [list(group.parts) for group in groups]


def test_the_same_of_parts_of_one_kind_is_told_together() -> None:
    assert told(event("a", traps("h")), event("b", traps("h"))) == [["a", "b"]]
    assert told(event("a", traps("h")), event("b", traps("h")), b="balancing_valve") == [["a"], ["b"]]
    assert told(event("a", traps("h")), event("b", traps("g"))) == [["a"], ["b"]]
    assert told(event("a", traps("h")), event("b", traps("h"), "left ajar")) == [["a"], ["b"]]


def test_each_its_own_is_told_together() -> None:
    houses = [event(f"houses/{n}/stop", traps(f"houses/{n}/heater")) for n in (1, 2, 3)]
    assert told(*houses) == [[f"houses/{n}/stop" for n in (1, 2, 3)]]
    assert told(*(event(f"stop-{n}", Outcome(errors=(Error("stuck", f"stop-{n}"),))) for n in (1, 2))) == [
        ["stop-1", "stop-2"]
    ]
    assert told(
        event("stop", Outcome(errors=(Error("x", "stop"),))), event("tap", Outcome(errors=(Error("x", "tap"),)))
    ) == [["stop", "tap"]]


def test_what_is_anothers_is_not_taken_for_its_own() -> None:
    assert told(event("h/1/stop", traps("h/1/heater")), event("h/2/stop", traps("h/1/heater"))) == [
        ["h/1/stop", "h/2/stop"]
    ], "the same heater"
    assert told(event("h/1/stop", traps("h/1/heater")), event("h/2/stop", traps("h/3/heater"))) == [
        ["h/1/stop"],
        ["h/2/stop"],
    ]
    assert told(event("h1-stop", traps("h1-heater")), event("h2-stop", traps("h12-heater"))) == [
        ["h1-stop"],
        ["h2-stop"],
    ]
    assert told(event("a/1/x", traps("a/z")), event("a/2/x", traps("a/2/z"))) == [["a/1/x"], ["a/2/x"]]


def test_both_plants_that_turn_all_heaters_are_told_together() -> None:
    every = traps("plants/a/heater", "plants/b/heater")
    events = [event(f"plants/{plant}/rooms/{n}/stop", every) for plant in "ab" for n in (1, 2)]
    assert told(*events) == [[one.event.part for one in events]]


def test_refusals_are_told_together_where_they_read_alike() -> None:
    assert told(event("a", Outcome(refused="too hot")), event("b", Outcome(refused="too hot"))) == [["a", "b"]]
    assert told(event("a", Outcome(refused="a: hot")), event("b", Outcome(refused="b: hot"))) == [["a"], ["b"]]
