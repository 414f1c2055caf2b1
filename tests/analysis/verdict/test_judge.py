"""The five verdicts, each at its borders; drawn by hand, pressures in psi at the heater."""

import pytest
from conftest import PSI, system

import plumbnet
from plumbnet.rules.facts.heater_answer import HeaterFacts
from plumbnet.rules.facts.verdict_words import Verdict

RELIEF = "relief: {pressure: 150 psi}"
CLOSED = "street -> cv -> tee -> heater -> tap.hot"
TANKED = f"{CLOSED}\ntee -> tank"
PASCAL = 1 / PSI
"""In psi."""
LEAST_GAL = 3.97418
"""Tank that holds the usual heater at 80 psi to the pascal; the sizing tests have its number."""


def heater(runs: str, name: str = "heater", **parts: str) -> HeaterFacts:
    """The answer for one heater, which has a relief valve unless the test draws one or says otherwise."""
    if "relief" not in runs and "heater" not in parts and name == "heater":
        parts["heater"] = RELIEF
    return next(one for one in plumbnet.check(system(runs, **parts)).heaters if one.name == name)


def verdict(runs: str, name: str = "heater", **parts: str) -> str:
    return heater(runs, name, **parts).verdict.value


def psi(pressure_pa: float | None) -> float | None:
    return None if pressure_pa is None else round(pressure_pa / PSI, 4)


# Open: the way out opens at or below the limit, or the static pressure where that is higher.


def test_nothing_between_heater_and_street_is_open() -> None:
    one = heater("street -> heater -> tap.hot")
    assert (one.verdict, psi(one.settled_pa), one.need, one.short_m3) == (Verdict.OPEN, 60.0, None, 0.0)


def test_static_pressure_above_the_limit_leaves_an_open_heater_open() -> None:
    assert verdict("street -> heater -> tap.hot", street="pressure: 95 psi") == "open"


@pytest.mark.parametrize(
    ("street", "answer"),
    [("80 psi", "open"), ("80.0001 psi", "open"), ("80.001 psi", "trapped"), ("95 psi", "trapped")],
)
def test_bypass_is_a_way_out_up_to_the_limit(street: str, answer: str) -> None:
    # street >reducer with bypass> heater: opens at the street's own pressure
    runs = "street -> prv -> heater -> tap.hot"
    assert verdict(runs, street=f"pressure: {street}", prv="bypass: true") == answer


def test_way_out_at_the_static_pressure_counts_above_the_limit_too() -> None:
    # check turned round: the heater is fed from the cistern, which stands at 130 psi
    assert verdict("cistern.out -> heater -> tap.hot", cistern="elevation: 300 ft") == "open"


def test_vent_at_the_limit_lets_out_and_one_above_it_does_not() -> None:
    high = 80 * PSI / 9806.65
    runs, street = f"{CLOSED}\nheater.relief -> vent", "pressure: 75 psi"
    assert verdict(runs, vent=f"elevation: {high} m", heater="", street=street) == "open"
    assert verdict(runs, vent=f"elevation: {high + 0.001} m", heater="", street=street) == "trapped"


def test_tank_of_an_open_heater_takes_the_water_before_its_bypass_opens() -> None:
    runs = "street -> prv -> tee -> heater -> tap.hot\ntee -> tank"
    parts = {"street": "pressure: 75 psi", "prv": "bypass: true"}
    one = heater(runs, tank="volume: 20 gal, precharge: 50 psi", **parts)
    assert one.verdict is Verdict.OPEN
    assert one.settled_pa is not None
    assert 50.5 < one.settled_pa / PSI < 54.0
    small = heater(runs, tank="volume: 1 gal, precharge: 50 psi", **parts)
    assert psi(small.settled_pa) == 75.0


# Controlled: what is fitted keeps the pressure at or below the limit.


def test_limit_is_met_to_a_pascal() -> None:
    exact = heater(CLOSED).need
    assert exact is not None
    assert exact.tank_m3 is not None
    assert exact.tank_m3 / (231 * 0.0254**3) == pytest.approx(LEAST_GAL, abs=1e-4)
    for share, answer in ((1.0, "controlled"), (1 - 1e-6, "controlled"), (1 - 1e-4, "trapped")):
        one = heater(TANKED, tank=f"volume: {share * exact.tank_m3 * 1000!r} L, precharge: 60 psi")
        assert one.verdict.value == answer
        assert one.settled_pa is not None
        assert one.settled_pa / PSI == pytest.approx(80.0, abs=0.01)


