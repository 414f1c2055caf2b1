"""A sweep against the analysis of every changed layout as a whole, event by event and pair by pair."""

from collections.abc import Iterator
from itertools import combinations

from conftest import times
from hypothesis import assume, given
from hypothesis import strategies as st

import plumbnet
from oracles.joined_layouts import joined_layouts
from oracles.random_closed import closed_layouts
from oracles.random_layouts import Layout, layouts
from plumbnet.analysis.report import Report
from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.edits.edit_draft import ChangeError
from plumbnet.layout.model.system import System
from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.rules.finding import Severity
from plumbnet.rules.rule_profile import Profile, profile, profile_names
from plumbnet.study.contingency.contingencies import Contingency, happenings
from plumbnet.study.contingency.event_pairs import pairs_of
from plumbnet.study.contingency.event_sweep import sweep
from plumbnet.study.contingency.outcome import Outcome
from plumbnet.study.contingency.worlds import Worlds


def graded(name: str) -> Profile:
    """A profile that takes every finding for an error."""
    rules = profile(name)
    severe = {key: ruling.model_copy(update={"severity": "error"}) for key, ruling in rules.findings.items()}
    return rules.model_copy(update={"findings": severe})


REQUIREMENTS = st.one_of(
    st.just("general"), st.sampled_from(profile_names()), st.sampled_from(profile_names()).map(graded)
)
MOST_EVENTS = 12
"""Events whose pairs are tried; of more, every other one."""

Told = tuple[dict[str, Verdict], set[tuple[str, str]]]
"""Verdicts by heater, and errors by name and leading part."""


def checked(layout: Layout, rules: str | Profile) -> Report:
    try:
        return plumbnet.check(layout.system, rules=rules)
    except LayoutError:
        assume(condition=False)
        raise


def told(system: System, report: Report) -> Told | None:
    """The whole analysed; None where nothing can be computed."""
    try:
        after = plumbnet.check(system, rules=report.profile)
    except LayoutError:
        return None
    errors = {(one.name, one.parts[0]) for one in after.findings if one.severity is Severity.ERROR}
    return {heater.name: heater.verdict for heater in after.heaters}, errors


def of_outcome(outcome: Outcome) -> object:
    turns = {turn.heater: (turn.before, turn.after) for turn in outcome.turns}
    return None if outcome.refused else (turns, {(error.name, error.part) for error in outcome.errors})


def changed(before: Told, *others: Told | None) -> object:
    """What the last changes against the first, and, of a pair, against those of its two events."""
    *alone, after = others
    if after is None:
        return None
    known = [before, *(one for one in alone if one is not None)]
    turns = {
        heater: (verdict, after[0][heater])
        for heater, verdict in before[0].items()
        if after[0][heater] not in {one[0][heater] for one in known}
    }
    return turns, after[1].difference(*(one[1] for one in known))


@times(0.3)
@given(st.one_of(joined_layouts(), joined_layouts(), closed_layouts(), layouts()), REQUIREMENTS)
def test_sweep_says_what_analysing_the_whole_says_of_every_event(layout: Layout, rules: str | Profile) -> None:
    report = checked(layout, rules)
    before = told(report.system, report)
    assert before is not None
    for one in sweep(report).events:
        after = told(with_changes(report.system, [one.event.change]), report)
        assert of_outcome(one.outcome) == changed(before, after), one.event.title


@times(0.06)
@given(st.one_of(joined_layouts(2), layouts(most=4)), REQUIREMENTS)
def test_pairs_are_those_that_analysing_the_whole_finds(layout: Layout, rules: str | Profile) -> None:
    report = checked(layout, rules)
    events = happenings(report.system, report.profile)
    events = events[:: 1 + len(events) // MOST_EVENTS]
    worlds = Worlds(report)
    found = pairs_of(worlds, [worlds.single(event) for event in events], most_work=10**9)
    assert found.is_complete
    assert {pair.title: of_outcome(pair.outcome) for pair in found.found} == dict(_by_hand(report, events))


def _by_hand(report: Report, events: tuple[Contingency, ...]) -> Iterator[tuple[str, object]]:
    before = told(report.system, report)
    alone = {one.title: told(with_changes(report.system, [one.change]), report) for one in events}
    assert before is not None
    for first, second in combinations(events, 2):
        singles = alone[first.title], alone[second.title]
        if first.part == second.part or None in singles:
            continue
        try:
            both = with_changes(report.system, [first.change, second.change])
        except ChangeError:
            continue
        outcome = changed(before, *singles, told(both, report))
        if outcome != ({}, set()):
            yield f"{first.title}, and {second.title}", outcome
