"""Zones, tanks and gates to pressures: cases drawn by hand, and the conditions that every settled state meets."""

import math
from collections.abc import Collection, Iterable, Mapping
from random import Random

import networkx as nx
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from networkx.algorithms.flow import preflow_push
from oracles.random_zones import Gate, Zones, zones

from plumbnet.physics.equilibrium.equilibrium import (
    OneWayGate,
    Pool,
    Shortage,
    ZoneLoad,
    settle,
    settle_safely,
    shortage,
)
from plumbnet.physics.vessels.tank import Tank

EXAMPLES = settings(max_examples=80, deadline=None, derandomize=True, database=None)
LEVEL = st.sampled_from([210e3, 300e3, 350e3, 430e3, 560e3, 900e3, 2e6])
CLOSE = 1e-9  # of a pressure: what rounding leaves of a common level
CLOSE_M3 = 1e-11  # of volumes near ten litres


def levels(loads: dict[str, ZoneLoad], gates: Iterable[Gate] = ()) -> dict[str, float]:
    """Pressure of each zone, absolute, in kPa to nine places."""
    return {zone: round(pool.pressure_abs_pa / 1e3, 9) for pool in settle(loads, list(gates)) for zone in pool.zones}


def short(loads: Mapping[str, ZoneLoad], gates: Iterable[Gate], level: float) -> list[Shortage[str]]:
    """What is short in each pool that settles above a level."""
    pools = settle(loads, list(gates))
    return [shortage(loads, pool.zones, level) for pool in pools if pool.pressure_abs_pa > level]


def zone(
    grows: float = 0.0, *tanks: Tank, static: float = 200e3, outlet: float = math.inf, heater: str = "h"
) -> ZoneLoad:
    """A zone whose heated water grows by some cubic metres."""
    return ZoneLoad({heater: grows} if grows else {}, static, tanks, outlet)


def tank(volume: float = 0.1, *, charge: float = 200e3, start: float = 200e3, most: float | None = None) -> Tank:
    return Tank(volume, charge, start, most)


# Boyle by head: a tank of 0.1 m3 charged to 200 kPa has taken 0.05 m3 at 400 kPa and 0.075 m3 at 800 kPa.


def test_water_passes_a_gate_to_the_tank_beyond() -> None:
    # heater (0.05) >| tank
    loads = {"heater": zone(0.05), "tank": zone(0.0, tank())}
    assert levels(loads, [OneWayGate("heater", "tank")]) == {"heater": 400.0, "tank": 400.0}


def test_no_water_passes_a_gate_against_it() -> None:
    # heater (0.05) |< tank
    loads = {"heater": zone(0.05), "tank": zone(0.0, tank())}
    assert levels(loads, [OneWayGate("tank", "heater")]) == {"heater": math.inf, "tank": 200.0}


def test_zone_without_growth_keeps_its_static_pressure() -> None:
    # heater (0.05, tank) |< quiet (no tank), at another pressure of its own
    loads = {"heater": zone(0.05, tank()), "quiet": zone(static=150e3)}
    assert levels(loads, [OneWayGate("quiet", "heater")]) == {"heater": 400.0, "quiet": 150.0}


def test_zone_without_growth_is_pressed_up_by_the_one_that_pushes_into_it() -> None:
    # heater (0.05, tank) >| dead end
    loads = {"heater": zone(0.05, tank()), "end": zone()}
    assert levels(loads, [OneWayGate("heater", "end")]) == {"heater": 400.0, "end": 400.0}


def test_three_pools_are_peeled_from_the_top() -> None:
    # high (0.075, tank) |< middle (0.05, tank) |< low (0.02, tank)
    loads = {"high": zone(0.075, tank()), "middle": zone(0.05, tank()), "low": zone(0.02, tank())}
    gates = [OneWayGate("low", "middle"), OneWayGate("middle", "high")]
    assert levels(loads, gates) == {"high": 800.0, "middle": 400.0, "low": pytest.approx(250.0)}
    assert [pool.zones for pool in settle(loads, gates)] == [{"high"}, {"middle"}, {"low"}]


