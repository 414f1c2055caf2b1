"""Answers with numbers that have strayed."""

from conftest import PSI, system

import plumbnet
from plumbnet.study.margins.margin_trials import MarginTrials, changed
from plumbnet.study.margins.uncertain_numbers import uncertain_numbers

RELIEVED = "relief: {pressure: 150 psi, temperature: 210 degF}"
REPORT = plumbnet.check(
    system("street -> tee -> heater1 -> tap1.hot\ntee -> heater2 -> tap2.hot", heater1=RELIEVED, heater2=RELIEVED)
)
STREET = uncertain_numbers(REPORT)[0]


def test_answer_is_that_of_the_layout_with_the_change_made() -> None:
    trials = MarginTrials(REPORT)
    assert trials.after({STREET: STREET.told}) == trials.before
    high = trials.after({STREET: 90 * PSI})
    assert high is not None
    assert {one.name for one in high.errors} == {"static-above-limit"}


def test_each_trial_is_made_once() -> None:
    trials = MarginTrials(REPORT)
    assert trials.after({STREET: 90 * PSI}) is trials.after({STREET: 90 * PSI})
    assert trials.checks == 1


def test_value_that_no_part_can_have_is_no_answer_and_costs_no_check() -> None:
    trials = MarginTrials(REPORT)
    assert trials.after({STREET: -1.0e5}) is None
    assert not trials.can_be(STREET, -1.0e5)
    assert trials.can_be(STREET, 1.0e5)
    assert trials.checks == 0


def test_of_one_heater_its_verdict_and_its_errors_count() -> None:
    trials = MarginTrials(REPORT, "heater1")
    high = trials.after({STREET: 90 * PSI})
    assert high is not None
    assert list(high.verdicts) == ["heater1"]
    assert high.errors == frozenset()


def test_change_is_written_with_the_digits_that_it_takes() -> None:
    change = changed(STREET, 123_456.789, "metric")
    assert change.set is not None
    assert (change.set.part, change.set.values) == ("street", {"pressure": "123.456789 kPa"})
