"""One tank for most heaters, and the fewest for all: against every choice of places, each tried with huge tanks."""

from functools import cache
from itertools import combinations
from random import Random

import pytest
from curing import RELIEVED, house, scene

import plumbnet
from plumbnet.analysis.report import Report, facts_of
from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.edits.change_text import change_of
from plumbnet.layout.model.system import System
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.rules.rule_profile import profile
from plumbnet.study.contingency.verdict_only import hasty_network_of
from plumbnet.study.remedies.fewest_tanks.set_cover import MOST_EXACT
from plumbnet.study.remedies.fewest_tanks.tank_placement import TankPlan, fewest_tanks, one_tank, plans


@cache
def tree(seed: int) -> System:
    """Heaters on a tree of checks: each house hangs behind a check on the street or on the cold tee of one before."""
    random = Random(seed)  # noqa: S311  # a layout, not a secret
    houses = 2 + seed % 4
    runs = []
    for number in range(1, houses + 1):
        upstream = random.choice(["street", *(f"tee{before}" for before in range(1, number))])
        runs.append(f"{upstream} -> cv{number} -> tee{number} -> heater{number} -> tap{number}.hot")
    heaters = {
        f"heater{number}": f"volume: {random.choice([30, 50, 80])} gal, {RELIEVED}" for number in range(1, houses + 1)
    }
    return house("\n".join(runs), **heaters)


def trapped(report: Report) -> set[str]:
    return {one.name for one in report.heaters if one.verdict is Verdict.TRAPPED}


@cache
def report_on(seed: int) -> Report:
    return plumbnet.check(tree(seed))


@cache
def left_by(seed: int, tees: tuple[str, ...]) -> set[str]:
    """Heaters that stay trapped with a huge tank at each of the tees; what they need then nobody asks."""
    layout = tree(seed)
    huge = [
        change_of(
            "add",
            {
                "part": f"huge-{tee}",
                "kind": "expansion_tank",
                "volume": "900 gal",
                "precharge": "60 psi",
                "run": f"{tee} -> huge-{tee}",
            },
        )
        for tee in tees
    ]
    facts = facts_of(hasty_network_of(with_changes(layout, huge)), profile("general"))
    return {one.name for one in facts.heaters if one.verdict is Verdict.TRAPPED}


def fewest_by_force(seed: int) -> int:
    tees = [name for name, part in tree(seed).parts.items() if part.kind == "tee"]
    for count in range(len(tees) + 1):
        if any(not left_by(seed, chosen) for chosen in combinations(tees, count)):
            return count
    raise AssertionError("a tank at every tee cures all")


def plan_of(found: TankPlan | None) -> TankPlan:
    assert found is not None
    return found


@pytest.mark.parametrize("seed", range(8))
def test_fewest_tanks_are_as_few_as_trying_every_choice_finds(seed: int) -> None:
    layout = tree(seed)
    plan = plan_of(fewest_tanks(report_on(seed)))
    assert plan.bound == 1.0
    assert len(plan.tanks) == fewest_by_force(seed)
    assert trapped(plumbnet.check(with_changes(layout, plan.changes))) == set(plan.left) == set()


@pytest.mark.parametrize("seed", range(8))
def test_one_tank_serves_as_many_as_any_place_can(seed: int) -> None:
    layout = tree(seed)
    plan = plan_of(one_tank(report_on(seed)))
    tees = [name for name, part in layout.parts.items() if part.kind == "tee"]
    before = trapped(report_on(seed))
    assert len(plan.cures) == max(len(before - left_by(seed, (tee,))) for tee in tees)
    assert trapped(plumbnet.check(with_changes(layout, plan.changes))) == set(plan.left)
    assert set(plan.cures) | set(plan.left) == before


def test_tank_is_no_larger_than_it_must_be() -> None:
    layout = house("street -> cv -> tee -> heater -> tap.hot")
    (tank,) = plan_of(one_tank(plumbnet.check(layout))).tanks
    need = scene(layout).heaters["heater"].need
    assert need is not None
    assert tank.least_m3 == need.tank_m3
    assert tank.sizes_m3 == (need.nominal_m3,)


def test_more_places_than_are_looked_through_are_chosen_greedily_with_the_bound_stated() -> None:
    count = MOST_EXACT + 1
    runs = "\n".join(f"street -> cv{n} -> tee{n} -> heater{n} -> tap{n}.hot" for n in range(count))
    layout = house(runs, **{f"heater{n}": RELIEVED for n in range(count)})
    plan = plan_of(fewest_tanks(plumbnet.check(layout)))
    assert len(plan.tanks) == count
    assert plan.bound == 1.0  # each place serves one heater: H(1) = 1
    assert trapped(plumbnet.check(with_changes(layout, plan.changes))) == set()


def test_where_no_tank_can_help_there_is_no_plan() -> None:
    report = plumbnet.check(house("street -> cv -> tee -> heater -> tap.hot", street="pressure: 85 psi"))
    assert one_tank(report) is None
    assert fewest_tanks(report) is None


def test_one_heater_alone_needs_no_plan_and_two_at_one_header_one() -> None:
    assert plans(plumbnet.check(house("street -> cv -> tee -> heater -> tap.hot"))) == ()
    runs = "street -> cv -> tee -> heater -> tap.hot\n tee -> heater2 -> tap2.hot"
    (plan,) = plans(plumbnet.check(house(runs, heater2=RELIEVED)))
    assert plan.cures == ("heater", "heater2")


def test_heaters_apart_get_the_best_single_tank_and_the_fewest_that_serve_all() -> None:
    runs = "street -> cv -> tee -> heater -> tap.hot\n street -> cv2 -> tee2 -> heater2 -> tap2.hot"
    most, every = plans(plumbnet.check(house(runs, heater2=RELIEVED)))
    assert (most.cures, most.left) == (("heater",), ("heater2",))
    assert len(every.tanks) == 2
    assert every.left == ()