def test_the_other_way_round_the_three_are_one_pool() -> None:
    # high (0.075, tank) >| middle (0.05, tank) >| low (0.025, tank): 0.15 into 0.3
    loads = {"high": zone(0.075, tank()), "middle": zone(0.05, tank()), "low": zone(0.025, tank())}
    gates = [OneWayGate("high", "middle"), OneWayGate("middle", "low")]
    (pool,) = settle(loads, gates)
    assert pool.zones == {"high", "middle", "low"}
    assert pool.pressure_abs_pa == pytest.approx(400e3)


def test_zones_that_settle_alike_by_chance_are_no_pool() -> None:
    # twin (0.05, tank)    twin (0.05, tank), each behind its check from a common pipe
    loads = {"one": zone(0.05, tank()), "pipe": zone(), "two": zone(0.05, tank())}
    pools = settle(loads, [OneWayGate("pipe", "one"), OneWayGate("pipe", "two")])
    assert {(*pool.zones, pool.pressure_abs_pa) for pool in pools} == {("one", 4e5), ("two", 4e5), ("pipe", 2e5)}


def test_tank_on_the_roof_takes_less_than_one_in_the_cellar() -> None:
    # Water at the upper tank stands 100 kPa lower: it is charged to 100 kPa and has 200 kPa when datum has 300.
    high = Tank(0.1, charge_abs_pa=100e3, start_abs_pa=200e3, head_pa=100e3)
    assert levels({"heater": zone(0.05, high)}) == {"heater": 300.0}
    # The same tank at datum would have given way from 100 kPa gas to 200 kPa already; at 400 kPa it has taken 0.025.
    assert levels({"heater": zone(0.025, tank(charge=100e3))}) == {"heater": pytest.approx(400.0)}


def test_overcharged_tank_takes_nothing_until_its_charge_is_reached() -> None:
    # Charge 400 kPa over 200 kPa static: at 800 kPa it has taken half.
    assert levels({"heater": zone(0.05, tank(charge=400e3))}) == {"heater": 800.0}
    # Beside a tank that takes at once and does it alone below 400 kPa, it stays empty.
    both = zone(0.04, tank(), tank(charge=400e3))
    assert levels({"heater": both}) == {"heater": pytest.approx(200 / 0.6)}


def test_tanks_of_different_charges_share_as_boyle_says() -> None:
    # 0.1 - 20e3/p and 0.1 - 40e3/p: 0.2 - 60e3/p = 0.08 at p = 500 kPa
    assert levels({"heater": zone(0.08, tank(), tank(charge=400e3))}) == {"heater": pytest.approx(500.0)}


def test_tank_that_reaches_its_acceptance_locks() -> None:
    # The small one lets in 0.02 (at 250 kPa); the rest, 0.05, goes to the other.
    assert levels({"heater": zone(0.07, tank(), tank(most=0.02))}) == {"heater": 400.0}
    assert levels({"heater": zone(0.03, tank(most=0.02))}) == {"heater": math.inf}


def test_acceptance_may_be_used_to_the_last_drop() -> None:
    assert levels({"heater": zone(0.02, tank(most=0.02))}) == {"heater": 250.0}


def test_outlet_caps_the_pressure_and_discharges_the_rest() -> None:
    # Tank takes 0.05 by 400 kPa, where the outlet opens; 0.025 is let off.
    (pool,) = settle({"heater": zone(0.075, tank(), outlet=400e3)}, [])
    assert pool.pressure_abs_pa == 400e3
    assert pool.discharged_m3 == pytest.approx(0.025)


def test_outlet_that_need_not_open_discharges_nothing() -> None:
    (pool,) = settle({"heater": zone(0.05, tank(), outlet=500e3)}, [])
    assert (pool.pressure_abs_pa, pool.discharged_m3) == (400e3, 0.0)


