"""Which sizes of tank are tried."""

import pytest
from conftest import PSI

from plumbnet.physics.vessels.tank import Tank
from plumbnet.study.remedies.trial_sizes import MOST_TANKS, TrialDuty, sizes_to_try, uptake_m3


def test_duty_is_that_of_the_tank_formula() -> None:
    duty = TrialDuty(0.001, 60 * PSI, 80 * PSI)
    assert duty.least_m3(60 * PSI) == pytest.approx(0.001 * (80 + 14.6959) / 20, rel=1e-5)


def test_no_tank_does_where_the_static_pressure_is_at_the_limit() -> None:
    assert TrialDuty(0.001, 80 * PSI, 80 * PSI).least_m3(80 * PSI) is None


def test_wrong_charge_needs_a_larger_tank() -> None:
    right, wrong = (
        TrialDuty(0.001, 60 * PSI, 80 * PSI).least_m3(60 * PSI),
        TrialDuty(0.001, 60 * PSI, 80 * PSI).least_m3(40 * PSI),
    )
    assert right is not None
    assert wrong is not None
    assert wrong > right


def test_more_tanks_than_anyone_hangs_side_by_side_are_not_tried() -> None:
    assert list(sizes_to_try(0.1, (0.01,))) == []
    assert list(sizes_to_try(MOST_TANKS * 0.01, (0.01,))) == [(0.01,) * MOST_TANKS]


def test_uptake_is_counted_to_a_gauge_pressure() -> None:
    assert uptake_m3(Tank(0.2, charge_abs_pa=101_325, start_abs_pa=101_325), 101_325) == pytest.approx(0.1)
