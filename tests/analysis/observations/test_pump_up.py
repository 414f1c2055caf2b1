"""What heating and cooling again and again pumps above its limit, by Boyle's law on paper."""

import math

import pytest
from conftest import PSI, Drawn, drawn

from plumbnet.analysis.observations.pump_up import PumpUp
from plumbnet.analysis.verdict.judge import judge_of
from plumbnet.network.network import Network
from plumbnet.physics.fluids.water import ATMOSPHERE_PA
from plumbnet.physics.vessels.tank import nominal_sizes
from plumbnet.rules.facts.growth_facts import PumpedFacts
from plumbnet.rules.rule_profile import profile

GALLON = 231 * 0.0254**3
METRE_PA = 9806.65
ROW = "street -> cv1 -> tee1 -> heater1 -> cv2 -> tee2 -> heater2 -> tap.hot\ntee2 -> tank2"
TANKED = f"{ROW}\ntee1 -> tank1"


def pumped(layout: Drawn) -> list[PumpedFacts]:
    judge = judge_of(layout.network, profile("general"))
    return list(PumpUp(layout.network, judge.limits, judge.neighbourhoods).found())


def grown_gal(network: Network, layout: Drawn, heater: str) -> float:
    near = judge_of(network, profile("general")).neighbourhoods.of(layout.zone(heater))
    return near.growths_m3[layout.zone(heater)] / GALLON


def boyle(*shares: float, cold: float = 60.0) -> float:
    """Pressure in psi once shares of the gas are pressed away that was charged to the cold pressure."""
    return (cold + ATMOSPHERE_PA / PSI) / (1.0 - sum(shares)) - ATMOSPHERE_PA / PSI


def share(end: float, *, cold: float = 60.0) -> float:
    return 1.0 - (cold * PSI + ATMOSPHERE_PA) / (end * PSI + ATMOSPHERE_PA)


def test_tap_beyond_a_check_is_pumped_above_its_limit() -> None:
    layout = drawn(TANKED, tank1="volume: 6 gal", tank2="volume: 10 gal")
    grown = grown_gal(layout.network, layout, "heater1")
    (one,) = pumped(layout)
    assert (one.heaters, one.part, one.through, one.at) == (("heater1",), "tap", ("cv2",), "tee1")
    assert one.limit_pa == pytest.approx(80 * PSI)
    # the first alone hot in its own 6 gal; so stands the second cold; its own growth into 10 gal
    assert one.top_pa / PSI == pytest.approx(boyle(grown / 6, grown / 10))
    # cold c_n = (G + 10 c_(n-1)) / 16; hot G / 10 more
    cold, passed = 0.0, []
    for _ in range(10):
        cold = (grown + 10 * cold) / 16
        passed.append(boyle(cold, grown / 10) > 80)
    assert not passed[0]
    assert one.heat_ups == passed.index(True) + 1
    # so large a tank more above that G / (6 + V) and G / 10 come to no more than the limit
    more = grown / (share(80) - grown / 10) - 6
    assert one.tank_m3 == pytest.approx(more * GALLON, rel=1e-4)
    assert one.nominal_m3 == min(size for size in nominal_sizes("us") if size >= more * GALLON)
    assert one.precharge_pa == pytest.approx(60 * PSI)


def test_tank_above_that_is_as_large_stops_it() -> None:
    layout = drawn(TANKED, tank1="volume: 6 gal", tank2="volume: 10 gal")
    (one,) = pumped(layout)
    assert one.tank_m3 is not None
    more = one.tank_m3 / GALLON
    assert pumped(drawn(TANKED, tank1=f"volume: {6 + more * 1.0001} gal", tank2="volume: 10 gal")) == []
    assert len(pumped(drawn(TANKED, tank1=f"volume: {6 + more * 0.999} gal", tank2="volume: 10 gal"))) == 1


def test_without_a_tank_above_there_is_no_end() -> None:
    layout = drawn(ROW, tank2="volume: 20 gal")
    grown = grown_gal(layout.network, layout, "heater1")
    (one,) = pumped(layout)
    assert one.top_pa == math.inf
    # n heat-ups leave n G, and G on top, in 20 gal
    assert one.heat_ups == math.floor(20 * share(80) / grown - 1) + 1


