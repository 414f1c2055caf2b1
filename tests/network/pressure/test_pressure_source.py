"""What gives a zone its least pressure."""

import math

import pytest
from conftest import PSI, drawn

from plumbnet.network.pressure.pressure_source import Feed, Giver, PressureSources


def feed(runs: str, at: str = "tap.hot", **parts: str) -> Feed | None:
    made = drawn(runs, **parts)
    return PressureSources(made.network.zoning, made.network.standing).feed(made.zone(at))


def told(runs: str, at: str = "tap.hot", **parts: str) -> tuple[str, Giver, float, float]:
    found = feed(runs, at, **parts)
    assert found is not None
    return found.name, found.giver, round(found.own_pa / PSI, 3), round(found.spare_pa / PSI, 3)


def test_supply_that_the_pressure_comes_from_has_nothing_to_spare() -> None:
    assert told("street -> cv -> heater -> tap.hot", cv="opens: 2 psi") == ("street", Giver.SUPPLY, 60.0, 0.0)
    assert told("street -> cv -> tap.hot", street="highest: 70 psi, lowest: 40 psi") == (
        "street",
        Giver.SUPPLY,
        40.0,
        0.0,
    )


def test_well_gives_its_cut_in() -> None:
    assert told("well -> tap.hot") == ("well", Giver.SUPPLY, 30.0, 0.0)


def test_reducer_gives_its_set_and_could_give_what_stands_before_it() -> None:
    # ten feet up: the set is read there, and what comes to it is 10 x 0.4335 psi less than the street's
    assert told("street -> prv -> cv -> tap.hot", prv="elevation: 10 ft") == ("prv", Giver.REDUCER, 50.0, 5.665)
    assert told("street -> prv -> tap.hot", street="pressure: 60 psi, lowest: 55 psi") == (
        "prv",
        Giver.REDUCER,
        50.0,
        5.0,
    )


def test_reducer_that_stands_open_gives_nothing_of_its_own() -> None:
    assert told("street -> prv -> tap.hot", street="pressure: 45 psi") == ("street", Giver.SUPPLY, 45.0, 0.0)


def test_of_reducers_in_a_row_the_one_that_holds_it_down_gives() -> None:
    runs = "street -> prv -> prv2 -> tap.hot"
    assert told(runs, prv2="set: 40 psi") == ("prv2", Giver.REDUCER, 40.0, 10.0)
    assert told(runs, prv="set: 40 psi") == ("prv", Giver.REDUCER, 40.0, 10.0)  # the second lets 10 psi more through
    assert told(runs, prv="set: 40 psi", prv2="set: 70 psi") == ("prv", Giver.REDUCER, 40.0, 20.0)


@pytest.mark.parametrize("check", ["true", "false"])
def test_pressure_is_followed_through_a_booster(check: str) -> None:
    runs = "street -> prv -> booster -> tap.hot"
    assert told(runs, booster=f"check: {check}") == ("prv", Giver.REDUCER, 50.0, 10.0)


def test_pressure_is_followed_through_a_shut_valve_and_back_through_a_bypass() -> None:
    assert told("street -> valve -> tap.hot", valve="state: shut") == ("street", Giver.SUPPLY, 60.0, 0.0)
    assert told("street -> tee\ntap.hot -> prv -> tee", prv="bypass: true") == ("street", Giver.SUPPLY, 60.0, 0.0)


def test_circuit_filled_by_hand_takes_any_fill() -> None:
    found = told("street -> loop -> tee -> boiler -> emitter -> tee", at="emitter")
    assert found == ("loop", Giver.FILL, 12.0, math.inf)


def test_water_that_no_supply_reaches_is_given_by_nothing() -> None:
    assert feed("street -> tap2.hot\nboiler -> emitter -> tee -> boiler", at="boiler.supply") is None
