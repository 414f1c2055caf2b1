"""Where each finding begins and ends: facts given by hand, at the very bound and beside it."""

import math
from dataclasses import replace

import pytest
from conftest import PSI, system

import plumbnet
from plumbnet.layout.model.part import Role
from plumbnet.network.outlets.cut_sets import Stops
from plumbnet.network.pressure.pressure_source import Feed, Giver
from plumbnet.rules.facts.all_facts import Facts
from plumbnet.rules.facts.device_facts import ReducerFacts, ReliefFacts
from plumbnet.rules.facts.growth_facts import ReturnFacts
from plumbnet.rules.facts.heater_answer import HeaterFacts, RungFacts
from plumbnet.rules.facts.limit_facts import TapFacts
from plumbnet.rules.facts.low_facts import LowFacts, Use
from plumbnet.rules.facts.tank_facts import TankFacts
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.rules.four_answers import Breach
from plumbnet.rules.requirement import REQUIREMENTS
from plumbnet.rules.rule_profile import Profile, profile, read_profile

FACTS = plumbnet.check(
    system("street -> prv -> tee -> heater -> tap.hot\ntee -> tank\ntee -> spill\nheater.relief -> relief")
).facts
(HEATER,), (TANK,), (RELIEF,), (SPILL,), (REDUCER,) = (
    FACTS.heaters,
    FACTS.tanks,
    FACTS.reliefs,
    FACTS.expansion_reliefs,
    FACTS.reducers,
)


def breaches(name: str, facts: Facts, rules: str | Profile = "general") -> list[Breach]:
    return list(REQUIREMENTS[name].breaches(facts, profile(rules) if isinstance(rules, str) else rules))


def with_heater(heater: HeaterFacts) -> Facts:
    return replace(FACTS, heaters=(heater,))


def with_relief(relief: ReliefFacts) -> Facts:
    return replace(FACTS, reliefs=(relief,))


def with_tank(tank: TankFacts) -> Facts:
    return replace(FACTS, tanks=(tank,))


def with_reducer(reducer: ReducerFacts) -> Facts:
    return replace(FACTS, reducers=(reducer,))


def with_spill(spill: ReliefFacts) -> Facts:
    return replace(FACTS, expansion_reliefs=(spill,))


def rung(outlet: str, role: Role, opens_pa: float = 0.0) -> RungFacts:
    return RungFacts(outlet, role, "", opens_pa, ())


@pytest.mark.parametrize(("set_pa", "is_found"), [(9.0e5, True), (8.9e5, False)])
def test_expansion_relief_set_as_high_as_the_safety_relief_is_too_high(set_pa: float, *, is_found: bool) -> None:
    facts = with_spill(replace(SPILL, set_pa=set_pa, safety_pa=9.0e5))
    assert bool(breaches("expansion-relief-above-safety", facts)) is is_found


@pytest.mark.parametrize(("static_pa", "is_found"), [(5.0e5, True), (4.9e5, False)])
def test_expansion_relief_set_at_the_static_pressure_never_shuts(static_pa: float, *, is_found: bool) -> None:
    facts = with_spill(replace(SPILL, set_pa=5.0e5, static_pa=static_pa))
    assert bool(breaches("expansion-relief-below-static", facts)) is is_found


@pytest.mark.parametrize(("set_pa", "is_found"), [(8.0e5 + 1.0, False), (8.0e5 + 2.0, True)])
def test_relief_valve_may_be_set_to_the_rating_within_a_pascal(set_pa: float, *, is_found: bool) -> None:
    facts = with_relief(replace(RELIEF, set_pa=set_pa, rated="heater", rating_pa=8.0e5))
    assert bool(breaches("relief-above-rating", facts)) is is_found


@pytest.mark.parametrize(("serves_w", "is_found"), [(None, False), (9_000.0, False), (9_001.0, True)])
def test_relief_valve_that_carries_off_all_the_input_is_large_enough(serves_w: float | None, *, is_found: bool) -> None:
    facts = with_relief(replace(RELIEF, capacity_w=9_000.0, serves_w=serves_w))
    assert bool(breaches("relief-below-input", facts)) is is_found


