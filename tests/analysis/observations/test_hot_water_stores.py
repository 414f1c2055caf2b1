import pytest
from conftest import system
from hypothesis import given
from oracles.random_layouts import Layout, layouts

import plumbnet
from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.rules.facts.store_facts import StoreFacts

DEGC = 273.15


def stores(runs: str, **parts: str) -> dict[str, StoreFacts]:
    return {one.name: one for one in plumbnet.check(system(runs, **parts), rules="upc-2024").facts.stores}


def test_stores_of_hot_water_are_told_and_nothing_else() -> None:
    assert list(stores("street -> heater -> tap.hot")) == ["heater"]
    assert list(stores("street -> indirect -> tap.hot\nloop -> boiler -> indirect.coil_in")) == ["indirect"]
    assert stores("street -> tankless -> tap.hot") == {}
    assert stores("loop -> tee -> boiler -> pump -> emitter -> tee") == {}
    assert stores("street -> store -> tap.cold") == {}


def test_tank_in_the_loop_of_a_heater_is_a_store() -> None:
    runs = "street -> tee -> tankless -> store -> tap.hot\nstore.return -> pump -> tee"
    found = stores(runs)["store"]
    assert (found.setpoint_k, found.tap) == (None, "tap")


def test_lowest_tap_that_it_serves_is_told_past_other_heaters_and_mixers() -> None:
    runs = "street -> tee -> heater1 -> tee2 -> heater2 -> mixer.hot\ntee -> mixer.cold\nmixer -> tap.hot"
    runs = f"{runs}\ntee2 -> tap2.hot"
    found = stores(runs, tap="elevation: 3 m", tap2="elevation: 5 m", heater2="elevation: 2 m")
    assert {name: (one.tap, one.tap_m) for name, one in found.items()} == {
        "heater1": ("tap", 3.0),
        "heater2": ("tap", 3.0),
    }
    found = stores(runs, tap="elevation: 6 m", tap2="elevation: 5 m")
    assert {name: one.tap for name, one in found.items()} == {"heater1": "tap2", "heater2": "tap"}


def test_circulation_does_not_make_cold_taps_its_own() -> None:
    runs = "street -> tee -> tee2 -> heater -> tee3 -> tap.hot\ntee3 -> pump -> tee2\ntee -> tap2.cold"
    found = stores(runs, tap="elevation: 3 m", tap2="elevation: -3 m")
    assert found["heater"].tap == "tap"


def test_crossover_at_a_tap_and_unchecked_mixer_do_not_either() -> None:
    runs = "street -> tee -> heater -> tap.hot\ntee -> tap.cold\ntee -> tap2.cold"
    found = stores(runs, tap="crossover: true, elevation: 3 m", tap2="elevation: -3 m")
    assert found["heater"].tap == "tap"
    runs = "street -> tee2 -> heater -> tap.hot\ntee2 -> tee\ntap.cold -> tee -> tap2.cold"
    found = stores(runs, tap="crossover: true, elevation: 3 m", tap2="elevation: -3 m")
    assert found["heater"].tap == "tap"
    runs = "street -> tee -> heater -> mixer.hot\ntee -> mixer.cold\nmixer -> tap.hot\ntee -> tap2.cold"
    found = stores(runs, mixer="checks: false", tap="elevation: 3 m", tap2="elevation: -3 m")
    assert found["heater"].tap == "tap"


def hottest(runs: str, name: str = "heater1", **parts: str) -> float | None:
    passed_k = stores(runs, **parts)[name].passes_k
    return None if passed_k is None else round(passed_k - DEGC, 3)


COOL, HOT, HOTTER = "setpoint: 40 degC", "setpoint: 60 degC", "setpoint: 70 degC"


def test_water_passes_the_hottest_store_on_the_coolest_way() -> None:
    row = "street -> heater1 -> heater2 -> heater3 -> tap.hot"
    assert hottest(row, heater1=COOL, heater2=HOTTER, heater3=HOT) == 70
    fork = "street -> heater1 -> tee -> heater2 -> tee2 -> tap.hot\ntee -> heater3 -> tee2"
    assert hottest(fork, heater1=COOL, heater2=HOTTER, heater3=HOT) == 60
    round_it = "street -> heater1 -> tee -> heater2 -> tee2 -> tap.hot\ntee -> valve -> tee2"
    assert hottest(round_it, heater1=COOL, heater2=HOTTER) == 40
    assert hottest(round_it, heater1=COOL, heater2=HOTTER, valve="state: shut") == 70


def test_circulation_into_the_hotter_store_leads_past_nothing() -> None:
    runs = "street -> tee2 -> heater1 -> heater2 -> tee -> tap.hot\ntee -> pump -> heater2.return\ntee2 -> tap2.cold"
    assert hottest(runs, heater1=COOL, heater2=HOT) == 60


def test_store_from_which_nobody_draws_passes_nothing() -> None:
    assert hottest("street -> heater1", heater1=COOL) is None


@pytest.mark.parametrize(
    ("heater", "tap", "given"), [("", "", False), ("elevation: 0 m", "", True), ("", "elevation: 0 m", True)]
)
def test_height_is_given_once_it_is_written_for_a_store_or_a_tap(heater: str, tap: str, *, given: bool) -> None:
    found = stores("street -> heater -> tap.hot", heater=heater, tap=tap, street="pressure: 60 psi, elevation: 1 m")
    assert found["heater"].is_height_given is given


def test_air_comes_by_vacuum_relief_valves_and_vents() -> None:
    runs = "street -> tee -> heater -> tap.hot\ntee -> breaker\nheater.return -> vent"
    found = stores(runs, breaker="kind: vacuum_relief_valve")
    assert found["heater"].air_comes_by == ("breaker", "vent")


@given(layouts(most=8))
def test_nothing_drawn_passes_less_than_the_store_itself(layout: Layout) -> None:
    try:
        facts = plumbnet.check(layout.system, rules="upc-2024").facts
    except LayoutError:
        return
    for store in facts.stores:
        assert (store.tap is None) is (store.passes_k is None)
        if store.passes_k is not None and store.setpoint_k is not None:
            assert store.passes_k >= store.setpoint_k