def test_what_one_heat_up_breaks_is_not_told_as_pumped() -> None:
    assert pumped(drawn(TANKED, tank1="volume: 6 gal", tank2="volume: 1 gal")) == []
    # nor what is pumped by a heater that breaks something else
    runs = TANKED + "\ntee2 -> cv3 -> tee3"
    assert len(pumped(drawn(runs, tank1="volume: 6 gal", tank2="volume: 10 gal"))) == 1
    assert pumped(drawn(runs, tank1="volume: 6 gal", tank2="volume: 10 gal", tee3="rating: 61 psi")) == []


def test_heater_alone_pumps_nothing() -> None:
    assert pumped(drawn("street -> cv -> tee -> heater -> tap.hot\ntee -> tank", tank="volume: 6 gal")) == []


def test_open_heaters_pump_nothing() -> None:
    assert pumped(drawn("street -> heater1 -> heater2 -> tap.hot")) == []


def test_check_that_the_heater_above_never_opens_stops_it() -> None:
    # alone in 6 gal it comes to 72 psi
    layout = drawn(TANKED, tank1="volume: 6 gal", tank2="volume: 10 gal", cv2="opens: 15 psi")
    assert pumped(layout) == []


def test_place_that_sets_no_limit_is_not_told() -> None:
    runs = "street -> cv1 -> tee1 -> heater1 -> cv2 -> tee2 -> heater2\ntee1 -> tank1\ntee2 -> tank2"
    assert pumped(drawn(runs, tank1="volume: 6 gal", tank2="volume: 10 gal")) == []


def test_pressures_are_read_at_the_part_that_sets_the_limit() -> None:
    # the tap 5 m up: its limit reads 80 psi there, 87.11 at datum
    layout = drawn(TANKED, tank1="volume: 4.5 gal", tank2="volume: 8 gal", tap="elevation: 5 m")
    grown = grown_gal(layout.network, layout, "heater1")
    (one,) = pumped(layout)
    assert one.limit_pa == pytest.approx(80 * PSI)
    assert one.top_pa / PSI == pytest.approx(boyle(grown / 4.5, grown / 8) - 5 * METRE_PA / PSI)


def test_tank_is_charged_at_its_own_height() -> None:
    layout = drawn(TANKED, tank1="volume: 6 gal", tank2="volume: 10 gal", tee1="elevation: 10 m")
    assert pumped(layout)[0].precharge_pa == pytest.approx(60 * PSI - 10 * METRE_PA)


def test_of_two_that_pump_no_tank_at_one_stops_the_other() -> None:
    runs = """
        street -> cv1 -> tee1 -> heater1 -> cv3 -> tee3 -> heater3 -> tap.hot
        tee1 -> tank1
        tee4 -> cv2 -> tee2 -> heater2 -> cv4 -> tee3
        tee2 -> tank2
        heater3.relief -> tee5 -> tank3
    """.replace("street -> cv1", "street -> tee4 -> cv1")
    # each alone hot leaves a sixth, and 12 gal take a fourteenth more; the limit lies at 0.211
    small = {"tank1": "volume: 5 gal", "tank2": "volume: 5 gal", "tank3": "volume: 12 gal"}
    found = pumped(drawn(runs, **small))
    assert [(one.heaters, one.part, one.tank_m3, one.nominal_m3) for one in found] == [
        (("heater1", "heater2"), "tap", None, None)
    ]


@pytest.mark.parametrize("last", ["atap", "ztap"])
def test_places_are_told_by_their_parts_names(last: str) -> None:
    runs = TANKED + f"\ntee2 -> cv3 -> tee3 -> heater3 -> {last}.hot\ntee3 -> tank3"
    sizes = {"tank1": "volume: 5 gal", "tank2": "volume: 14 gal", "tank3": "volume: 14 gal"}
    found = pumped(drawn(runs, **{last: "kind: fixture"}, **sizes))
    assert [one.part for one in found] == sorted(["tap", last])


def test_heater_pumps_itself_up_by_what_passes_a_check_to_a_tank_and_does_not_come_back() -> None:
    # each heat-up leaves its growth in the tank beyond cv2, and the street fills up what is cold
    layout = drawn("street -> cv -> tee -> heater -> tap.hot\ntee -> cv2 -> tee2 -> tank", tank="volume: 10 gal")
    grown = grown_gal(layout.network, layout, "heater")
    (one,) = pumped(layout)
    assert (one.heaters, one.part, one.through, one.top_pa) == (("heater",), "tap", ("cv2",), math.inf)
    assert one.heat_ups == math.floor(10 * share(80) / grown) + 1 == 3