@pytest.mark.parametrize(("static_pa", "is_found"), [(9.0e5, False), (9.1e5, True)])
def test_static_pressure_may_come_to_nine_tenths_of_the_set(static_pa: float, *, is_found: bool) -> None:
    facts = with_relief(replace(RELIEF, set_pa=1.0e6, static_pa=static_pa))
    assert bool(breaches("relief-near-static", facts)) is is_found


@pytest.mark.parametrize(("over_pa", "is_found"), [(0.0, False), (1.0, False), (1.5, True)])
def test_relief_valve_runs_above_its_set_and_is_then_told_once(over_pa: float, *, is_found: bool) -> None:
    facts = with_relief(replace(RELIEF, set_pa=1.0e6, static_pa=1.0e6 + over_pa))
    assert bool(breaches("relief-runs", facts)) is is_found
    assert bool(breaches("relief-near-static", facts)) is not is_found


def test_relief_valve_that_nothing_goes_on_feeding_does_not_run() -> None:
    facts = with_relief(replace(RELIEF, set_pa=1.0e6, static_pa=1.1e6, is_fed=False))
    assert breaches("relief-runs", facts) == []
    assert len(breaches("relief-near-static", facts)) == 1


def test_supply_is_named_where_the_relief_valve_feels_its_very_pressure() -> None:
    facts = with_relief(replace(RELIEF, set_pa=40 * PSI, static_pa=50 * PSI))
    (one,) = breaches("relief-runs", facts)
    assert one.text == "50 psi stands at relief, above its set of 40 psi: it runs all the time."
    (one,) = breaches("relief-runs", with_relief(replace(RELIEF, set_pa=40 * PSI, static_pa=60 * PSI)))
    assert one.text.startswith("street stands at 60 psi, ")
    assert " 40 psi set of relief: " in one.text


def test_filling_loop_that_stands_open_is_to_be_shut_before_anything_is_fitted() -> None:
    circuit = system("street -> loop -> boiler\nboiler.relief -> relief", loop="state: open", relief="pressure: 30 psi")
    (one,) = breaches("relief-runs", plumbnet.check(circuit).facts)
    assert one.text.startswith("street stands at 60 psi, ")
    assert one.advice.startswith("Shut loop, if it is fed by that; ")


MOST_K = profile("general").relief_temperature.value_k + 0.2


@pytest.mark.parametrize(
    ("opens_k", "serves_k", "is_found"),
    [
        (None, 333.15, False),
        (MOST_K, 333.15, False),
        (MOST_K + 0.1, 333.15, True),
        (MOST_K + 0.1, None, True),
        (MOST_K + 0.1, MOST_K - 0.1, True),
        (MOST_K + 0.1, MOST_K, False),
    ],
)
def test_element_may_open_at_what_the_rules_name_and_above_where_the_circuit_runs_hotter(
    opens_k: float | None, serves_k: float | None, *, is_found: bool
) -> None:
    facts = with_relief(replace(RELIEF, opens_k=opens_k, serves_k=serves_k))
    assert bool(breaches("relief-opens-hot", facts)) is is_found


@pytest.mark.parametrize(("over_pa", "is_found"), [(1_000.0, False), (1_001.0, True)])
def test_set_of_a_relief_valve_is_held_to_the_highest_within_a_rounding_of_scales(
    over_pa: float, *, is_found: bool
) -> None:
    most = profile("general").relief_set
    assert most is not None
    facts = with_relief(replace(RELIEF, set_pa=most.value_pa + over_pa))
    assert bool(breaches("relief-set-too-high", facts)) is is_found


def test_relief_valve_joined_to_nothing_is_told_so() -> None:
    (one,) = breaches("relief-behind-valve", with_relief(replace(RELIEF, touches=(), touches_vessel=False)))
    assert one.text == "relief does not sit on a heater: it is joined to none."
    assert one.parts == ("relief",)


