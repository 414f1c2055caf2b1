import math
from dataclasses import replace

import pytest
from CoolProp.CoolProp import PropsSI
from hypothesis import assume, given
from hypothesis import strategies as st

from plumbnet.physics.fluids.expansion import growth
from plumbnet.physics.fluids.water import (
    ATMOSPHERE_PA,
    HIGHEST_PA,
    OutsideWater,
    compressibility_per_pa,
    expansivity_per_k,
    heat_capacity_j_kg_k,
    saturation_abs_pa,
    specific_volume_m3_kg,
)
from plumbnet.physics.vessels.locked_volume import Climb, LockedVolume, discharged_m3, locked_rise_k
from plumbnet.physics.vessels.walls import Shell, heater_shell

RELIEF_ABS_PA = 150 * 6894.757 + ATMOSPHERE_PA
HOT_K = 373.15
HEATER = LockedVolume(heated=heater_shell(0.18927), cold_k=283.15, start_abs_pa=5.15e5)

softness = st.floats(0.0, 3e-9)
shells = st.builds(Shell, st.floats(0.01, 2.0), softness, st.floats(0.0, 5e-5))
pipes = st.just(Shell(0.0)) | st.builds(Shell, st.floats(0.0, 1.0), softness, st.floats(0.0, 5e-5))
# From 10 degC on water grows faster than any wall here, so that each kelvin lifts the pressure.
zones = st.builds(
    LockedVolume, heated=shells, unheated=pipes, cold_k=st.floats(283.15, 300.0), start_abs_pa=st.floats(1.5e5, 1e6)
)
rises = st.floats(0.5, 50.0)


def rise_k(zone: LockedVolume, opens_abs_pa: float, *, hot_k: float = HOT_K) -> float:
    return locked_rise_k(Climb(zone, opens_abs_pa, hot_k))


def let_out_m3(zone: LockedVolume, hot_k: float, opens_abs_pa: float) -> float:
    return discharged_m3(Climb(zone, opens_abs_pa, hot_k))


def independent_abs_pa(zone: LockedVolume, temperature_k: float) -> float:
    """The same balance by IAPWS-95 and by halving."""

    def fits(hot_k: float, pressure: float) -> float:
        over = pressure - zone.start_abs_pa
        mass = 0.0
        for shell, t in ((zone.heated, hot_k), (zone.unheated, zone.cold_k)):
            room = 1 + shell.expansion_per_k * (t - zone.cold_k) + shell.compliance_per_pa * over
            mass += shell.volume_m3 * room * PropsSI("D", "T", t, "P", pressure, "Water")
        return mass

    water = fits(zone.cold_k, zone.start_abs_pa)
    below, above = zone.start_abs_pa, 2e8
    for _ in range(60):
        middle = (below + above) / 2
        below, above = (middle, above) if fits(temperature_k, middle) < water else (below, middle)
    return below


@pytest.mark.parametrize("unheated", [Shell(0.0), Shell(0.05, 3e-10, 5e-5)])
@pytest.mark.parametrize("softness", [0.0, 3e-10, 1.267e-9])
@pytest.mark.parametrize(("cold_k", "hot_k"), [(278.15, 298.15), (283.15, 333.15), (293.15, 353.15)])
def test_locked_pressure_agrees_with_an_independent_balance(
    cold_k: float, hot_k: float, softness: float, unheated: Shell
) -> None:
    zone = LockedVolume(heated=Shell(0.2, softness, 36e-6), unheated=unheated, cold_k=cold_k, start_abs_pa=5e5)
    assert rise_k(zone, independent_abs_pa(zone, hot_k)) == pytest.approx(hot_k - cold_k, rel=6e-3)


@given(zone=zones, more_pa=st.floats(1e4, 5e6))
def test_rigid_walls_and_no_pipes_are_water_at_constant_volume(zone: LockedVolume, more_pa: float) -> None:
    alone, opens = replace(zone.rigid, unheated=Shell(0.0)), zone.start_abs_pa + more_pa
    start = specific_volume_m3_kg(zone.cold_k, pressure_abs_pa=zone.start_abs_pa)
    end = specific_volume_m3_kg(zone.cold_k + rise_k(alone, opens), pressure_abs_pa=opens)
    assert end == pytest.approx(start, rel=1e-11)


@given(zone=zones, more_pa=st.floats(1e4, 5e6), further_pa=st.floats(1e4, 5e6))
def test_more_pressure_takes_more_warmth(zone: LockedVolume, more_pa: float, further_pa: float) -> None:
    low, high = (rise_k(zone, zone.start_abs_pa + each) for each in (more_pa, more_pa + further_pa))
    assert 0.0 < low < high or low == high == math.inf


