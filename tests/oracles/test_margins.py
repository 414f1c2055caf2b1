"""Margins of random layouts, sampled densely: all is as before up to what is told, and not just beyond."""

import numpy as np
import pytest
from conftest import times
from hypothesis import Phase, assume, given, settings

import plumbnet
from oracles.random_buildings import FAMILIES
from oracles.random_layouts import Layout
from plumbnet.analysis.report import Report
from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.study.margins.layout_margins import margins_of
from plumbnet.study.margins.margin import Turning, UncertainNumber
from plumbnet.study.margins.margin_trials import MarginTrials
from plumbnet.study.margins.turning_search import step_of

SAMPLES = 8


def reported(layout: Layout) -> Report:
    try:
        return plumbnet.check(layout.system)
    except LayoutError:
        assume(condition=False)
        raise


def assert_holds(trials: MarginTrials, number: UncertainNumber, turning: Turning | None, end: float) -> None:
    """All is as before between what the file says and the turn, or the end of the range, and not at the turn."""
    last = end if turning is None else turning.holds_to
    for value in np.linspace(number.told, last, SAMPLES)[1:]:
        answer = trials.after({number: float(value)})
        assert answer is None or answer == trials.before, (number, value)
    if turning is not None:
        assert trials.after({number: turning.turns_at}) != trials.before
        assert abs(turning.turns_at - turning.holds_to) <= step_of(number) * 1.001


@pytest.mark.parametrize("family", FAMILIES)
def test_nothing_turns_up_to_what_is_told_and_something_does_just_beyond(family: str) -> None:
    """Not shrunk: a layout costs hundreds of analyses, and what failed names number and value."""

    @settings(times(0.02), phases=(Phase.generate,))
    @given(FAMILIES[family].layouts)
    def holds(layout: Layout) -> None:
        report = reported(layout)
        trials = MarginTrials(report)
        for margin in margins_of(report).numbers:
            assert_holds(trials, margin.number, margin.below, margin.number.lowest)
            assert_holds(trials, margin.number, margin.above, margin.number.highest)

    holds()