@pytest.mark.parametrize(("hot_k", "is_found"), [(373.15, True), (373.14, False)])
def test_water_set_to_its_boiling_point_boils(hot_k: float, *, is_found: bool) -> None:
    facts = with_heater(replace(HEATER, hot_k=hot_k, boils_k=373.15))
    assert bool(breaches("setpoint-above-boiling", facts)) is is_found


@pytest.mark.parametrize(("over_pa", "is_found"), [(1.0, False), (2.0, True)])
def test_static_pressure_is_held_to_its_limit_within_a_pascal(over_pa: float, *, is_found: bool) -> None:
    draw_pa = profile("general").highest_static.value_pa + over_pa
    facts = replace(FACTS, taps=(TapFacts("tap", draw_pa),))
    assert bool(breaches("static-above-limit", facts)) is is_found


TOLERANCE_PA = profile("general").charge_tolerance.value_pa + 1.0


@pytest.mark.parametrize(
    ("charge_pa", "static_pa", "is_found"),
    [
        (4.0e5, None, False),
        (4.0e5 + TOLERANCE_PA, 4.0e5, False),
        (4.0e5 - TOLERANCE_PA, 4.0e5, False),
        (4.0e5 + TOLERANCE_PA + 1.0, 4.0e5, True),
        (4.0e5 - TOLERANCE_PA - 1.0, 4.0e5, True),
        (TOLERANCE_PA + 0.5, 0.0, True),
    ],
)
def test_charge_may_differ_by_the_tolerance_and_a_pascal(
    charge_pa: float, static_pa: float | None, *, is_found: bool
) -> None:
    facts = with_tank(replace(TANK, precharge_pa=charge_pa, static_pa=static_pa, cut_in_pa=static_pa))
    assert bool(breaches("tank-charge-differs", facts)) is is_found


def test_charge_of_a_tank_that_a_well_never_lets_fall_is_held_against_what_stands_there() -> None:
    tank = replace(TANK, static_pa=0.0, cut_in_pa=None)
    assert breaches("tank-charge-differs", with_tank(replace(tank, precharge_pa=-TOLERANCE_PA))) == []
    assert breaches("tank-charge-differs", with_tank(replace(tank, precharge_pa=-TOLERANCE_PA - 0.5)))


def test_tank_that_no_way_joins_to_a_heater_is_cut_off_by_nothing_in_particular() -> None:
    cut_off = replace(TANK, reached=False, stopped_by=())
    (one,) = breaches("tank-cut-off", replace(with_tank(cut_off), heaters=(replace(HEATER, verdict=Verdict.TRAPPED),)))
    assert one.text == "no heated water can reach tank."


OPEN = replace(HEATER, verdict=Verdict.OPEN, open_by_bypass=("prv",), ladder=(rung("street", Role.STREET),))


def test_only_an_open_heater_is_told_that_a_bypass_does_not_count() -> None:
    assert breaches("bypass-does-not-count", with_heater(OPEN), "ipc-2021")
    assert breaches("bypass-does-not-count", with_heater(replace(OPEN, verdict=Verdict.TRAPPED)), "ipc-2021") == []


@pytest.mark.parametrize(("upstream_pa", "is_found"), [(None, False), (4.0e5, False), (4.1e5, True)])
def test_bypass_counts_up_to_the_set_where_the_code_says_so(upstream_pa: float | None, *, is_found: bool) -> None:
    reducer = replace(REDUCER, set_pa=4.0e5, upstream_pa=upstream_pa)
    found = breaches("bypass-does-not-count", replace(with_reducer(reducer), heaters=(OPEN,)), "irc-2021")
    assert [one.text.partition(", ")[0] for one in found] == ["heater is open only by the bypass of prv"] * is_found
    assert all(one.text.endswith(" as a way back above the reducer's set.") for one in found)


ON_DEMAND = replace(HEATER, verdict=Verdict.ON_DEMAND, ladder=(), stopped_by=Stops(()), heated_volume_m3=0.01)
EXEMPT = (
    "profile: ours\ntitle: Ours\nextends: upc-2024\n"
    "control_for: {value: every, exempt_volume: 10 L, clause: ours, verified: true}\n"
)