def test_outlet_below_the_static_pressure_holds_it_there() -> None:
    (pool,) = settle({"heater": zone(0.05, outlet=150e3)}, [])
    assert (pool.pressure_abs_pa, pool.discharged_m3) == (200e3, 0.05)


def test_outlet_beyond_a_gate_caps_too() -> None:
    # heater (0.05) >| spill at 300    and not the other way round
    loads = {"heater": zone(0.05), "spill": zone(outlet=300e3)}
    assert levels(loads, [OneWayGate("heater", "spill")]) == {"heater": 300.0, "spill": 300.0}
    assert levels(loads, [OneWayGate("spill", "heater")]) == {"heater": math.inf, "spill": 200.0}


def test_locked_zone_does_not_lock_its_neighbours() -> None:
    # locked (0.05) |< held (0.05, tank)    and a quiet zone with none of them
    loads = {"locked": zone(0.05), "held": zone(0.05, tank()), "quiet": zone()}
    assert levels(loads, [OneWayGate("held", "locked")]) == {"locked": math.inf, "held": 400.0, "quiet": 200.0}


def test_reducer_lets_water_pass_while_what_lies_beyond_stands_below_its_set() -> None:
    # heater (0.05) >reducer> tank: the tank settles at 400
    loads = {"heater": zone(0.05), "tank": zone(0.0, tank())}
    assert levels(loads, [OneWayGate("heater", "tank", 401e3)]) == {"heater": 400.0, "tank": 400.0}


def test_reducer_shuts_where_it_would_have_to_pass_more_than_its_set() -> None:
    loads = {"heater": zone(0.05), "tank": zone(0.0, tank())}
    gates = [OneWayGate("heater", "tank", 390e3)]
    assert levels(loads, gates) == {"heater": math.inf, "tank": 200.0}


def safe_levels(loads: dict[str, ZoneLoad], gates: list[Gate]) -> dict[str, float]:
    pools = settle_safely(loads, gates).pools
    return {zone: round(pool.pressure_abs_pa / 1e3, 6) for pool in pools for zone in pool.zones}


def test_water_that_a_reducer_lets_through_before_it_shuts_counts_on_both_sides() -> None:
    # heater (0.05) >reducer 320> tank: it may stop the heater, and it may have let the tank come to its set
    loads = {"heater": zone(0.05), "tank": zone(0.0, tank())}
    gates = [OneWayGate("heater", "tank", 320e3)]
    assert safe_levels(loads, gates) == {"heater": math.inf, "tank": 320.0}
    # With a heater of its own beyond, which grows by 0.025 once the other has brought it to 320:
    # 0.1 (1 - 200/p) = 0.0375 + 0.025
    loads["tank"] = zone(0.025, tank(), heater="own")
    assert safe_levels(loads, gates) == {"heater": math.inf, "tank": round(200 / 0.375, 6)}


def test_no_more_passes_a_reducer_than_there_is() -> None:
    # heater (0.01) >reducer 320> own (0.05, tank): 0.06 in all
    loads = {"heater": zone(0.01, tank()), "own": zone(0.05, tank(), heater="own")}
    assert safe_levels(loads, [OneWayGate("heater", "own", 320e3)])["own"] == 500.0


def test_bypass_does_not_let_the_same_water_in_twice() -> None:
    # heater (0.01, tank) >reducer 320, bypass> own (0.05, tank): all in one pool at 200/0.7 were it no reducer
    loads = {"heater": zone(0.01, tank()), "own": zone(0.15, tank(), heater="own")}
    gates = [OneWayGate("heater", "own", 320e3), OneWayGate("own", "heater")]
    assert safe_levels(loads, gates) == {"heater": round(200 / (1 - 0.17 / 0.2), 6), "own": round(200 / 0.15, 6)}


def test_room_behind_a_bypass_is_no_room_beyond_the_reducer() -> None:
    # heater (0.6, tank ten times as large) >reducer 320, bypass> small: it comes to its set and no further
    loads = {"heater": zone(0.6, tank(1.0)), "small": zone(0.0, tank())}
    gates = [OneWayGate("heater", "small", 320e3), OneWayGate("small", "heater")]
    assert safe_levels(loads, gates) == {"heater": 500.0, "small": 320.0}


