"""What a tank ought to be charged to where it hangs."""

import pytest
from conftest import PSI, drawn

from plumbnet.analysis.required_tank.charge import BELOW_CUT_IN_PA, right_charge_pa

METRE_PA = 9806.65
TEN_METRES = 10 * METRE_PA / PSI  # 14.22 psi
STREET = "street -> cv -> tee -> heater -> tap.hot\ntee -> tank"
WELL = "well -> tee -> heater -> tap.hot\ntee -> tank"


def charge(runs: str, **parts: str) -> float:
    """The right charge of the tank, in psi."""
    return round(right_charge_pa(drawn(runs, **parts).network, "tank") / PSI, 6)


def test_tank_is_charged_to_the_static_pressure() -> None:
    assert charge(STREET) == 60.0
    assert charge(STREET, street="pressure: 47 psi") == 47.0


def test_what_it_is_charged_to_by_now_does_not_count() -> None:
    assert charge(STREET, tank="precharge: 12 psi") == 60.0


def test_static_pressure_is_that_at_the_height_of_the_tank() -> None:
    assert charge(STREET, tank="elevation: 10 m") == pytest.approx(60 - TEN_METRES, abs=1e-6)
    assert charge(STREET, tank="elevation: -10 m") == pytest.approx(60 + TEN_METRES, abs=1e-6)


def test_tank_behind_a_reducer_is_charged_to_its_set() -> None:
    assert charge(STREET.replace("cv", "prv")) == 50.0


def test_tank_on_a_well_is_charged_just_below_the_cut_in() -> None:
    assert round(BELOW_CUT_IN_PA / PSI, 9) == 2.0
    assert charge(WELL) == 28.0
    assert charge(WELL, tank="elevation: 10 m") == pytest.approx(28 - TEN_METRES, abs=1e-6)


def test_well_behind_a_reducer_that_it_always_stands_above_is_a_steady_supply() -> None:
    # set 25 psi, cut-in 30: the pressure behind it does not swing; set 40: it swings from 30 to 40
    runs = WELL.replace("well ->", "well -> prv ->")
    assert charge(runs, prv="set: 25 psi") == 25.0
    assert charge(runs, prv="set: 30 psi") == 30.0
    assert charge(runs, prv="set: 40 psi") == 28.0


@pytest.mark.parametrize("runs", [STREET, WELL])
def test_tank_above_all_water_is_charged_with_the_air_alone(runs: str) -> None:
    assert charge(runs, tank="elevation: 60 m") == 0.0


def test_tank_in_a_well_just_below_what_the_cut_in_leaves_is_charged_with_the_air_alone() -> None:
    # 30 psi are 21.1 m; at 20 m there is 1.55 psi, less than the 2 psi that it is charged below
    assert charge(WELL, tank="elevation: 20 m") == 0.0


def test_tank_that_no_supply_comes_to_is_charged_with_the_air_alone() -> None:
    assert charge("heater -> tee -> tap.hot\ntee -> tank") == 0.0