@pytest.mark.parametrize(
    ("spill", "answer"),
    [
        ("79 psi", "controlled"),
        ("80 psi", "controlled"),
        ("80.0001 psi", "controlled"),
        ("80.001 psi", "trapped"),
        ("100 psi", "trapped"),
    ],
)
def test_expansion_relief_is_a_control_up_to_the_limit(spill: str, answer: str) -> None:
    one = heater(f"{CLOSED}\ntee -> spill", spill=f"pressure: {spill}")
    assert one.verdict.value == answer
    assert psi(one.settled_pa) == round(float(spill.split(maxsplit=1)[0]), 4)


def test_expansion_relief_below_the_static_pressure_holds_it_there() -> None:
    one = heater(f"{CLOSED}\ntee -> spill", spill="pressure: 40 psi")
    assert (one.verdict, psi(one.settled_pa)) == (Verdict.CONTROLLED, 60.0)


def test_safety_relief_below_the_limit_is_no_control() -> None:
    # nine tenths of its set is the limit; it lifts, and what lifts a safety relief is not held
    one = heater(f"{CLOSED}\nheater.relief -> relief", relief="pressure: 70 psi")
    assert (one.verdict, psi(one.limit_pa), one.settled_pa) == (Verdict.TRAPPED, 63.0, None)


def test_controlled_heater_is_short_of_nothing_and_needs_nothing() -> None:
    one = heater(TANKED, tank="volume: 5 gal")
    assert (one.verdict, one.short_m3, one.need, one.tanks) == (Verdict.CONTROLLED, 0.0, None, ("tank",))
    assert one.shared_expansion_m3 == pytest.approx(one.expansion_m3, rel=1e-12)


# Trapped, and sealed.


def test_trapped_heater_is_short_of_its_whole_growth_and_told_the_tank() -> None:
    one = heater(CLOSED)
    assert one.verdict is Verdict.TRAPPED
    assert one.short_m3 == pytest.approx(one.expansion_m3, rel=1e-12)
    assert one.need is not None
    assert (one.need.at, psi(one.need.precharge_pa), one.need.serves) == ("tee", 60.0, ("heater",))


def test_tank_too_small_leaves_the_rest_short() -> None:
    one = heater(TANKED, tank="volume: 2 gal")
    assert one.verdict is Verdict.TRAPPED
    assert one.short_m3 == pytest.approx(one.expansion_m3 * (1 - 2 / LEAST_GAL), rel=1e-4)


@pytest.mark.parametrize("street", ["80 psi", "90 psi"])
def test_no_tank_can_do_it_where_static_stands_at_the_limit(street: str) -> None:
    one = heater(CLOSED, street=f"pressure: {street}")
    assert one.verdict is Verdict.TRAPPED
    assert one.need is not None
    assert (one.need.tank_m3, one.need.nominal_m3) == (None, None)


def test_just_below_the_limit_a_tank_of_any_size_is_named() -> None:
    one = heater(CLOSED, street="pressure: 79.99 psi")
    assert one.need is not None
    assert one.need.tank_m3 is not None
    assert one.need.tank_m3 > 10.0
    assert one.need.nominal_m3 is None


def test_no_relief_valve_in_reach_is_sealed_even_with_a_tank_too_small() -> None:
    assert verdict(CLOSED, heater="volume: 50 gal") == "sealed"
    assert verdict(TANKED, heater="volume: 50 gal", tank="volume: 1 gal") == "sealed"


def test_relief_valve_beyond_a_check_that_lets_the_water_through_is_reached() -> None:
    assert verdict(f"{CLOSED}\nheater.relief -> cv2 -> relief") == "trapped"
    assert verdict(f"{CLOSED}\nrelief.in -> cv2 -> heater.relief") == "sealed"


def test_way_out_above_the_limit_makes_it_trapped_and_not_sealed() -> None:
    assert verdict("street -> prv -> heater -> tap.hot", heater="", street="pressure: 95 psi", prv="bypass: true") == (
        "trapped"
    )


# On demand.


def test_tankless_heater_behind_a_check_fires_only_on_demand() -> None:
    one = heater("street -> cv -> tankless -> tap.hot", "tankless")
    assert (one.verdict, psi(one.settled_pa), one.need, one.short_m3) == (Verdict.ON_DEMAND, 60.0, None, 0.0)


def test_tank_beside_it_changes_nothing() -> None:
    one = heater("street -> cv -> tee -> tankless -> tap.hot\ntee -> tank", "tankless")
    assert (one.verdict, psi(one.settled_pa)) == (Verdict.ON_DEMAND, 60.0)


