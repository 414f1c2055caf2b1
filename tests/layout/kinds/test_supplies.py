"""Supplies and open ends."""

import pytest
from usual import usual

from plumbnet.layout.part import OneWay, Outlet, Role, Source


def test_main_gives_and_takes_water_at_its_pressure() -> None:
    main = usual("main", pressure="400 kPa", temperature="12 degC")
    assert main.source() == Source("out", 400_000, 400_000, 285.15)
    assert list(main.outlets()) == [Outlet("out", Role.STREET, 400_000)]
    assert list(main.passages()) == []


def test_main_takes_any_number_of_pipes_and_can_end_a_run() -> None:
    main = usual("main")
    assert main.shared == {"out"}
    assert (main.enters_at(), main.leaves_at(), main.mate("out")) == ("out", "out", None)


def test_supply_is_at_10_degrees_celsius_unless_it_says_otherwise() -> None:
    for kind in ("main", "well", "open_tank", "filling_loop"):
        source = usual(kind).source()
        assert source is not None
        assert source.temperature_k == 283.15
        assert "10 °C (50 °F)" in usual(kind).assumed["temperature"]


def test_well_stands_between_cut_in_and_cut_out_and_takes_nothing_back() -> None:
    well = usual("well", cut_in="2 bar", cut_out="3 bar")
    assert well.source() == Source("out", 300_000, 200_000, 283.15)
    assert list(well.outlets()) == []
    assert well.enters_at() is None


@pytest.mark.parametrize("cut_out", ["30 psi", "20 psi"])
def test_well_starts_below_the_pressure_at_which_it_stops(cut_out: str) -> None:
    with pytest.raises(ValueError, match="the cut-in must lie below the cut-out"):
        usual("well", cut_in="30 psi", cut_out=cut_out)


def test_open_tank_is_filled_through_air_and_takes_water_back_at_its_surface() -> None:
    tank = usual("open_tank", volume="200 gal")
    assert list(tank.passages()) == []
    assert tank.source() == Source("out", 0.0, 0.0, 283.15)
    assert list(tank.outlets()) == [Outlet("out", Role.AIR, 0.0)]
    assert (tank.mate("in"), tank.shared) == ("out", frozenset({"out"}))


def test_filling_loop_is_a_supply_of_its_own_once_it_is_shut() -> None:
    loop = usual("filling_loop", fill="1 bar", temperature="15 degC")
    assert loop.source() == Source("out", 100_000, 100_000, 288.15, feeds_on=False)
    assert list(loop.passages()) == []
    assert list(loop.outlets()) == []
    assert (loop.mate("in"), loop.drawn_as()) == ("out", "filling_loop")


def test_filling_loop_left_open_passes_water_on_and_none_back() -> None:
    loop = usual("filling_loop", state="open")
    assert loop.source() is None
    assert list(loop.passages()) == [OneWay("in", "out")]
    assert loop.drawn_as() == "open_filling_loop"


def test_vent_ends_a_run_and_spills_at_its_rim() -> None:
    vent = usual("vent")
    assert list(vent.outlets()) == [Outlet("in", Role.AIR, 0.0)]
    assert (vent.source(), vent.leaves_at()) == (None, None)
