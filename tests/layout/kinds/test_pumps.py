"""Pumps."""

from usual import usual

from plumbnet.layout.part import Boosting


def test_booster_raises_the_pressure_and_holds_it() -> None:
    assert list(usual("booster_pump", rise="2 bar").passages()) == [Boosting("in", "out", 200_000, checked=True)]
    assert usual("booster_pump").driven() == ("in", "out")


def test_circulator_drives_water_while_it_runs() -> None:
    assert usual("circulator").driven() == ("in", "out")
    assert usual("circulator", running=False).driven() is None
