"""Pumps."""

import pytest
from usual import usual

from plumbnet.layout.model.part import Boosting


def test_booster_raises_the_pressure_and_holds_it() -> None:
    assert list(usual("booster_pump", rise="2 bar").passages()) == [Boosting("in", "out", 200_000, checked=True)]
    assert usual("booster_pump").driven() == ("in", "out")


def test_circulator_drives_water_while_it_runs() -> None:
    assert usual("circulator").driven() == ("in", "out")
    assert usual("circulator", running=False).driven() is None


@pytest.mark.parametrize(
    ("head", "head_pa"), [("2 m", 19_613.3), ("10 ftH2O", 29_890.67), ("10 ft", 29_890.67), ("0.2 bar", 20_000)]
)
def test_head_of_a_circulator_is_a_pressure_or_a_height_of_water(head: str, head_pa: float) -> None:
    assert usual("circulator", head=head).driving_pa() == pytest.approx(head_pa)


def test_head_that_nobody_gives_is_not_known_and_the_rise_of_a_booster_always_is() -> None:
    assert usual("circulator").driving_pa() is None
    assert usual("booster_pump", rise="2 bar").driving_pa() == 200_000
    assert usual("meter").driving_pa() is None