def test_heater_that_fires_on_flow_is_closed_without_control_unless_it_has_one() -> None:
    (one,) = breaches("closed-without-control", with_heater(ON_DEMAND), "upc-2024")
    assert one.parts == ("heater",)
    assert one.text.startswith("heater is closed (no way leads ")
    held = replace(ON_DEMAND, ladder=(rung("tank", Role.TANK),))
    assert breaches("closed-without-control", with_heater(held), "upc-2024") == []


@pytest.mark.parametrize(("volume_m3", "is_found"), [(0.0, False), (0.01, False), (0.011, True)])
def test_heater_no_larger_than_the_exemption_needs_no_control(volume_m3: float, *, is_found: bool) -> None:
    ours = read_profile(EXEMPT.encode(), file="ours.yaml")
    facts = with_heater(replace(ON_DEMAND, heated_volume_m3=volume_m3))
    assert bool(breaches("closed-without-control", facts, ours)) is is_found


def test_where_no_size_is_exempt_not_even_an_empty_heater_is() -> None:
    assert breaches("closed-without-control", with_heater(replace(ON_DEMAND, heated_volume_m3=0.0)), "upc-2024")


GROWTH = ReturnFacts("street", ("heater",), 0.003, 0.001, 0.12, None)


def said(growth: ReturnFacts, rules: str | Profile = "uk-2010") -> list[str]:
    return [one.text for one in breaches("growth-leaves-supply-pipe", replace(FACTS, returns=(growth,)), rules)]


def test_one_heater_gives_and_two_together_give() -> None:
    (one,), (both,) = said(GROWTH), said(replace(GROWTH, heaters=("heater", "boiler")))
    assert one.startswith("heater gives 0.793 gal back ")
    assert both.startswith("heater and boiler together give 0.793 ")
    assert "holds 0.264 gal" in one
    assert said(GROWTH, "general") == []


SMALL = (
    "profile: ours\ntitle: Ours\nextends: uk-2010\n"
    "control_for: {value: storage, exempt_volume: 15 L, clause: ours, verified: true}\n"
)


@pytest.mark.parametrize(("store_m3", "is_found"), [(0.015, False), (0.0151, True)])
def test_store_no_larger_than_the_exemption_may_give_its_growth_back(store_m3: float, *, is_found: bool) -> None:
    ours = read_profile(SMALL.encode(), file="ours.yaml")
    assert bool(said(replace(GROWTH, store_m3=store_m3), ours)) is is_found


def test_no_store_is_too_small_for_the_rules_of_the_united_kingdom() -> None:
    assert said(replace(GROWTH, store_m3=0.001))


@pytest.mark.parametrize(("mixed_k", "is_found"), [(298.15, False), (298.25, True)])
def test_supply_pipe_may_come_to_25_degc(mixed_k: float, *, is_found: bool) -> None:
    assert bool(said(replace(GROWTH, held_m3=0.004, mixed_k=mixed_k))) is is_found


def test_bypass_is_not_told_beside_the_reducer_that_wants_a_tank() -> None:
    bare = replace(REDUCER, is_heated=True, has_tank=False, relief_set_pa=None, upstream_pa=90 * PSI)
    assert breaches("bypass-does-not-count", replace(with_reducer(bare), heaters=(OPEN,)), "upc-2024") == []
    low = replace(with_reducer(replace(bare, upstream_pa=70 * PSI)), heaters=(OPEN,))
    assert breaches("bypass-does-not-count", low, "upc-2024")


FILL = """
street -> {line} -> tee -> boiler -> pump -> emitter -> tee
tee -> tank
"""


