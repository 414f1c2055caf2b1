import math
from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from plumbnet.physics.vessels.tank import NoTank, Tank, nominal_size_m3, nominal_sizes, settled_abs_pa, tank_volume_m3

BAR = 1e5
GALLON_M3 = 231 * 0.0254**3


@st.composite
def zones(draw: st.DrawFn) -> list[Tank]:
    """One to five tanks of one zone, at one height or at several."""
    start = draw(st.floats(2e5, 1e6))
    heads = st.sampled_from([0.0, 0.0, 3e4, -5e4]) | st.floats(-2e5, 2e5)
    tanks = []
    for _ in range(draw(st.integers(1, 5))):
        volume = draw(st.floats(0.005, 5.0))
        share = draw(st.none() | st.floats(0.0, 1.0))
        most = None if share is None else share * volume
        tanks.append(Tank(volume, draw(st.floats(1e5, 1.2e6)), start, most, draw(heads)))
    return tanks


def water_m3(tank: Tank, pressure_abs_pa: float) -> float:
    """Boyle's law once more, from the gas that is left."""
    gas = tank.charge_abs_pa * tank.volume_m3 / max(tank.charge_abs_pa, pressure_abs_pa - tank.head_pa)
    return min(tank.volume_m3 - gas, math.inf if tank.most_m3 is None else tank.most_m3)


def taken_m3(tanks: list[Tank], pressure_abs_pa: float) -> float:
    return sum(water_m3(tank, pressure_abs_pa) - water_m3(tank, tank.start_abs_pa) for tank in tanks)


def bisected_pa(expansion_m3: float, tanks: list[Tank]) -> float:
    below, above = tanks[0].start_abs_pa, 1e13
    while above - below > 1e-12 * above:
        middle = (below + above) / 2
        below, above = (below, middle) if taken_m3(tanks, middle) >= expansion_m3 else (middle, above)
    return above


def test_a_doubled_pressure_takes_half_of_the_tank() -> None:
    assert tank_volume_m3(1.0, charge_abs_pa=BAR, start_abs_pa=BAR, end_abs_pa=2 * BAR) == 2.0


def test_a_start_below_the_charge_counts_from_the_charge() -> None:
    low, level = (tank_volume_m3(0.01, charge_abs_pa=4e5, start_abs_pa=start, end_abs_pa=6e5) for start in (3e5, 4e5))
    assert low == level


def test_a_charge_below_the_start_wants_a_larger_tank() -> None:
    weak, right = (
        tank_volume_m3(0.01, charge_abs_pa=charge, start_abs_pa=4e5, end_abs_pa=6e5) for charge in (3e5, 4e5)
    )
    assert weak == pytest.approx(right * 4 / 3)


@pytest.mark.parametrize(
    ("charge", "start", "end"),
    [
        (4e5, 4e5, 4e5),
        (4e5, 4e5, 3e5),
        (5e5, 4e5, 5e5),
        (3e5, 6e5, 5e5),
        # an end that only rounding lifts above the start, where the gas gives way by nothing or by next to nothing
        (101325.0, 516063.3, math.nextafter(516063.3, math.inf)),
        (4e5, 4e5, 4e5 + 1e-4),
    ],
)
def test_no_tank_serves_a_limit_at_or_below_the_start(charge: float, start: float, end: float) -> None:
    with pytest.raises(NoTank):
        tank_volume_m3(0.01, charge_abs_pa=charge, start_abs_pa=start, end_abs_pa=end)


def test_no_tank_says_what_to_do_first() -> None:
    with pytest.raises(NoTank) as refused:
        tank_volume_m3(0.01, charge_abs_pa=5e5, start_abs_pa=4e5, end_abs_pa=4.5e5)
    assert str(refused.value) == (
        "no tank can do this: it would begin at 500.0 kPa absolute and must end at 450.0 kPa; "
        "lower the static pressure first"
    )


@pytest.mark.parametrize("charge", [0.0, -1.0, math.nan])
def test_a_charge_that_is_no_pressure_is_refused(charge: float) -> None:
    with pytest.raises(ValueError, match=r"^a charge of \S+ Pa absolute is no pressure$"):
        Tank(0.1, charge, 4e5)
    with pytest.raises(ValueError, match=r"^a charge of \S+ Pa absolute is no pressure$"):
        tank_volume_m3(0.1, charge_abs_pa=charge, start_abs_pa=4e5, end_abs_pa=5e5)


def test_a_charge_of_less_than_a_pascal_is_still_a_pressure() -> None:
    assert tank_volume_m3(0.1, charge_abs_pa=0.5, start_abs_pa=0.5, end_abs_pa=1.0) == pytest.approx(0.2)