def test_in_a_driven_loop_it_is_trapped() -> None:
    runs = "street -> cv -> tee -> tankless -> tee2 -> tap.hot\ntee2 -> pump -> tee\ntankless.relief -> relief"
    one = heater(runs, "tankless", tankless="volume: 2 gal")
    assert (one.verdict, len(one.loops)) == (Verdict.TRAPPED, 1)


def test_beside_a_trapped_heater_it_stands_at_no_pressure_that_is_held() -> None:
    one = heater(f"{CLOSED}\ntee -> tankless -> tap2.hot", "tankless", heater=RELIEF)
    assert (one.verdict, one.settled_pa) == (Verdict.ON_DEMAND, None)


def test_beside_a_controlled_heater_it_stands_where_that_does() -> None:
    answers = plumbnet.check(system(f"{TANKED}\ntee -> tankless -> tap2.hot", heater=RELIEF)).heaters
    held, idle = sorted(answers, key=lambda one: one.name)
    assert (held.verdict, idle.verdict) == (Verdict.CONTROLLED, Verdict.ON_DEMAND)
    assert held.settled_pa == idle.settled_pa


# No water, kept water.


def test_heater_no_water_reaches_has_no_static_pressure_and_a_verdict_all_the_same() -> None:
    one = heater("tee -> heater -> tap.hot\nstreet -> tap2.cold")
    assert (one.static_pa, one.cold_k, one.verdict) == (None, None, Verdict.TRAPPED)
    assert one.need is not None


def test_heater_behind_a_shut_valve_keeps_its_pressure_and_is_closed() -> None:
    one = heater("street -> valve -> tee -> heater -> tap.hot", valve="state: shut", street="pressure: 55 psi")
    assert (one.verdict, psi(one.static_pa), one.is_cut_off) == (Verdict.TRAPPED, 55.0, True)
    assert one.stopped_by.sets == (("valve",),)
    held = heater("street -> valve -> tee -> heater -> tap.hot\ntee -> tank", valve="state: shut", tank="volume: 9 gal")
    assert (held.verdict, held.is_cut_off) == (Verdict.CONTROLLED, True)


def test_hydronic_circuit_with_a_relief_valve_of_30_psi() -> None:
    # street > double check > reducer 12 psi > boiler > emitter, closed loop
    runs = """
        street -> cv -> prv -> tee -> boiler -> emitter -> pump -> tee
        tee2 -> tee
        boiler.relief -> relief
    """
    parts = {"prv": "set: 12 psi", "relief": "pressure: 30 psi"}
    one = heater(runs, "boiler", **parts)
    assert (one.verdict, psi(one.static_pa), psi(one.limit_pa)) == (Verdict.TRAPPED, 12.0, 27.0)
    held = heater(f"{runs}tee2 -> tank", "boiler", tank="volume: 4 gal, precharge: 12 psi", **parts)
    assert held.verdict is Verdict.CONTROLLED
    assert held.settled_pa is not None
    assert 12 * PSI < held.settled_pa < 27 * PSI


# A loop whose middle piece stands between two checks, a zone of its own:
#
#     street > reducer, bypass > tee1 > heater > tee2 > pump > cv2 >| store |> cv3 > tee1

LOOP = """
    street -> prv -> tee1 -> heater -> tee2 -> tap.hot
    tee2 -> pump -> cv2 -> store -> cv3 -> tee1
    heater.relief -> relief
"""


def test_worst_zone_of_a_loop_decides() -> None:
    parts = {"street": "pressure: 70 psi", "prv": "bypass: true"}
    assert heater(LOOP, **parts).stands_at == "heater"
    assert verdict(LOOP, **parts) == "open"
    one = heater(LOOP, store="rating: 55 psi", **parts)
    assert (one.verdict, psi(one.limit_pa)) == (Verdict.TRAPPED, 55.0)
    assert (one.limit_by, one.limit_way) == ("rating of store", ("cv2",))
    assert next((rung.outlet, rung.way[0], rung.way[-1]) for rung in one.ladder) == ("street", "heater", "street")


def test_of_two_closed_zones_that_of_the_lower_limit_decides() -> None:
    runs = LOOP.replace("prv", "cv")
    one = heater(runs, store="rating: 70 psi")
    assert (one.verdict, psi(one.limit_pa)) == (Verdict.TRAPPED, 70.0)
    held = heater(f"{runs}tee1 -> tank", store="rating: 70 psi", tank="volume: 30 gal")
    assert (held.verdict, psi(held.limit_pa)) == (Verdict.CONTROLLED, 70.0)


