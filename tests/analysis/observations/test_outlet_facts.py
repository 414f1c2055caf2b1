from conftest import PSI, system

import plumbnet
from plumbnet.layout.model.part import Role


def found(runs: str, **parts: str) -> dict[str, tuple[Role, float]]:
    """Outlets by name, in psi."""
    outlets = plumbnet.check(system(runs, **parts)).facts.outlets
    return {one.name: (one.role, round(one.opens_pa / PSI, 1)) for one in outlets}


def test_outlets_are_found_with_the_pressures_at_which_they_take_water() -> None:
    runs = "street -> cv -> tee -> heater -> tap.hot\ntee -> tank\nheater.relief -> relief\ntee -> spill"
    assert found(runs) == {
        "street": (Role.STREET, 60.0),
        "tank": (Role.TANK, 60.0),
        "relief": (Role.SAFETY_RELIEF, 150.0),
        "spill": (Role.EXPANSION_RELIEF, 100.0),
    }


def test_pressure_of_an_outlet_is_read_at_itself() -> None:
    """The tank, 40 ft below the street, stands in balance with 17.3 psi more; the relief valve is set where it is."""
    runs = "street -> cv -> tee -> heater -> tap.hot\ntee -> tank\nheater.relief -> relief"
    low = found(runs, tank="elevation: -40 ft", relief="elevation: -40 ft")
    assert (low["tank"], low["relief"]) == ((Role.TANK, 77.3), (Role.SAFETY_RELIEF, 150.0))


def test_outlet_that_no_heater_reaches_is_found_too() -> None:
    assert found("street -> tap.cold\ntee -> heater -> tap2.hot\ntee -> tank")["tank"][0] is Role.TANK
