"""No remedy of a random layout makes another heater, tap or requirement worse, nor touches what keeps people safe."""

from collections.abc import Iterator

import pytest
from conftest import times
from hypothesis import Phase, assume, given, settings

import plumbnet
from oracles.random_buildings import FAMILIES
from oracles.random_layouts import Layout
from plumbnet.analysis.report import Report
from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.model.change import Change
from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.rules.answering import answers_of
from plumbnet.rules.facts.verdict_words import TROUBLED, Verdict
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import AnswerWord
from plumbnet.study.contingency.event_sweep import sweep
from plumbnet.study.remedies.remedy import Remedy
from plumbnet.study.remedies.remedy_search import remedies

Subject = tuple[str, str]


def reported(layout: Layout) -> Report:
    try:
        return plumbnet.check(layout.system)
    except LayoutError:
        assume(condition=False)
        raise


def answers(report: Report, word: AnswerWord) -> set[Subject]:
    """Requirements and the parts that lead them, of which that is the answer."""
    found = answers_of(report.facts, report.rules)
    return {(one.rule.name, one.parts[0]) for one in found if one.parts and one.word is word}


def errors(report: Report) -> set[Subject]:
    return {(one.name, one.parts[0]) for one in report.findings if one.severity is Severity.ERROR}


def verdicts(report: Report) -> dict[str, Verdict]:
    return {heater.name: heater.verdict for heater in report.heaters}


def worse(before: Report, after: Report) -> Iterator[str]:
    """Heaters that are in trouble and were not, or are sealed and were not."""
    was, now = verdicts(before), verdicts(after)
    for name in was:
        if (now[name] in TROUBLED and was[name] not in TROUBLED) or (now[name] is Verdict.SEALED is not was[name]):
            yield name


def touched_safety(report: Report, change: Change) -> bool:
    """Whether a change takes a relief valve away or puts it out of use, shuts a valve, or lets something fail."""
    if change.remove is not None:
        part = report.system.parts[change.remove]
        return any(part.safety_sets()) or part.cushion() is not None
    plugged = change.set is not None and change.set.values.get("state") in {"plugged", "waterlogged", "shut"}
    gone = change.set is not None and change.set.values.get("relief", 1) is None
    return plugged or gone or change.close is not None or change.fail is not None


def made(before: Report, remedy: Remedy) -> Report:
    return plumbnet.check(with_changes(before.system, remedy.changes), rules=before.rules)


def assert_harmless(before: Report, after: Report, remedy: Remedy) -> None:
    assert list(worse(before, after)) == [], remedy.title
    troubled = {name for name, verdict in verdicts(before).items() if verdict in TROUBLED}
    assert {one for one in errors(after) - errors(before) if one[1] not in troubled} == set(), remedy.title


def breaks(before: Report, after: Report) -> bool:
    """Whether a requirement that was met is broken."""
    return bool(answers(before, AnswerWord.MET) & answers(after, AnswerWord.BROKEN))


def assert_safe(before: Report, remedy: Remedy) -> None:
    """A tank is taken out only to be hung elsewhere."""
    touched = [one for one in remedy.changes if touched_safety(before, one)]
    assert len(touched) <= sum(one.add is not None for one in remedy.changes), remedy.title
    assert all(before.system.parts[one.remove or ""].cushion() is not None for one in touched), remedy.title


@pytest.mark.parametrize("family", FAMILIES)
def test_no_remedy_makes_anything_worse_or_takes_a_relief_valve_away_or_shuts_a_tank_off(family: str) -> None:
    """No heater, no error; and of requirements none that was met, however mild."""

    @settings(times(0.3), phases=(Phase.generate,))
    @given(FAMILIES[family].layouts)
    def harmless(layout: Layout) -> None:
        before = reported(layout)
        for own in remedies(before).values():
            for remedy in own:
                after = made(before, remedy)
                assert_harmless(before, after, remedy)
                assert_safe(before, remedy)
                assert not breaks(before, after), remedy.title

    harmless()


@pytest.mark.parametrize("family", ["anything closed", "closed houses", "heating"])
def test_no_relief_valve_plugged_makes_anything_better(family: str) -> None:
    """The sweep tells of it, as of what may happen; nobody can take it for advice."""

    @settings(times(0.1), phases=(Phase.generate,))
    @given(FAMILIES[family].layouts)
    def never_better(layout: Layout) -> None:
        before = reported(layout)
        for swept in sweep(before).events:
            part = before.system.parts[swept.event.part]
            if any(part.safety_sets()) and swept.event.change.fail is not None:
                assert all(turn.is_worse for turn in swept.outcome.turns), swept.event.title

    never_better()
