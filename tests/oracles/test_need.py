"""The tank that is said to be needed, put into a real copy of the layout: it holds, and one hundredth less does not."""

from collections import Counter

import pytest
from conftest import times
from hypothesis import given, note

import plumbnet
from oracles.random_buildings import FAMILIES
from oracles.random_layouts import Layout
from oracles.trying import with_tank
from plumbnet.analysis.report import Report
from plumbnet.layout.model.system import System
from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.rules.facts.tank_facts import Need
from plumbnet.rules.facts.verdict_words import Verdict

CLOSED = {Verdict.TRAPPED, Verdict.SEALED}
LARGEST = 1e4
"""A tank so many times all growth; what that does not hold, none does."""


def not_held(system: System, need: Need, volume_m3: float) -> set[str]:
    """Of the heaters that a tank is said to serve those that it leaves trapped or sealed."""
    report = plumbnet.check(with_tank(system, need, volume_m3))
    return {one.name for one in report.heaters if one.name in need.serves and one.verdict in CLOSED}


def wanted(report: Report) -> list[Need]:
    """Each tank that is needed, once."""
    needs = [one.need for one in report.heaters if one.need is not None]
    return list({(need.at, need.tank_m3, need.serves): need for need in needs}.values())


@pytest.mark.parametrize("family", FAMILIES)
def test_tank_that_is_needed_holds_all_it_serves_and_no_smaller_one_does(family: str) -> None:
    tried = Counter[str]()

    @times(FAMILIES[family].of_thousand / 800)
    @given(FAMILIES[family].layouts)
    def holds(layout: Layout) -> None:
        note(layout.text)
        system = layout.system
        try:
            report = plumbnet.check(system)
        except LayoutError:
            return
        for need in wanted(report):
            if need.tank_m3 is None:
                tried["none"] += 1
                growth_m3 = sum(one.expansion_m3 for one in report.heaters)
                assert not_held(system, need, LARGEST * growth_m3)
                continue
            tried["tank"] += 1
            assert not not_held(system, need, need.tank_m3 * (1.0 + 1e-9))
            if need.nominal_m3 is not None:
                assert not not_held(system, need, need.nominal_m3)
            if need.is_tight:
                tried["tight"] += 1
                assert not_held(system, need, 0.99 * need.tank_m3)

    holds()
    print(family, dict(tried))  # noqa: T201  shown by pytest -rP in the long run
    assert tried["tight"] or family == "anything"