@pytest.mark.parametrize(
    ("line", "guard", "is_found"),
    [
        ("guard -> loop", "check_valve", True),
        ("guard -> loop", "vacuum_breaker", True),
        ("guard -> loop", "dual_check", True),
        ("guard -> loop", "double_check", False),
        ("loop -> guard", "reduced_pressure_assembly", False),
        ("guard -> valve -> loop", "reduced_pressure_assembly", False),
        ("guard -> tee2 -> loop", "reduced_pressure_assembly", True),
        ("loop -> store -> guard", "reduced_pressure_assembly", True),
    ],
)
def test_loop_may_stay_joined_where_its_line_has_a_device_for_that(line: str, guard: str, *, is_found: bool) -> None:
    runs = FILL.format(line=line) + "tee2 -> tap.cold\n" * ("tee2" in line)
    drawn = system(runs, loop="state: open, fill: 15 psi", guard=f"kind: {guard}")
    assert bool(breaches("filling-loop-open", plumbnet.check(drawn).facts)) is is_found


@pytest.mark.parametrize(("rules", "left_alone"), [("upc-2024", True), ("uk-2010", False), ("ipc-2021", False)])
def test_double_check_is_enough_where_the_code_has_it_so(rules: str, *, left_alone: bool) -> None:
    for guard, is_enough in (("double_check", left_alone), ("reduced_pressure_assembly", True)):
        drawn = system(FILL.format(line="guard -> loop"), loop="state: open, fill: 15 psi", guard=f"kind: {guard}")
        assert bool(breaches("filling-loop-open", plumbnet.check(drawn).facts, rules)) is not is_enough


@pytest.mark.parametrize(
    ("rules", "set_psi", "why"),
    [
        ("us-boiler", 75, ", and the rules do not count a relief valve as a control."),
        ("upc-2018", 75, ", which the rules count only in a licensed design."),
        ("npc-2020", 101, ", and the rules count one up to 79.8 psi only."),
    ],
)
def test_reason_why_an_expansion_relief_does_not_count_is_told(rules: str, set_psi: float, why: str) -> None:
    held = replace(
        HEATER,
        verdict=Verdict.CONTROLLED,
        settled_pa=set_psi * PSI,
        ladder=(rung("spill", Role.EXPANSION_RELIEF, set_psi * PSI + 1.0),),
    )
    facts = replace(with_spill(replace(SPILL, set_pa=set_psi * PSI)), heaters=(held,))
    (one,) = breaches("expansion-relief-does-not-count", facts, rules)
    assert one.text == f"heater is held by spill, set to {set_psi} psi{why}"
    late = replace(held, ladder=(rung("spill", Role.EXPANSION_RELIEF, set_psi * PSI + 2.0),))
    assert breaches("expansion-relief-does-not-count", replace(facts, heaters=(late,)), rules) == []


def test_relief_valve_behind_a_valve_on_the_tapping_is_told_once_whichever_way_the_pipe_is_drawn() -> None:
    drawn = system("street -> heater -> tap.hot\nrelief -> valve -> heater.relief")
    assert [one.name for one in plumbnet.check(drawn).findings] == ["relief-behind-valve"]


@pytest.mark.parametrize(("outlet_pa", "is_found"), [(3.0e5 + 1.0, False), (3.0e5 + 2.0, True)])
def test_reducer_may_have_its_set_behind_it_within_a_pascal(outlet_pa: float, *, is_found: bool) -> None:
    facts = with_reducer(replace(REDUCER, set_pa=3.0e5, outlet_pa=outlet_pa, passed_by=("pump",)))
    assert bool(breaches("reducer-bypassed", facts)) is is_found


def test_reducer_above_its_set_is_bypassed_only_where_water_comes_past_it() -> None:
    assert not breaches("reducer-bypassed", with_reducer(replace(REDUCER, set_pa=3.0e5, outlet_pa=6.0e5)))


LEAST_PA = profile("general").least_at_tap.value_pa
TOP_PA = profile("general").least_at_top.value_pa
LOW = LowFacts("tap", Use.TAP, "tap", 12.0, 3.0e5, 3.0e5, None)


def with_low(low: LowFacts, **changed: object) -> Facts:
    return replace(FACTS, lows=(replace(low, **changed),))  # type: ignore[arg-type]  # fields by name


