from conftest import system

import plumbnet
from plumbnet.rules.facts.service_facts import TankServiceFacts


def service(runs: str, **parts: str) -> TankServiceFacts:
    (one,) = plumbnet.check(system(runs, **parts)).facts.tank_service
    return one


def test_supplies_from_which_water_comes_past_every_valve_are_told() -> None:
    runs = "street -> cv -> tee -> heater -> tap.hot\ncistern -> tee -> valve2 -> tap2.cold\ntee -> tank"
    assert service(runs).held_to == ("cistern", "street")
    assert service(f"{runs}\nwell -> tee").held_to == ("cistern", "street")
    assert service(runs.replace("cistern ->", "cistern -> valve ->")).held_to == ("street",)


def test_water_does_not_come_back_through_a_check() -> None:
    assert service("street -> valve -> tee -> cv -> tee2 -> heater -> tap.hot\ntee -> tank").held_to == ()
    assert service("street -> valve -> tee -> tank\ncistern -> tee2 -> heater\ntee -> cv -> tee2").held_to == ()
    assert service("street -> valve -> tee -> tank\ncistern -> tee2 -> heater\ntee2 -> cv -> tee").held_to == (
        "cistern",
    )


def test_heating_circuit_holds_a_tank_by_its_nearest_heaters_and_emitters() -> None:
    one = service("loop -> tee -> boiler -> emitter -> emitter2 -> tee\ntee -> tank")
    assert one.carries_heat
    assert one.held_to == ("boiler", "emitter2")
    assert service("loop -> tee -> boiler -> emitter -> tee\ntee -> valve -> tank").held_to == ()


def test_coil_is_not_named_for_the_heater_that_it_heats() -> None:
    runs = "street -> indirect -> tap.hot\nloop -> tee -> boiler -> indirect.coil_in\nindirect.coil_out -> tee2 -> tee"
    assert service(f"{runs}\ntee2 -> tank").held_to == ("boiler",)


def test_supply_that_fills_a_circuit_day_and_night_holds_its_tank() -> None:
    assert service("street -> cv -> prv -> tee -> boiler -> emitter -> tee\ntee -> tank").held_to == (
        "boiler",
        "emitter",
        "street",
    )


def test_valves_are_drawn_where_one_stands_between_a_supply_and_the_tank() -> None:
    assert not service("street -> tee -> heater -> tap.hot\ntee -> tank").are_valves_drawn
    assert not service("street -> tee -> valve -> heater -> tap.hot\ntee -> tank").are_valves_drawn
    assert service("street -> valve -> tee -> heater\nstreet2 -> tee -> tank").are_valves_drawn
    assert service("loop -> tee -> boiler -> emitter -> valve -> tee\ntee -> tank").are_valves_drawn
    assert service("loop -> tee -> boiler -> emitter -> tee\ntee -> valve -> vent\ntee -> tank").are_valves_drawn
    assert not service("street -> valve -> tap.cold\nloop -> tee -> boiler -> emitter -> tee -> tank").are_valves_drawn


def test_boiler_whose_water_is_drawn_makes_no_circuit_that_carries_heat() -> None:
    one = service("street -> valve -> tee -> boiler -> tap.hot\ntee -> tank")
    assert (one.carries_heat, one.held_to) == (False, ())
