"""Parts that heat water or give its heat away."""

import pytest
from conftest import system
from usual import usual

from plumbnet.api import check
from plumbnet.layout.model.event import Event, Extremes, Sort
from plumbnet.layout.model.part import Free, HeatSource, Role

EXTREMES = Extremes(limit_pa=551_580.0, relief_k=372.0)
HEATERS = ["storage_heater", "tankless_heater", "indirect_heater", "heat_exchanger", "boiler", "solar_collector"]
STORES = {
    "storage_heater": ("cold", "hot"),
    "tankless_heater": ("cold", "hot"),
    "indirect_heater": ("cold", "hot"),
    "heat_exchanger": ("cold", "hot"),
    "boiler": ("return", "supply"),
    "solar_collector": ("in", "out"),
}
"""Where a run enters each heater, and where it leaves."""


@pytest.mark.parametrize("kind", HEATERS)
def test_heater_warms_the_water_between_its_inlet_and_its_outlet(kind: str) -> None:
    heater = usual(kind, volume="200 L", setpoint="60 degC", input="12 kW")
    inlet, outlet = STORES[kind]
    on_flow = kind in {"tankless_heater", "heat_exchanger"}
    assert heater.heat() == HeatSource(inlet, outlet, 0.2, 333.15, 12_000, on_flow)
    assert (heater.enters_at(), heater.leaves_at(), heater.mate(inlet)) == (inlet, outlet, outlet)
    assert next(heater.contents()) == (inlet, 0.2)
    assert heater.is_vessel


@pytest.mark.parametrize("kind", HEATERS)
def test_heater_out_of_service_holds_its_water_and_lets_water_pass_but_warms_nothing(kind: str) -> None:
    lit, out = usual(kind), usual(kind, state="out_of_service")
    assert out.heat() is None
    assert (list(out.passages()), list(out.contents())) == (list(lit.passages()), list(lit.contents()))
    assert (out.is_out_of_service(), lit.is_out_of_service()) == (True, False)
    assert list(out.events(EXTREMES)) == [Event("put back in service", "set", {"state": "in_service"}, Sort.TURNED)]
    assert list(out.strays()) == []


def test_heater_out_of_service_grows_nothing_for_its_neighbours() -> None:
    runs = "street -> cv -> tee -> heater -> tap.hot\ntee -> heater2 -> tap2.hot\ntee -> tank"
    tank, off = "volume: 5 gal, precharge: 60 psi", "state: out_of_service"
    both, one = (check(system(runs, tank=tank, **more)) for more in ({}, {"heater2": off}))
    assert [found.verdict for found in both.heaters] == ["sealed", "sealed"]
    assert [(found.name, found.verdict) for found in one.heaters] == [("heater", "controlled")]


def test_relief_may_be_its_pressure_alone() -> None:
    alone, whole = (usual("boiler", relief=relief).fixed() for relief in ("30 psi", {"pressure": "30 psi"}))
    assert [*alone] == [*whole]
    (port, name, valve) = next(usual("boiler", relief=30).fixed())
    assert (port, name, valve.drawn_as()) == ("relief", "relief", "pressure_relief")
    assert list(valve.unsaid()) == ["temperature"]


@pytest.mark.parametrize("kind", HEATERS)
def test_relief_is_fixed_to_the_tapping_of_its_heater(kind: str) -> None:
    heater = usual(kind, relief={"pressure": "7 bar", "capacity": "30 kW"}, elevation="3 m", rating="100 psi")
    ((port, name, relief),) = heater.fixed()
    assert (port, name, relief.kind, relief.elevation_m) == ("relief", "relief", "relief_valve", 3.0)
    assert [(outlet.role, outlet.opens_pa) for outlet in relief.outlets()] == [(Role.SAFETY_RELIEF, 700_000)]
    assert relief.rating_pa is None
    assert Free(STORES[kind][0], "relief") in set(heater.passages())
    assert list(usual(kind).fixed()) == []


def test_relief_takes_over_what_was_written_and_what_was_left_out() -> None:
    ((_, _, relief),) = usual("boiler", relief={"pressure": "30 psi"}).fixed()
    assert relief == usual("relief_valve", pressure="30 psi")
    assert "temperature_k" not in relief.model_fields_set


@pytest.mark.parametrize("kind", ["storage_heater", "indirect_heater"])
def test_tappings_of_a_store_open_into_it(kind: str) -> None:
    assert list(usual(kind).passages())[:3] == [Free("cold", port) for port in ("hot", "return", "relief")]


def test_flow_through_heater_holds_a_litre_unless_it_says_otherwise() -> None:
    for kind in ("tankless_heater", "heat_exchanger"):
        heat = usual(kind).heat()
        assert heat is not None
        assert heat.volume_m3 == 0.001
        assert "1 L" in usual(kind).assumed["volume"]


@pytest.mark.parametrize("setpoint", ["0 degC", "-10 degC", "400 degF"])
def test_setpoint_is_that_of_liquid_water(setpoint: str) -> None:
    with pytest.raises(ValueError, match="setpoint"):
        usual("boiler", setpoint=setpoint)
