"""The place of a tank in a heating circuit."""

from conftest import drawn

from plumbnet.analysis.required_tank.suction_place import suction_place

FILLED = "street -> cv -> tee1"
KINDS = {
    "boiler": "kind: boiler, volume: 10 gal, setpoint: 180 degF, relief: {pressure: 30 psi}",
    "emitter": "kind: emitter, volume: 10 gal",
}


def place(runs: str) -> tuple[str, str]:
    """Where, and why there."""
    network = drawn(f"{FILLED}\n{runs}", **KINDS).network
    found = suction_place(network, network.heated[0])
    assert found is not None
    return found.name, found.why


def test_pump_in_the_return_has_it_before_the_pump() -> None:
    assert place("boiler -> tee3 -> emitter -> tee2 -> pump -> tee1 -> boiler") == (
        "tee2",
        "the suction side of pump, near the return of boiler: what the pump adds to the pressure never takes from it",
    )


def test_pump_in_the_supply_draws_through_the_boiler_and_has_it_at_the_return() -> None:
    assert place("boiler -> tee3 -> pump -> tee4 -> emitter -> tee2 -> tee1 -> boiler")[0] == "tee1"


def test_valve_that_could_part_it_is_not_passed() -> None:
    assert place("boiler -> emitter -> tee2 -> valve -> pump -> tee1 -> boiler")[0] == "valve -> pump"


def test_return_without_a_fitting_has_it_in_the_pipe_before_the_pump() -> None:
    assert place("boiler -> tee1 -> emitter -> pump -> boiler")[0] == "emitter -> pump"