def test_water_shared_by_two_heaters_in_one_loop_counts_once() -> None:
    runs = """
        street -> cv -> tee -> heater1 -> tee2 -> tap.hot
        tee -> heater2 -> tee2
        tee2 -> pump -> store -> tee
        heater1.relief -> relief
    """
    one = heater(runs, "heater1")
    gallons = one.heated_volume_m3 / (231 * 0.0254**3)
    assert gallons == pytest.approx(180.0)
    assert one.shared_expansion_m3 == pytest.approx(one.expansion_m3, rel=1e-12)
    assert one.shares_with == ("heater2",)


def test_growth_and_limit_are_told_of_the_height_of_the_heater() -> None:
    low, high = heater(TANKED), heater(TANKED, heater=f"elevation: 10 m, {RELIEF}")
    head = 10 * 9806.65
    assert low.static_pa is not None
    assert high.static_pa == pytest.approx(low.static_pa - head)
    assert high.limit_pa == pytest.approx(low.limit_pa - head)
    assert low.settled_pa is not None
    assert high.settled_pa == pytest.approx(low.settled_pa - head, rel=1e-4)
    assert low.limit_own_pa == high.limit_own_pa


def test_valves_that_would_close_a_controlled_heater_are_named() -> None:
    one = heater(f"{CLOSED}\ntee -> valve -> tank", tank="volume: 9 gal")
    assert one.closes_if_shut.sets == (("valve",),)
    assert heater(CLOSED).closes_if_shut.sets == ()


def test_own_relief_valve_is_on_the_ladder_beyond_the_way_out() -> None:
    one = heater("street -> heater -> tap.hot")
    assert [rung.outlet for rung in one.ladder] == ["street", "heater/relief"]
    assert one.relieved_by == ("heater/relief",)


def test_vented_is_open_to_the_air_with_no_valve_between() -> None:
    assert heater(f"{CLOSED}\nheater.relief -> vent", heater="").vented
    assert not heater(f"{CLOSED}\nheater.relief -> valve -> vent", heater="").vented


def test_valves_on_the_way_to_the_tank_that_takes_the_growth_are_named() -> None:
    large = "volume: 9 gal"
    assert heater(f"{CLOSED}\ntee -> valve -> tank", tank=large).valves_to_tank == ("valve",)
    assert heater(f"{CLOSED}\ntee -> valve -> tank", tank=large, valve="locked: true").valves_to_tank == ()
    assert heater(TANKED, tank=large).valves_to_tank == ()


def test_water_boils_hotter_under_pressure_and_a_mixture_is_not_asked() -> None:
    assert heater("street -> heater -> tap.hot").boils_k == pytest.approx(426.5, abs=0.5)  # 5.15 bar: 153 degC
    assert heater("tap2.hot -> heater -> tap.hot\nstreet -> tap3.cold").boils_k is None
    mixed = "antifreeze: {glycol: propylene, share: 40 %}"
    made = plumbnet.check(system("street -> cv -> tee\nboiler -> emitter -> tee -> boiler", boiler=mixed))
    assert made.heaters[0].boils_k is None


def test_heater_that_is_open_by_a_bypass_alone_says_so() -> None:
    one = heater("street -> prv -> heater -> tap.hot", prv="bypass: true")
    assert (one.verdict, one.open_by_bypass) == ("open", ("prv",))
    assert heater("street -> heater -> tap.hot").open_by_bypass == ()


def test_closed_zone_decides_before_an_open_one_though_its_limit_is_the_higher() -> None:
    """The heater stands open to the street; its store, rated 100 psi, pushes back only at 70 + 40 psi."""
    parts = {"street": "pressure: 70 psi", "prv": "bypass: true", "cv3": "opens: 40 psi"}
    one = heater(LOOP, store="rating: 100 psi", **parts)
    assert (one.verdict, psi(one.limit_pa)) == (Verdict.TRAPPED, 100.0)


def test_limits_that_are_one_but_for_rounding_leave_the_heater_to_speak_for_its_water() -> None:
    # beyond the check and the pump the same limit counts, summed over other heights
    one = heater(
        "street -> tee -> heater -> tee2 -> pump -> store -> cv -> tee",
        heater="elevation: 3 m, rating: 450 kPa",
        street="pressure: 300 kPa",
        pump="check: true",
    )
    assert (one.verdict, one.stands_at, one.limit_at) == (Verdict.OPEN, "heater", "heater")
