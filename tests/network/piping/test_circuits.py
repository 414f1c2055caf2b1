from conftest import drawn

from plumbnet.layout.model.circuit import Circuit

BOILER_ROOM = """
street -> tee1 -> heater -> tap.hot
tee1 -> tap.cold
tee1 -> cv -> tee2 -> prv -> tee3
boiler.supply -> pump -> emitter -> tee3 -> boiler.return
tee3 -> tank
boiler.relief -> relief
"""
PREVENTER = "kind: reduced_pressure_assembly"


def heating(runs: str, **parts: str) -> set[str]:
    return set(drawn(runs, **parts).network.circuits.parts.get(Circuit.HEATING, ()))


def test_boiler_with_a_permanent_fill_is_a_circuit_and_its_backflow_preventer_guards_the_drinking_water() -> None:
    # street - tee1 - heater - tap;  tee1 - RPZ - tee2 - reducer - tee3 - boiler loop, tank, relief valve
    assert heating(BOILER_ROOM, cv=PREVENTER) == {"tee2", "prv", "tee3", "tank", "boiler", "pump", "emitter", "relief"}


def test_reducer_that_fills_a_circuit_belongs_to_it_with_no_preventer_and_with_a_bypass_too() -> None:
    runs = BOILER_ROOM.replace("-> cv -> tee2", "")
    assert "prv" in heating(runs) & heating(runs, prv="bypass: true")
    assert "tee1" not in heating(runs, prv="bypass: true")


def test_circuit_stays_one_where_its_backflow_preventer_has_failed_open() -> None:
    stuck = f"{PREVENTER}, state: stuck_open"
    assert heating(BOILER_ROOM, cv=stuck) == heating(BOILER_ROOM, cv=PREVENTER)


def test_tank_side_of_an_indirect_cylinder_is_drinking_water_and_its_coil_is_heating() -> None:
    # boiler - pump - coil - tee2 - boiler, filled by a loop that is shut; street - cv - tee1 - cylinder - tap
    runs = """
    street -> cv -> tee1 -> indirect -> tap.hot
    tee1 -> tank1
    indirect.relief -> relief1
    tee1 -> loop -> tee2
    boiler.supply -> pump -> indirect.coil_in
    indirect.coil_out -> tee2 -> boiler.return
    tee2 -> tank2
    boiler.relief -> relief2
    """
    d = drawn(runs)
    assert heating(runs) == {"tee2", "tank2", "boiler", "pump", "relief2"}
    assert d.network.circuits.at(d.node("indirect.coil_in")) is Circuit.HEATING
    assert heating(runs, loop="state: open") == heating(runs)


def test_solar_preheater_has_a_circuit_of_its_own_and_the_water_it_warms_is_drawn() -> None:
    # collector - pump with check - coil of the preheater - tee2 - collector, glycol; the preheater feeds the heater
    runs = """
    street -> tee1 -> indirect -> heater -> tap.hot
    tee1 -> loop -> tee2 -> solar
    solar -> pump -> tee3 -> cv -> indirect.coil_in
    indirect.coil_out -> tee2
    tee2 -> tank
    """
    solar = "kind: solar_collector, volume: 1 gal, setpoint: 250 degF"
    assert heating(runs, solar=solar, pump="check: true") == {"tee2", "solar", "pump", "tee3", "cv", "tank"}


def test_loop_whose_water_taps_draw_is_all_drinking_water() -> None:
    runs = "street -> tee1 -> heater -> tee2 -> tap.hot\ntee2 -> pump -> emitter -> tee1"
    assert heating(runs) == set()
    # behind a check just so: what the loop pushes out is drawn
    assert heating("street -> tee1 -> boiler -> tee2 -> cv -> tap.hot\ntee2 -> pump -> emitter -> tee1") == set()


def test_shut_valve_fills_a_circuit_and_parts_it_from_what_is_drawn() -> None:
    # street - tee1 - valve1, shut - tee2 - valve2, shut - tee3 - boiler loop: the hose between is the circuit's
    runs = "street -> tee1 -> tap.cold\ntee1 -> valve1 -> tee2 -> valve2 -> tee3\nboiler -> pump -> emitter -> tee3\n"
    shut = {"valve1": "state: shut", "valve2": "state: shut"}
    assert heating(f"{runs}tee3 -> boiler", **shut) == {"tee2", "valve2", "tee3", "boiler", "pump", "emitter"}
    # nothing parts them once both are open
    assert heating(f"{runs}tee3 -> boiler") == set()


def test_water_that_nobody_draws_is_no_heating_circuit_for_that() -> None:
    # a cylinder with no tap drawn behind it yet
    assert heating("street -> cv -> heater\nheater.relief -> relief") == set()


def test_store_beside_the_shut_fill_of_a_circuit_is_not_drawn_into_it() -> None:
    runs = "street -> cv -> tee1 -> heater\ntee1 -> valve -> tee2\nboiler -> pump -> emitter -> tee2 -> boiler"
    assert heating(runs, valve="state: shut") == {"tee2", "boiler", "pump", "emitter"}


def test_cylinder_that_only_warms_radiators_is_heating() -> None:
    runs = "street -> cv -> tee1 -> heater -> pump -> emitter -> tee1"
    assert heating(runs) == {"tee1", "heater", "pump", "emitter"}


def test_antifreeze_makes_a_heating_circuit() -> None:
    glycol = "antifreeze: {glycol: propylene, share: 30 %}"
    assert heating("street -> cv -> heater", heater=glycol) == {"heater"}


def test_booster_behind_the_preventer_belongs_to_the_circuit_that_it_fills() -> None:
    runs = "street -> tee1 -> tap.cold\ntee1 -> cv -> tee2 -> booster -> tee3\nboiler -> pump -> emitter -> tee3"
    assert heating(f"{runs}\ntee3 -> boiler") == {"tee2", "booster", "tee3", "boiler", "pump", "emitter"}


def test_name_that_is_no_part_is_drinking_water() -> None:
    assert drawn(BOILER_ROOM).network.circuits.of("nobody") is Circuit.WATER
