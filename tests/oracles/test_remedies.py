"""Remedies of random layouts: each can be made, cures what it says, and reads back from its own YAML."""

import yaml
from conftest import times
from hypothesis import assume, given

import plumbnet
from oracles.random_layouts import Layout, layouts
from plumbnet.analysis.report import Report
from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.model.change import Scenario
from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.study.remedies.fewest_tanks.tank_placement import plans
from plumbnet.study.remedies.remedy_search import remedies
from plumbnet.study.remedies.scenario import as_scenario

TROUBLED = {Verdict.TRAPPED, Verdict.SEALED}


def checked(layout: Layout) -> Report:
    try:
        return plumbnet.check(layout.system)
    except LayoutError:
        assume(condition=False)
        raise


@times(0.6)
@given(layouts())
def test_remedies_of_random_layouts_keep_what_they_promise(layout: Layout) -> None:
    before = checked(layout)
    held = {one.name for one in before.heaters if one.verdict not in TROUBLED}
    for heater, own in remedies(before).items():
        for remedy in own:
            scenario = Scenario.model_validate(yaml.safe_load(as_scenario(remedy, "cure"))["cure"])
            after = plumbnet.check(with_changes(before.system, scenario.change))
            now = {one.name: one.verdict for one in after.heaters}
            assert now[heater] is remedy.verdict
            assert now[heater] not in TROUBLED
            assert all(now[name] not in TROUBLED for name in held)


@times(0.36)
@given(layouts())
def test_plans_of_random_layouts_cure_whom_they_name(layout: Layout) -> None:
    before = checked(layout)
    for plan in plans(before):
        after = plumbnet.check(with_changes(before.system, plan.changes))
        now = {one.name: one.verdict for one in after.heaters}
        assert all(now[name] not in TROUBLED for name in plan.cures)


@times(0.6)
@given(layouts())
def test_trapped_heater_that_water_reaches_has_a_remedy(layout: Layout) -> None:
    before = checked(layout)
    found = remedies(before)
    for heater in before.heaters:
        if heater.verdict is Verdict.TRAPPED and heater.need is not None and heater.need.tank_m3 is not None:
            assert heater.static_pa is None or found[heater.name]