@given(zone=zones, more_pa=st.floats(1e4, 5e6))
def test_rigid_walls_reach_a_pressure_first(zone: LockedVolume, more_pa: float) -> None:
    rigid, walls = (rise_k(each, zone.start_abs_pa + more_pa) for each in (zone.rigid, zone))
    assert 0 < rigid <= walls


@given(zone=zones, more_pa=st.floats(1e4, 5e6))
def test_the_rise_leaves_no_room_and_a_little_less_leaves_some(zone: LockedVolume, more_pa: float) -> None:
    climb = Climb(zone, zone.start_abs_pa + more_pa, HOT_K)
    assume(math.isfinite(locked_rise_k(climb)))
    assert climb.room_left_kg(zone.cold_k + locked_rise_k(climb)) <= 0.0
    assert climb.room_left_kg(zone.cold_k + locked_rise_k(climb) - 1e-6) > 0.0


@given(zone=zones, warmer_k=rises, opens_pa=st.floats(0.0, 5e6))
def test_what_is_let_out_is_expansion_less_what_walls_and_compression_take(
    zone: LockedVolume, warmer_k: float, opens_pa: float
) -> None:
    zone = replace(zone, unheated=Shell(0.0))
    hot_k, opens = zone.cold_k + warmer_k, zone.start_abs_pa + opens_pa
    volume = zone.heated.volume_m3
    expansion = volume * growth(zone.cold_k, hot_k, pressure_abs_pa=zone.start_abs_pa)
    at_start, at_opening = (specific_volume_m3_kg(hot_k, pressure_abs_pa=p) for p in (zone.start_abs_pa, opens))
    compression = (volume + expansion) * (1 - at_opening / at_start)
    walls = zone.heated.room_m3(rise_k=warmer_k, rise_pa=opens_pa) - volume
    found = let_out_m3(zone, hot_k, opens)
    assert found >= 0.0
    assert found == pytest.approx(max(0.0, expansion - compression - walls), rel=1e-9, abs=1e-12)


@given(zone=zones, opens_pa=st.floats(1e4, 5e6), share=st.floats(0.0, 1.0))
def test_nothing_is_let_out_before_the_outlet_opens(zone: LockedVolume, opens_pa: float, share: float) -> None:
    opens = zone.start_abs_pa + opens_pa
    lifts_k = zone.cold_k + rise_k(zone, opens)
    assume(math.isfinite(lifts_k) and saturation_abs_pa(lifts_k + 1.0) < opens)
    assert let_out_m3(zone, zone.cold_k + share * (lifts_k - zone.cold_k) * 0.999, opens) == 0.0
    assert let_out_m3(zone, lifts_k + 1.0, opens) > 0.0


@given(zone=zones, warmer_k=rises, opens_pa=st.floats(1e4, 5e6))
def test_a_higher_outlet_lets_out_no_more(zone: LockedVolume, warmer_k: float, opens_pa: float) -> None:
    low, high = (
        let_out_m3(zone, zone.cold_k + warmer_k, zone.start_abs_pa + more_pa) for more_pa in (opens_pa, 1.1 * opens_pa)
    )
    assert high <= low


def test_cold_pipes_that_share_the_pressure_soften_the_rise() -> None:
    piped = replace(HEATER, unheated=Shell(0.02, 3e-10, 5e-5))
    assert rise_k(piped, RELIEF_ABS_PA) > rise_k(HEATER, RELIEF_ABS_PA)


def test_a_fill_colder_than_4_degc_loses_pressure_before_it_gains() -> None:
    zone = LockedVolume(heated=Shell(0.2), cold_k=274.15, start_abs_pa=5e5)
    assert Climb(zone, 5e5, HOT_K).room_left_kg(276.15) > 0.0
    assert rise_k(zone, 6e5) > 5.0


def test_a_pressure_that_stands_from_the_start_needs_no_rise() -> None:
    assert rise_k(HEATER, HEATER.start_abs_pa) == 0.0
    assert rise_k(HEATER, 1e5) == 0.0


def test_water_that_is_hot_before_no_outlet_lifts() -> None:
    lifts_k = HEATER.cold_k + rise_k(HEATER, RELIEF_ABS_PA)
    assert rise_k(HEATER, RELIEF_ABS_PA, hot_k=lifts_k - 0.1) == math.inf
    assert rise_k(HEATER, RELIEF_ABS_PA, hot_k=HEATER.cold_k) == math.inf


def test_tanks_that_take_all_that_grows_put_off_the_rise_and_what_is_let_out() -> None:
    plain = Climb(HEATER, RELIEF_ABS_PA, 333.15)
    tank = replace(plain, taken_m3=discharged_m3(plain) / 2.0)
    assert discharged_m3(tank) == pytest.approx(discharged_m3(plain) / 2.0, rel=1e-9)
    assert locked_rise_k(tank) > locked_rise_k(plain)
    assert locked_rise_k(replace(plain, taken_m3=discharged_m3(plain) * 1.001)) == math.inf


