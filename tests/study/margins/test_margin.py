"""What is told of a number."""

from plumbnet.layout.units.units import LENGTH, PRESSURE
from plumbnet.study.contingency.outcome import Outcome
from plumbnet.study.margins.margin import Margin, Turning, UncertainNumber

CHARGE = UncertainNumber("tank", "precharge", PRESSURE, 400e3, 0.0, 1e6, accuracy=14e3)


def turning(turns_at: float) -> Turning:
    return Turning((400e3 + turns_at) / 2, turns_at, Outcome())


def test_least_is_the_distance_to_the_nearer_turn() -> None:
    assert Margin(CHARGE, turning(350e3), turning(420e3)).least == 20e3
    assert Margin(CHARGE, turning(350e3)).least == 50e3
    assert Margin(CHARGE).least is None
    assert Margin(CHARGE).is_free


def test_turn_as_near_as_a_gauge_reads_is_within_its_accuracy() -> None:
    assert Margin(CHARGE, None, turning(414e3)).is_within_accuracy
    assert not Margin(CHARGE, None, turning(414.1e3)).is_within_accuracy
    assert not Margin(CHARGE).is_within_accuracy


def test_what_no_gauge_reads_is_within_no_accuracy() -> None:
    height = UncertainNumber("tap", "elevation", LENGTH, 1.0, 0.0, 2.0)
    assert not Margin(height, Turning(0.95, 0.9, Outcome())).is_within_accuracy
    assert (height.is_pressure, CHARGE.is_pressure) == (False, True)
