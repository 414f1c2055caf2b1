import pytest

from plumbnet.physics.tank import nominal_sizes
from plumbnet.study.exercise import usual

GALLON = 0.003785411784
HOUSE_LIMIT_PSI = 80


def test_tanks_are_of_the_round_series() -> None:
    for size in usual.TANK_SIZES_GAL:
        assert any(abs(size * GALLON - known) < 1e-9 for known in nominal_sizes("us")), size


def test_low_and_high_mains_lie_on_either_side_of_what_taps_may_have() -> None:
    assert max(usual.MAINS_PSI) < HOUSE_LIMIT_PSI < min(usual.HIGH_MAINS_PSI)
    assert max(usual.REDUCER_SETS_PSI) < HOUSE_LIMIT_PSI


@pytest.mark.parametrize("input_btu_h", [30_000, 76_000, 120_000, 199_000])
def test_relief_valve_carries_off_more_than_the_burner_gives(input_btu_h: int) -> None:
    assert usual.capacity_btu_h(input_btu_h) >= input_btu_h


def test_a_heater_fires_at_a_rate_that_goes_with_its_size() -> None:
    for heater in (*usual.STORAGE_HEATERS, *usual.LARGE_STORAGE_HEATERS):
        assert 500 <= heater.input_btu_h / heater.gallons <= 2_500