def test_reducer_that_stays_open_pushes_nothing_in() -> None:
    loads = {"heater": zone(0.05), "tank": zone(0.0, tank())}
    gates = [OneWayGate("heater", "tank", 401e3)]
    settled = settle_safely(loads, gates)
    assert (settled.pools, settled.loads) == (settle(loads, gates), loads)


@EXAMPLES
@given(zones(), st.lists(st.sampled_from([math.inf, 250e3, 330e3, 480e3]), min_size=12, max_size=12))
def test_counting_what_passes_a_reducer_lowers_no_pressure(drawn: Zones, sets: list[float]) -> None:
    gates = [OneWayGate(gate.near, gate.far, below) for gate, below in zip(drawn.gates, sets, strict=False)]
    settled = settle_safely(drawn.loads, gates)
    level = {zone: pool.pressure_abs_pa for pool in settled.pools for zone in pool.zones}
    for pool in settle(drawn.loads, gates):
        assert all(level[zone] >= pool.pressure_abs_pa * (1.0 - CLOSE) for zone in pool.zones)
    for pool in settled.pools:
        gained = math.fsum(settled.loads[zone].gain_m3 for zone in pool.zones)
        taken = math.fsum(
            settled.loads[zone].room_m3(pool.pressure_abs_pa, through_outlet=False) for zone in pool.zones
        )
        if pool.pressure_abs_pa < math.inf:
            assert gained == pytest.approx(taken + pool.discharged_m3, abs=CLOSE_M3)


def test_zones_at_different_static_pressures_meet() -> None:
    # low (200, 0.05) >| high (300, tank from 300): 0.1 (1 - 300/p) = 0.05 at 600
    loads = {"low": zone(0.05), "high": zone(0.0, tank(charge=300e3, start=300e3), static=300e3)}
    assert levels(loads, [OneWayGate("low", "high")]) == {"low": 600.0, "high": 600.0}


def test_zone_at_rest_above_a_level_is_left_in_peace() -> None:
    # low (200, 0.05, tank) >| high (500, at rest)
    loads = {"low": zone(0.05, tank()), "high": zone(static=500e3)}
    assert levels(loads, [OneWayGate("low", "high")]) == {"low": 400.0, "high": 500.0}


def test_nothing_to_settle() -> None:
    assert settle({}, []) == []


# A tank for the one heater that has no other, and a tank both can reach:
#
#     one (0.05) >| common (tank)     two (0.05) >| common
#     one >| own (tank)
#
# Heater by heater to the nearest tank, `one` fills the common one, and `two` has nowhere to go.

BOTH = {
    "one": zone(0.05, heater="one"),
    "two": zone(0.05, heater="two"),
    "common": zone(0.0, tank()),
    "own": zone(0.0, tank()),
}
TO_COMMON_FIRST = [OneWayGate("one", "common"), OneWayGate("one", "own"), OneWayGate("two", "common")]


def left_by_greed(loads: dict[str, ZoneLoad], gates: list[Gate], level: float) -> dict[str, float]:
    """Water that finds no room where each heater in turn fills the nearest tank, then the next."""
    ways: nx.DiGraph[str] = nx.DiGraph()
    ways.add_nodes_from(loads)
    ways.add_edges_from((gate.near, gate.far) for gate in gates)
    room = {name: load.room_m3(level, through_outlet=True) for name, load in loads.items()}
    left: dict[str, float] = {}
    for name, load in loads.items():
        rest = load.expansion_m3
        for reached in nx.single_source_shortest_path_length(ways, name):
            taken = min(rest, room[reached])
            room[reached], rest = room[reached] - taken, rest - taken
        if rest > CLOSE_M3:
            left[name] = rest
    return left


