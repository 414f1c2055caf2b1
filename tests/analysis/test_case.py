"""One heater's water in one zone: the borders between what holds and what does not."""

import pytest
from conftest import PSI, system

from plumbnet.analysis.case import Case
from plumbnet.analysis.verdict import judge_of
from plumbnet.network.whole import network_of
from plumbnet.rules.facts import Verdict
from plumbnet.rules.profile import profile

CLOSED = "street -> cv -> tee -> heater -> tap.hot"


def case(runs: str, **parts: str) -> Case:
    network = network_of(system(runs, **parts))
    return judge_of(network, profile("general")).case(network.heated[0])


def test_bound_is_the_limit_or_the_static_pressure_where_that_is_higher() -> None:
    assert case(CLOSED).bound_pa == pytest.approx(80 * PSI + 1.0)
    assert case(CLOSED, street="pressure: 95 psi").bound_pa == pytest.approx(95 * PSI + 1.0)


def test_ladder_ends_with_the_heaters_own_relief_valve_though_it_was_cut_before() -> None:
    many = "".join(f"\ntee -> tank{number}" for number in range(20))
    rungs = case(f"{CLOSED}{many}\nheater.relief -> relief").rungs
    assert rungs[-1].site.part == "relief"
    assert len(rungs) == 17


def test_relief_valve_that_lets_go_holds_nothing() -> None:
    one = case(f"{CLOSED}\nheater.relief -> relief")
    assert (one.settled_pa, one.verdict) == (None, Verdict.TRAPPED)


def test_expansion_relief_valve_below_the_limit_holds() -> None:
    one = case(f"{CLOSED}\ntee -> spill\nheater.relief -> relief", spill="pressure: 75 psi")
    assert one.settled_pa == pytest.approx(75 * PSI)
    assert one.verdict is Verdict.CONTROLLED


def test_expansion_relief_valve_beyond_a_check_holds_above_its_set_by_what_that_needs_to_open() -> None:
    # heater >| 3 psi > tee2 with tap and expansion relief at 75 psi
    runs = "street -> cv -> tee -> heater -> cv2 -> tee2 -> tap.hot\ntee2 -> spill\nheater.relief -> relief"
    one = case(runs, spill="pressure: 75 psi", cv2="opens: 3 psi")
    assert one.settled_pa == pytest.approx(78 * PSI)
    assert one.limit.pressure_pa == pytest.approx(83 * PSI)
    assert one.verdict is Verdict.CONTROLLED


def test_heater_that_needs_none_still_has_a_tank_to_be_sized() -> None:
    one = case("street -> heater -> tap.hot")
    assert (one.is_closed, one.share) == (False, None)
    assert one.tank.task.static_pa == pytest.approx(60 * PSI)
