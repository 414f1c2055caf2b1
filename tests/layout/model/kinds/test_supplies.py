"""Supplies and open ends."""

import pytest
from usual import usual

from plumbnet.layout.model.event import Event, Extremes, Sort
from plumbnet.layout.model.part import OneWay, Outlet, Role, Source


def test_main_gives_and_takes_water_at_its_pressure() -> None:
    main = usual("main", pressure="400 kPa", temperature="12 degC")
    assert main.source() == Source("out", 400_000, 400_000, 285.15, usual_pa=400_000, least_pa=400_000)
    assert list(main.outlets()) == [Outlet("out", Role.STREET, 400_000)]
    assert list(main.passages()) == []


def test_main_works_at_its_highest_and_falls_to_its_lowest() -> None:
    main = usual("main", pressure="400 kPa", highest="550 kPa", lowest="250 kPa")
    assert main.source() == Source("out", 550_000, 550_000, 283.15, usual_pa=400_000, least_pa=250_000)
    assert list(main.outlets()) == [Outlet("out", Role.STREET, 550_000)]
    assert list(main.unsaid()) == ["temperature"]


@pytest.mark.parametrize("values", [{"highest": "399 kPa"}, {"lowest": "401 kPa"}])
def test_usual_pressure_of_a_main_lies_between_its_lowest_and_its_highest(values: dict[str, str]) -> None:
    ((name, _),) = values.items()
    where = "below" if name == "highest" else "above"
    with pytest.raises(ValueError, match=f"the {name} pressure must not lie {where} the usual one"):
        usual("main", pressure="400 kPa", **values)


@pytest.mark.parametrize("values", [{"highest": "400 kPa"}, {"lowest": "400 kPa"}, {}])
def test_main_whose_extremes_are_its_pressure_is_steady(values: dict[str, str]) -> None:
    source = usual("main", pressure="400 kPa", **values).source()
    assert source is not None
    assert (source.pressure_pa, source.usual_pa, source.least_pa) == (400_000, 400_000, 400_000)


def test_pressure_of_a_main_climbs_where_it_is_highest() -> None:
    limit = Extremes(limit_pa=600_000, relief_k=372.0)
    for values, field in (
        ({}, "pressure_pa"),
        ({"lowest": "2 bar"}, "pressure_pa"),
        ({"highest": "5 bar"}, "highest_pa"),
    ):
        events = list(usual("main", pressure="400 kPa", **values).events(limit))
        assert events == [Event("pressure up to the limit", "set", {field: 600_000}, Sort.NUMBER)]
    assert not list(usual("main", pressure="400 kPa", highest="600 kPa").events(limit))


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
    assert loop.source() == Source("out", 100_000, 100_000, 288.15, is_filled_by_hand=True, feeds_on=False)
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