def test_flow_finds_room_where_filling_the_nearest_tank_does_not() -> None:
    assert left_by_greed(BOTH, TO_COMMON_FIRST, 400e3) == {"two": pytest.approx(0.05)}
    assert short(BOTH, TO_COMMON_FIRST, 400e3) == []
    assert set(levels(BOTH, TO_COMMON_FIRST).values()) == {400.0}


def test_smallest_cut_names_who_is_short_and_by_how_much() -> None:
    loads = BOTH | {"two": zone(0.07, heater="two")}
    (one,) = short(loads, TO_COMMON_FIRST, 400e3)
    assert one.zones == {"two", "common"}
    assert one.heaters == {"two"}
    assert one.short_m3 == pytest.approx(0.02)


def test_heaters_short_for_different_reasons_are_told_apart() -> None:
    # lone (0.01)     beyond (0.04) >| pair (0.06, tank)
    loads = {
        "lone": zone(0.01, heater="lone"),
        "pair": zone(0.06, tank(), heater="pair"),
        "beyond": zone(0.04, heater="beyond"),
    }
    shorts = short(loads, [OneWayGate("beyond", "pair")], 400e3)
    assert {one.heaters: one.short_m3 for one in shorts} == {
        frozenset({"lone"}): pytest.approx(0.01),
        frozenset({"pair", "beyond"}): pytest.approx(0.05),
    }


def test_zone_that_only_shares_in_the_pressure_is_short_of_nothing_itself() -> None:
    (one,) = short({"h": zone(0.01), "end": zone()}, [OneWayGate("h", "end")], 400e3)
    assert one.zones == {"h", "end"}
    assert one.heaters == {"h"}


# What every settled state must meet, whatever the method.


def found(drawn: Zones) -> tuple[list[Pool[str]], dict[str, float]]:
    pools = settle(drawn.loads, drawn.gates)
    return pools, {zone: pool.pressure_abs_pa for pool in pools for zone in pool.zones}


@EXAMPLES
@given(zones())
def test_every_zone_is_in_one_pool(drawn: Zones) -> None:
    pools, level = found(drawn)
    assert sum(len(pool.zones) for pool in pools) == len(level) == len(drawn.loads)
    assert [pool.pressure_abs_pa for pool in pools] == sorted((p.pressure_abs_pa for p in pools), reverse=True)


@EXAMPLES
@given(zones())
def test_pressure_never_falls_across_a_gate(drawn: Zones) -> None:
    _, level = found(drawn)
    for gate in drawn.gates:
        assert level[gate.near] <= level[gate.far] * (1.0 + CLOSE)


@EXAMPLES
@given(zones())
def test_no_zone_settles_below_its_static_pressure_or_above_its_outlet(drawn: Zones) -> None:
    _, level = found(drawn)
    for name, load in drawn.loads.items():
        assert load.static_abs_pa <= level[name] <= load.opens_abs_pa


@EXAMPLES
@given(zones())
def test_every_litre_of_a_pool_is_accounted_for(drawn: Zones) -> None:
    pools, _ = found(drawn)
    for pool in pools:
        grown = math.fsum(drawn.loads[name].expansion_m3 for name in pool.zones)
        taken = math.fsum(drawn.loads[name].room_m3(pool.pressure_abs_pa, through_outlet=False) for name in pool.zones)
        if pool.pressure_abs_pa == math.inf:
            assert grown > taken
            assert pool.discharged_m3 == 0.0
        else:
            assert grown == pytest.approx(taken + pool.discharged_m3, abs=CLOSE_M3)


@EXAMPLES
@given(zones())
def test_inside_a_pool_water_comes_to_its_tanks_through_gates_in_their_direction(drawn: Zones) -> None:
    """Each zone's growth reaches room by a flow over the pool's own gates."""
    pools, _ = found(drawn)
    for pool in pools:
        if pool.pressure_abs_pa < math.inf:
            grown = math.fsum(drawn.loads[name].expansion_m3 for name in pool.zones)
            assert flow_m3(drawn, pool.zones, pool.pressure_abs_pa, spare=CLOSE_M3) == pytest.approx(
                grown, abs=CLOSE_M3 * len(pool.zones)
            )