def test_the_tank_of_the_formula_settles_at_its_end() -> None:
    volume = tank_volume_m3(0.0032, charge_abs_pa=4e5, start_abs_pa=5e5, end_abs_pa=6.5e5)
    assert settled_abs_pa(0.0032, [Tank(volume, 4e5, 5e5)]) == pytest.approx(6.5e5, rel=1e-12)


def test_a_tank_charged_above_the_start_waits_until_its_charge() -> None:
    tank = Tank(0.02, 5e5, 4e5)
    assert (tank.opens_abs_pa, tank.held_at_start_m3, tank.uptake_m3(5e5)) == (5e5, 0.0, 0.0)
    assert tank.uptake_m3(6e5) == pytest.approx(0.02 / 6)


def test_a_tank_upstairs_feels_less_than_the_datum_pressure() -> None:
    above = Tank(0.02, 3e5, 4e5, head_pa=1e5)
    assert above.opens_abs_pa == 4e5
    assert above.held_at_start_m3 == 0.0
    assert above.uptake_m3(7e5) == pytest.approx(0.01)


def test_the_membrane_bounds_what_a_tank_takes() -> None:
    tank = Tank(0.2, 2e5, 2.5e5, most_m3=0.1)
    assert tank.full_abs_pa == pytest.approx(4e5)
    assert tank.uptake_m3(9e5) == pytest.approx(0.1 - 0.04)


def test_a_waterlogged_tank_takes_nothing() -> None:
    tank = Tank(0.2, 2e5, 2.5e5, most_m3=0.0)
    assert (tank.uptake_m3(9e5), settled_abs_pa(0.001, [tank])) == (0.0, None)


def test_a_full_membrane_takes_its_last_drop_and_no_more() -> None:
    tank = Tank(0.2, 2e5, 2e5, most_m3=0.1)
    assert settled_abs_pa(0.1, [tank]) == pytest.approx(4e5, rel=1e-12)
    assert settled_abs_pa(0.1 + 1e-12, [tank]) is None


def test_nothing_to_take_up_settles_at_the_start() -> None:
    assert settled_abs_pa(0.0, [Tank(0.02, 5e5, 4e5)]) == 4e5


def test_without_a_tank_nothing_settles() -> None:
    assert settled_abs_pa(0.001, []) is None
    assert settled_abs_pa(0.0, []) is None


def test_more_water_than_the_shells_hold_never_settles() -> None:
    assert settled_abs_pa(0.3, [Tank(0.1, 2e5, 2e5), Tank(0.2, 3e5, 2e5)]) is None


def test_a_second_tank_waits_for_its_charge() -> None:
    #  p  2 bar ---- first alone ---- 4 bar ---- both ----
    first, second = Tank(0.1, 2e5, 2e5), Tank(0.1, 4e5, 2e5)
    assert settled_abs_pa(0.05, [first, second]) == pytest.approx(4e5, rel=1e-12)
    assert settled_abs_pa(0.125, [first, second]) == pytest.approx(8e5, rel=1e-12)


def test_a_full_first_tank_leaves_the_rest_to_the_second() -> None:
    #  p  2 bar -- first, full at 3 bar -- pause -- 4 bar -- second alone --
    first, second = Tank(0.12, 2e5, 2e5, most_m3=0.04), Tank(0.1, 4e5, 2e5)
    assert settled_abs_pa(0.04, [first, second]) == pytest.approx(3e5, rel=1e-12)
    assert settled_abs_pa(0.09, [first, second]) == pytest.approx(8e5, rel=1e-12)


def test_tanks_on_two_floors_settle_where_the_quadratic_says() -> None:
    # 0.1 (1 - 2/p) + 0.1 (1 - 2/(p - 1)) = 0.1  ->  p^2 - 5 p + 2 = 0, p in bar
    pair = [Tank(0.1, 2e5, 2e5), Tank(0.1, 2e5, 2e5, head_pa=1e5)]
    assert settled_abs_pa(0.1, pair) == pytest.approx((5 + math.sqrt(17)) / 2 * BAR, rel=1e-12)


@given(zones(), st.floats(1e-3, 1.2))
def test_uptakes_at_the_settled_pressure_add_up_to_the_expansion(zone: list[Tank], share: float) -> None:
    expansion = share * sum(tank.volume_m3 for tank in zone)
    settled = settled_abs_pa(expansion, zone)
    assume(settled is not None)
    assert settled is not None
    assert sum(tank.uptake_m3(settled) for tank in zone) == pytest.approx(expansion, rel=1e-9)
    assert taken_m3(zone, settled) == pytest.approx(expansion, rel=1e-9)


