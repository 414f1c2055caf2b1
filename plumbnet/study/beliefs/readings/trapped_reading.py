"""What stands behind a set of heaters that was taken for those that are trapped."""

from itertools import combinations

from plumbnet.rules import listed
from plumbnet.rules.facts import HeaterFacts, Verdict
from plumbnet.study.beliefs.asked_heater import AskedHeater
from plumbnet.study.beliefs.hint import BlankHints, Hint
from plumbnet.study.beliefs.reading import option_hints, reading
from plumbnet.study.beliefs.verdict_beliefs import likely_verdict, verdict_belief
from plumbnet.study.exercise import Exercise


@reading("trapped-heaters")
def trapped_hints(exercise: Exercise) -> tuple[BlankHints, ...]:
    """An option lists heaters; what is told is the first heater that was put on the other side."""
    heaters = exercise.report.heaters
    names = [heater.name for heater in heaters]
    meant = {listed(some): frozenset(some) for count in range(1, len(names) + 1) for some in combinations(names, count)}

    def read(option: str) -> Hint:
        return _misplaced(exercise, meant.get(option, frozenset()))

    return (option_hints(exercise, read),)


def _misplaced(exercise: Exercise, named: frozenset[str]) -> Hint:
    """Of the first heater that is named and not trapped, or else of the first that is trapped and not named."""
    report = exercise.report
    wrongly = [one for one in report.heaters if one.name in named and one.verdict is not Verdict.TRAPPED]
    left_out = [one for one in report.heaters if one.name not in named and one.verdict is Verdict.TRAPPED]
    if wrongly:
        return _named(AskedHeater(report, wrongly[0]), report.heaters, named)
    asked = AskedHeater(report, left_out[0])
    return verdict_belief(asked, likely_verdict(asked))


def _named(asked: AskedHeater, heaters: tuple[HeaterFacts, ...], named: frozenset[str]) -> Hint:
    """Of a heater that was taken for trapped; where it is the largest and named alone, its size misled."""
    largest = max(heaters, key=lambda one: one.heated_volume_m3)
    others = [one.heated_volume_m3 for one in heaters if one is not largest]
    stands_out = largest.name == asked.heater.name and largest.heated_volume_m3 > max(others)
    first = asked.heater.way_out or asked.control
    if stands_out and named == {largest.name} and first is not None:
        return asked.says("bigger-heater-higher-pressure", outlet=first.outlet)
    return verdict_belief(asked, Verdict.TRAPPED)