def flow_m3(drawn: Zones, zones_in: Collection[str], level: float, *, spare: float) -> float:
    """Growth that can reach tanks and opened outlets at a level, by another maximum flow than the method's."""
    graph: nx.DiGraph[str] = nx.DiGraph()
    graph.add_nodes_from(("in", "out"))
    for name in zones_in:
        load = drawn.loads[name]
        graph.add_edge("in", name, capacity=load.expansion_m3)
        graph.add_edge(name, "out", capacity=load.room_m3(level, through_outlet=False) + spare)
        if max(load.outlet_abs_pa, load.static_abs_pa) <= level:
            graph.add_edge(name, "out", capacity=1.0)
    graph.add_edges_from((g.near, g.far) for g in drawn.gates if {g.near, g.far} <= set(zones_in))
    return float(nx.maximum_flow_value(graph, "in", "out", flow_func=preflow_push))


@EXAMPLES
@given(zones())
def test_pools_hang_together(drawn: Zones) -> None:
    pools, _ = found(drawn)
    for pool in pools:
        graph: nx.Graph[str] = nx.Graph()
        graph.add_nodes_from(pool.zones)
        graph.add_edges_from((g.near, g.far) for g in drawn.gates if {g.near, g.far} <= pool.zones)
        assert nx.is_connected(graph)


def test_what_is_short_where_an_outlet_lets_the_rest_out_is_that_rest() -> None:
    loads = {"h": zone(0.01, Tank(0.018, charge_abs_pa=200e3, start_abs_pa=200e3), outlet=300e3)}
    (pool,) = settle(loads, [])
    assert pool.pressure_abs_pa == 300e3
    found = shortage(loads, pool.zones, 300e3)
    assert found.short_m3 == pytest.approx(0.01 - 0.018 / 3.0)
    assert found.short_m3 == pytest.approx(pool.discharged_m3)


@EXAMPLES
@given(zones(), LEVEL)
def test_what_is_short_at_a_level_is_what_no_flow_finds_room_for(drawn: Zones, level: float) -> None:
    """The same level asked of a maximum flow by another algorithm: the water left over, and whose it is."""
    _, settled = found(drawn)
    shorts = short(drawn.loads, drawn.gates, level)
    assert {name for one in shorts for name in one.zones} == {name for name, at in settled.items() if at > level}
    growth = math.fsum(load.expansion_m3 for load in drawn.loads.values())
    left = growth - flow_m3(drawn, set(drawn.loads), level, spare=0.0)
    assert math.fsum(one.short_m3 for one in shorts) == pytest.approx(left, abs=CLOSE_M3)
    for one in shorts:
        assert one.heaters == {f"heater in {name}" for name in one.zones if drawn.loads[name].expansion_m3 > 0.0}


@EXAMPLES
@given(zones(), st.randoms(use_true_random=False))
def test_order_of_zones_and_gates_settles_nothing(drawn: Zones, chance: Random) -> None:
    names, gates = list(drawn.loads), list(drawn.gates)
    chance.shuffle(names)
    chance.shuffle(gates)
    _, level = found(drawn)
    _, again = found(Zones({name: drawn.loads[name] for name in names}, tuple(gates)))
    assert again == pytest.approx(level, rel=1e-12)


#   near >- reducer, shut at 4 bar -> far, where a tank takes 0.05 m3 by then and an outlet opens at just that pressure
def test_reducer_lets_through_what_tanks_beyond_take_and_nothing_for_the_outlet_that_opens_at_its_set() -> None:
    tank = Tank(0.1, charge_abs_pa=2e5, start_abs_pa=2e5)
    loads = {"near": ZoneLoad({"h": 0.08}, 2e5), "far": ZoneLoad({}, 2e5, (tank,), outlet_abs_pa=4e5)}
    found = settle_safely(loads, [OneWayGate("near", "far", below_abs_pa=4e5)])
    assert found.loads["far"].pushed_m3 == pytest.approx(0.05)