@pytest.mark.parametrize(
    ("least_pa", "found"),
    [
        (-1.0, ["tap-without-water"]),
        (0.0, ["tap-without-water"]),
        (0.9, ["tap-without-water"]),
        (1.0, ["tap-below-least"]),
        (LEAST_PA - 1.5, ["tap-below-least"]),
        (LEAST_PA - 1.0, []),
        (LEAST_PA, []),
    ],
)
def test_tap_is_dry_up_to_a_pascal_and_too_low_up_to_one_below_the_least(least_pa: float, found: list[str]) -> None:
    facts = with_low(LOW, least_pa=least_pa)
    assert [name for name in ("tap-without-water", "tap-below-least") if breaches(name, facts)] == found


@pytest.mark.parametrize(
    ("least_pa", "changed", "found"),
    [
        (0.9, {}, ["circuit-not-full"]),
        (1.0, {}, ["circuit-top-below-least"]),
        (TOP_PA - 1.5, {}, ["circuit-top-below-least"]),
        (TOP_PA - 1.0, {}, []),
        (TOP_PA, {"vapour_pa": 1.0}, []),
        (TOP_PA, {"vapour_pa": 1.5}, ["circuit-top-below-least"]),
        (TOP_PA - 1.5, {"is_driven": False}, []),
        (TOP_PA - 1.5, {"is_vented": True}, []),
        (0.9, {"is_vented": True}, ["circuit-not-full"]),
        (0.9, {"is_driven": False}, ["circuit-not-full"]),
        (0.9, {"use": Use.TAP}, []),
    ],
)
def test_top_of_a_circuit_needs_its_margin_and_what_keeps_it_liquid(
    least_pa: float, changed: dict[str, object], found: list[str]
) -> None:
    top = replace(LOW, name="boiler", use=Use.HEATER, at="attic", is_driven=True, least_pa=least_pa)
    facts = with_low(top, **changed)
    assert [name for name in ("circuit-not-full", "circuit-top-below-least") if breaches(name, facts)] == found


def test_radiator_that_is_the_top_of_a_circuit_is_told_once() -> None:
    low = replace(LOW, least_pa=-1.0)
    boilers = [replace(low, name=name, use=Use.HEATER, at="attic", is_driven=True) for name in ("boiler", "boiler2")]
    facts = replace(FACTS, lows=(*boilers, replace(low, name="attic", use=Use.EMITTER, at="attic")))
    assert [one.parts for one in breaches("circuit-not-full", facts)] == [("attic",)]
    assert [one.parts for one in breaches("circuit-not-full", replace(FACTS, lows=tuple(boilers)))] == [
        ("attic", "boiler")
    ]
    raised = [replace(one, least_pa=2.0) for one in boilers]
    assert len(breaches("circuit-top-below-least", replace(FACTS, lows=tuple(raised)))) == 1


def test_of_heaters_that_share_a_top_the_first_by_name_is_told_or_who_needs_most_there() -> None:
    low = replace(LOW, use=Use.HEATER, at="attic", is_driven=True, least_pa=-1.0)
    dry = [replace(low, name=name) for name in ("boiler2", "boiler")]
    assert [one.parts for one in breaches("circuit-not-full", replace(FACTS, lows=tuple(dry)))] == [("attic", "boiler")]
    wet = [replace(low, name="boiler", least_pa=2.0), replace(low, name="boiler2", least_pa=2.0, vapour_pa=5e4)]
    assert [one.parts for one in breaches("circuit-top-below-least", replace(FACTS, lows=tuple(wet)))] == [
        ("attic", "boiler2")
    ]


@pytest.mark.parametrize(
    ("hot_k", "boils_k", "is_found"), [(372.9, 373.0, False), (373.0, 373.0, True), (None, 373.0, False)]
)
def test_water_boils_at_the_top_from_the_very_temperature_on(
    hot_k: float | None, boils_k: float | None, *, is_found: bool
) -> None:
    top = replace(LOW, name=HEATER.name, use=Use.HEATER, at="attic", hot_k=hot_k, boils_k=boils_k)
    facts = replace(FACTS, lows=(top,))
    assert bool(breaches("loop-above-boiling", facts)) is is_found
    boils_too = replace(HEATER, boils_k=HEATER.hot_k)
    assert not breaches("loop-above-boiling", replace(facts, heaters=(boils_too,)))