@given(zones(), st.floats(1e-3, 1.2))
def test_tanks_settle_exactly_when_they_have_room(zone: list[Tank], share: float) -> None:
    expansion = share * sum(tank.volume_m3 for tank in zone)
    room = taken_m3(zone, math.inf)
    assume(abs(expansion - room) > 1e-8 * expansion)
    assert (settled_abs_pa(expansion, zone) is None) == (expansion > room)


@given(zones(), st.floats(1e-3, 1.2))
def test_bisection_finds_the_same_pressure(zone: list[Tank], share: float) -> None:
    expansion = share * sum(tank.volume_m3 for tank in zone)
    settled = settled_abs_pa(expansion, zone)
    assume(settled is not None and settled < 1e9)
    assert settled == pytest.approx(bisected_pa(expansion, zone), rel=1e-9)


@given(zones().flatmap(lambda zone: st.tuples(st.just(zone), st.permutations(zone))), st.floats(0.0, 1.2))
def test_the_order_of_tanks_does_not_matter(both: tuple[list[Tank], list[Tank]], share: float) -> None:
    zone, shuffled = both
    expansion = share * sum(tank.volume_m3 for tank in zone)
    assert settled_abs_pa(expansion, zone) == settled_abs_pa(expansion, shuffled)


@given(zones(), st.floats(1e-3, 1.2), st.floats(1.0, 10.0))
def test_a_bigger_tank_never_settles_higher(zone: list[Tank], share: float, factor: float) -> None:
    expansion = share * sum(tank.volume_m3 for tank in zone)
    first = zone[0]
    most = None if first.most_m3 is None else first.most_m3 * factor
    bigger = [replace(first, volume_m3=first.volume_m3 * factor, most_m3=most), *zone[1:]]
    before, after = settled_abs_pa(expansion, zone), settled_abs_pa(expansion, bigger)
    assume(before is not None)
    assert before is not None
    assert after is not None
    assert after <= before * (1 + 1e-9)


@given(zones(), st.floats(1e-3, 1.2), st.floats(0.0, 1.0))
def test_less_water_never_settles_higher(zone: list[Tank], share: float, part: float) -> None:
    expansion = share * sum(tank.volume_m3 for tank in zone)
    whole, less = settled_abs_pa(expansion, zone), settled_abs_pa(expansion * part, zone)
    assume(whole is not None)
    assert whole is not None
    assert less is not None
    assert less <= whole * (1 + 1e-12)


def test_the_next_size_up_is_taken() -> None:
    sizes = (0.008, 0.012, 0.02)
    assert [nominal_size_m3(need, sizes) for need in (0.0, 0.008, 0.0081, 0.02)] == [0.008, 0.008, 0.012, 0.02]


def test_a_need_above_the_largest_size_has_none() -> None:
    assert nominal_size_m3(0.0201, (0.008, 0.012, 0.02)) is None


def test_a_need_that_rounding_lifts_above_a_size_keeps_it() -> None:
    assert nominal_size_m3(0.02 * (1 + 1e-12), (0.008, 0.02, 0.03)) == 0.02


def test_us_sizes_are_whole_gallons() -> None:
    sizes = nominal_sizes("us")
    assert [round(size / GALLON_M3, 9) for size in sizes[:4]] == [2, 3, 5, 8]
    assert sizes[-1] == pytest.approx(3.785411784, rel=1e-12)


@pytest.mark.parametrize(("units", "count"), [("us", 19), ("metric", 15)])
def test_sizes_ascend(units: str, count: int) -> None:
    sizes = nominal_sizes("us") if units == "us" else nominal_sizes("metric")
    assert len(sizes) == count
    assert all(small < large for small, large in pairwise(sizes))


@pytest.mark.parametrize("head_pa", [-662_794.8, -5e5, -2e5, 0.0])
def test_tank_high_above_datum_settles_though_the_pressure_at_datum_is_below_nothing(head_pa: float) -> None:
    tank = Tank(0.2, charge_abs_pa=2e5, start_abs_pa=2.5e5 + head_pa, head_pa=head_pa)
    settled = settled_abs_pa(0.04, [tank])  # 0.16 m3 of gas at the start, 0.12 m3 in the end
    assert settled is not None
    assert settled - head_pa == pytest.approx(2e5 * 0.2 / 0.12, rel=1e-9)


def test_tank_far_higher_than_any_pressure_settles_where_rounding_leaves_no_step() -> None:
    """At 100 km its head is so large that the last digit of the pressure at datum is worth more than the gas needs."""
    tank = Tank(0.09007684513861831, 984_036.0415521605, start_abs_pa=980_766_325.0, head_pa=980_665_000.0)
    room_m3 = 0.08879827288017231
    settled = settled_abs_pa(tank.volume_m3 - room_m3, [tank])
    assert settled is not None
    assert settled - tank.head_pa == pytest.approx(tank.charge_abs_pa * tank.volume_m3 / room_m3, rel=1e-6)
