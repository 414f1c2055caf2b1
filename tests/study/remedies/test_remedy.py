"""Remedies as they are handed on: in the order of what they ask of the installer."""

from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.study.remedies.candidate import Effort
from plumbnet.study.remedies.remedy import Remedy


def remedy(effort: Effort, title: str) -> Remedy:
    return Remedy((), Verdict.OPEN, "heater", title, effort, None, ("heater",))


def test_less_work_comes_first_and_of_equal_work_the_first_by_its_title() -> None:
    turned, hung, moved = remedy(Effort.OPEN_VALVE, "b"), remedy(Effort.ADD, "a"), remedy(Effort.OPEN_VALVE, "c")
    assert sorted([moved, hung, turned], key=lambda one: one.rank) == [turned, moved, hung]
