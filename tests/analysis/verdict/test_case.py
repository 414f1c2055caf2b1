"""One heater's water in one zone: the borders between what holds and what does not."""

import pytest
from conftest import PSI, system

from plumbnet.analysis.verdict import case as verdict_case
from plumbnet.analysis.verdict.case import Case
from plumbnet.analysis.verdict.judge import judge_of
from plumbnet.network.network import network_of
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.rules.rule_profile import profile

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


def test_sealed_heater_settles_nowhere_and_has_its_neighbours_for_company() -> None:
    one = case(f"{CLOSED}\ntee -> heater2 -> tap2.hot")
    assert (one.settled_pa, one.verdict, one.way_out) == (None, Verdict.SEALED, None)
    assert one.share is one.company
    assert one.company.heaters == ("heater", "heater2")
    assert one.company.short_m3 == one.company.expansion_m3 > 0.0


def test_open_heater_comes_to_what_its_way_out_opens_at_or_lower_where_a_tank_takes_it_up() -> None:
    # a vent 170 ft up stands open above 73.7 psi
    vented = f"{CLOSED}\nheater.relief -> vent"
    height = "elevation: 170 ft"
    bare, tanked = case(vented, vent=height), case(f"{vented}\ntee -> tank", vent=height, tank="volume: 20 gal")
    assert (bare.verdict, tanked.verdict) == (Verdict.OPEN, Verdict.OPEN)
    assert bare.settled_pa == pytest.approx(170 * 0.3048 * 9806.65)
    assert tanked.settled_pa == pytest.approx(tanked.highest.pressure_pa)
    assert 60 * PSI < tanked.highest.pressure_pa < 65 * PSI
    assert case("street -> heater -> tap.hot").settled_pa == pytest.approx(60 * PSI)


def test_way_out_beyond_the_limit_holds_only_what_does_not_come_to_a_relief_valve_first() -> None:
    # a vent 300 ft up stands open above 130 psi
    vented = f"{CLOSED}\nheater.relief -> tee2 -> vent"
    late, relieved = case(vented, vent="elevation: 300 ft"), case(f"{vented}\ntee2 -> relief", vent="elevation: 250 ft")
    assert late.settled_pa == pytest.approx(300 * 0.3048 * 9806.65)
    assert late.verdict is Verdict.TRAPPED
    first = case(f"{vented}\ntee2 -> relief", vent="elevation: 300 ft", relief="pressure: 100 psi")
    assert (first.settled_pa, first.verdict) == (None, Verdict.TRAPPED)
    assert relieved.settled_pa == pytest.approx(250 * 0.3048 * 9806.65)


def test_heater_that_fires_only_while_water_runs_is_on_demand_unless_a_way_stands_open() -> None:
    closed, bare = "street -> cv -> tee -> tankless -> tap.hot", "street -> tankless -> tap.hot"
    assert [case(runs).verdict for runs in (closed, bare)] == [Verdict.ON_DEMAND, Verdict.OPEN]
    assert case(closed).share is None
    assert not case(closed).is_closed


def test_places_that_a_closed_heater_breaks_are_those_its_tank_is_looked_for_beside() -> None:
    trapped = case(f"{CLOSED}\nheater.relief -> relief")
    assert (
        [place.limit.part for place in trapped.tank.broken] == [place.limit.part for place in trapped.broken] == ["tap"]
    )
    held = case(f"{CLOSED}\nheater.relief -> relief\ntee -> tank", tank="volume: 10 gal")
    assert (held.verdict, held.broken, held.tank.broken) == (Verdict.CONTROLLED, (), ())
    assert (trapped.tank.is_wanted, held.tank.is_wanted) == (True, False)


def test_relief_valve_set_below_the_street_runs_all_the_time_and_controls_nothing() -> None:
    one = case(f"{CLOSED}\nheater.relief -> relief", street="pressure: 100 psi", relief="pressure: 90 psi")
    assert (one.settled_pa, one.broken, one.verdict) == (None, (), Verdict.TRAPPED)


def test_heater_s_height_is_a_column_of_water() -> None:
    assert case(CLOSED, heater="elevation: 10 m").head_pa == pytest.approx(10 * 9806.65)


def test_of_very_many_places_the_nearest_are_told(monkeypatch: pytest.MonkeyPatch) -> None:
    # its own tap, and one behind each check further on
    runs = f"{CLOSED}\ntee -> cv2 -> tee2 -> tap2.hot\ntee2 -> cv3 -> tap3.hot"
    for most, left_out in ((2, True), (3, False)):
        monkeypatch.setattr(verdict_case, "MOST_BROKEN", most)
        one = case(runs)
        assert [place.limit.part for place in one.broken] == ["tap", "tap2", "tap3"][:most]
        assert one.leaves_broken_out is left_out