@given(zone=zones)
def test_a_pressure_a_rounding_above_the_start_needs_next_to_no_rise(zone: LockedVolume) -> None:
    assert rise_k(zone, math.nextafter(zone.start_abs_pa, math.inf)) == pytest.approx(0.0, abs=1e-6)


def test_a_closed_heater_lifts_its_relief_valve_within_a_few_kelvin() -> None:
    climb = Climb(HEATER, RELIEF_ABS_PA, HOT_K)
    # By hand, 620 kPa times 0.478 (and 1.267) per GPa against expansivity of 88e-6 at 10 degC and 13e-6 more a kelvin.
    assert locked_rise_k(climb.rigid) == pytest.approx(2.75, abs=0.1)
    assert locked_rise_k(climb) == pytest.approx(9.65, abs=0.2)


def test_the_exact_rise_tends_to_the_handbook_form() -> None:
    """API 521 (2007) and ISO 23251, 5.14.4, without leakage: what grows over what yields."""
    zone = LockedVolume(heated=Shell(0.2, 1.267e-9, 36e-6), cold_k=298.15, start_abs_pa=5e5)
    middle = {"temperature_k": 298.2, "pressure_abs_pa": 5e5}
    grows_per_k = expansivity_per_k(**middle) - 36e-6
    by_hand_pa = 0.1 * grows_per_k / (compressibility_per_pa(**middle) + 1.267e-9)
    assert rise_k(zone, 5e5 + by_hand_pa) == pytest.approx(0.1, rel=1e-3)


def test_firing_is_mass_times_heat_over_what_reaches_the_water() -> None:
    mass = HEATER.heated.volume_m3 / specific_volume_m3_kg(283.15, pressure_abs_pa=5.15e5)
    heat = heat_capacity_j_kg_k(288.15, pressure_abs_pa=5.15e5)
    assert HEATER.firing_s(10.0, input_w=12e3, efficiency=0.8) == pytest.approx(mass * heat * 10 / 9600, rel=1e-12)
    piped = replace(HEATER, unheated=Shell(0.1))
    assert piped.firing_s(10.0, input_w=12e3, efficiency=0.8) == HEATER.firing_s(10.0, input_w=12e3, efficiency=0.8)


@pytest.mark.parametrize(("input_w", "efficiency"), [(0.0, 0.8), (1e4, 0.0), (-1.0, 0.8), (math.nan, 1.0)])
def test_a_burner_that_gives_nothing_is_refused(input_w: float, efficiency: float) -> None:
    with pytest.raises(ValueError, match=r"^a burner of .* W at an efficiency of .* heats nothing$"):
        HEATER.firing_s(10.0, input_w=input_w, efficiency=efficiency)


@pytest.mark.parametrize(("cold_k", "start_abs_pa"), [(373.15, 5e4), (283.15, 0.0), (283.15, 2e8), (283.15, math.nan)])
def test_a_start_that_is_no_liquid_water_is_refused(cold_k: float, start_abs_pa: float) -> None:
    with pytest.raises(OutsideWater) as refused:
        LockedVolume(heated=Shell(0.2), cold_k=cold_k, start_abs_pa=start_abs_pa)
    assert str(refused.value) == f"{start_abs_pa:g} Pa absolute at {cold_k:g} K is no liquid water"


def test_pipes_that_stay_cold_keep_their_width() -> None:
    zone = LockedVolume(heated=Shell(0.2, 0.0, 36e-6), unheated=Shell(0.1, 0.0, 5e-5), cold_k=283.15, start_abs_pa=5e5)
    per_m3 = 1.0 / specific_volume_m3_kg(283.15, pressure_abs_pa=5e5)
    assert zone.water_kg == pytest.approx(0.3 * per_m3, rel=1e-12)


def test_half_a_watt_heats_as_twelve_kilowatts_do_in_24_000_times_the_time() -> None:
    fast, slow = (HEATER.firing_s(10.0, input_w=watts, efficiency=0.8) for watts in (12e3, 0.5))
    assert slow == pytest.approx(24_000 * fast, rel=1e-12)


def test_pressures_past_the_formulation_are_refused() -> None:
    with pytest.raises(OutsideWater, match=r"^2e\+08 Pa absolute is outside 0 to 100 MPa$"):
        rise_k(HEATER, 2e8)


def test_water_may_be_locked_in_at_the_highest_pressure_known() -> None:
    pressed = LockedVolume(heated=Shell(0.2), cold_k=283.15, start_abs_pa=HIGHEST_PA)
    assert rise_k(pressed, HIGHEST_PA) == 0.0