PRV = Feed("prv", Giver.REDUCER, 2.0e5, LEAST_PA)
BOOSTER = "Fit a booster pump that adds at least 8 psi, or feed it from where more stands."


@pytest.mark.parametrize(
    ("feed", "advice"),
    [
        (None, BOOSTER),
        (Feed("street", Giver.SUPPLY, 2.0e5, 0.0), BOOSTER),
        (replace(PRV, more_pa=LEAST_PA - 1.0), BOOSTER),
        (replace(PRV, room_pa=LEAST_PA - 1.0), BOOSTER),
        (PRV, "Raise the set of prv to at least 37 psi, as far as all that hangs on it may stand that."),
        (
            Feed("loop", Giver.FILL, 0.0, math.inf),
            "Fill at loop, cold, to at least 8 psi, as far as all that hangs on it may stand that.",
        ),
    ],
)
def test_more_pressure_comes_from_what_can_give_it_or_from_a_booster(feed: Feed | None, advice: str) -> None:
    (one,) = breaches("tap-without-water", with_low(LOW, least_pa=0.0, feed=feed))
    assert one.advice == advice


def test_supply_that_falls_is_told_as_such() -> None:
    (one,) = breaches("tap-below-least", with_low(LOW, least_pa=LEAST_PA / 2))
    assert one.text == "4 psi stands at tap at 39.4 ft, the supply at its lowest; the least is 8 psi."
    (one,) = breaches("tap-below-least", with_low(LOW, least_pa=LEAST_PA / 2, static_pa=LEAST_PA / 2 + 1.0))
    assert one.text.startswith("4 psi stands at tap at 39.4 ft; ")


SOAKING = replace(
    HEATER,
    verdict=Verdict.ON_DEMAND,
    heated_volume_m3=0.01,
    hot_k=333.15,
    static_pa=4e5,
    limit_pa=5.5e5,
    boils_k=425.0,
    ladder=(),
)


@pytest.mark.parametrize(
    ("heater", "is_found"),
    [
        (SOAKING, True),
        (replace(SOAKING, heated_volume_m3=0.004), True),
        (replace(SOAKING, heated_volume_m3=0.0039), False),
        (replace(SOAKING, verdict=Verdict.OPEN), False),
        (replace(SOAKING, verdict=Verdict.CONTROLLED), False),
        (replace(SOAKING, static_pa=None), False),
        (replace(SOAKING, boils_k=None), False),
        (replace(SOAKING, boils_k=333.15), False),
    ],
)
def test_closed_heater_that_fires_on_flow_soaks_from_four_litres_of_plain_water_on(
    heater: HeaterFacts, *, is_found: bool
) -> None:
    assert bool(breaches("heat-soak", with_heater(heater))) is is_found


def test_heat_soak_goes_no_further_than_boiling() -> None:
    """By steam tables: 10 L from 60 to 80 degC grow by 1.17 %, from 60 to 65 by 0.27 %."""
    texts = [breaches("heat-soak", with_heater(replace(SOAKING, boils_k=k)))[0].text for k in (425.0, 338.15)]
    assert " an estimate of 36 degF it " in texts[0]
    assert " grows by 0.031 gal; " in texts[0]
    assert "an estimate of 9 degF it grows by 0.0071" in texts[1]


def test_heat_soak_names_the_tank_that_takes_it_below_the_limit() -> None:
    tank, late = rung("tank", Role.TANK, 4e5), rung("spill", Role.EXPANSION_RELIEF, 6e5)
    valve = rung("relief", Role.SAFETY_RELIEF, 5e5)
    (one,) = breaches("heat-soak", with_heater(replace(SOAKING, ladder=(tank, valve, late))))
    assert one.text.endswith("gal; tank takes it.")
    assert one.advice == "Nothing need be done while tank can take it."
    (one,) = breaches("heat-soak", with_heater(replace(SOAKING, ladder=(valve, late))))
    assert "; nothing below the limit takes it" in one.text
