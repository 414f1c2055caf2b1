import pytest

from plumbnet.layout.units.measure import parse_measure
from plumbnet.layout.units.tubes import tube
from plumbnet.layout.units.units import LENGTH, POWER, PRESSURE, TEMPERATURE, VOLUME
from plumbnet.physics.vessels.tank import nominal_sizes
from plumbnet.rules.rule_profile import profile
from plumbnet.study.exercise.usual_sizes import USUAL, Usual

WATER_PA_PER_M = 9_806.65
EACH = pytest.mark.parametrize("usual", USUAL.values(), ids=list(USUAL))


def si(usual: Usual, value: float, dimension: str) -> float:
    """A number of the table in SI, as a file would give it."""
    unit = {name: getattr(usual.unit, name) for name in ("pressure", "temperature", "volume", "length", "power")}
    found = {"pressure": PRESSURE, "temperature": TEMPERATURE, "volume": VOLUME, "length": LENGTH, "power": POWER}
    return parse_measure(f"{value} {unit[dimension]}", found[dimension], usual.units)


@EACH
def test_tanks_are_of_the_round_series(usual: Usual) -> None:
    for size in (*usual.tank_sizes, *usual.heating_tank_sizes):
        size_m3 = si(usual, size, "volume")
        assert any(abs(size_m3 - known) < 1e-9 for known in nominal_sizes(usual.units)), size


@EACH
def test_low_and_high_mains_lie_on_either_side_of_what_taps_may_have(usual: Usual) -> None:
    limit_pa = profile("general").highest_static.value_pa
    low, high, sets = (
        [si(usual, each, "pressure") for each in many] for many in (usual.mains, usual.high_mains, usual.reducer_sets)
    )
    assert max(low) < limit_pa < min(high)
    assert max(sets) < limit_pa
    assert max(high) < min(si(usual, each, "pressure") for each in usual.relief_pressures)


@EACH
def test_relief_valve_carries_off_more_than_the_burner_gives(usual: Usual) -> None:
    heaters = (*usual.storage_heaters, *usual.large_storage_heaters)
    for each in (*(heater.input for heater in heaters), *usual.tankless_inputs, *usual.boiler_inputs):
        assert usual.capacity(each) >= 1.25 * each


@EACH
def test_a_heater_fires_at_a_rate_that_goes_with_its_size(usual: Usual) -> None:
    """From an electric cylinder to a fast gas heater: 20 to 200 watts a litre."""
    for heater in (*usual.storage_heaters, *usual.large_storage_heaters):
        watts = si(usual, heater.input, "power") / si(usual, heater.volume, "volume") / 1000
        assert 15 <= watts <= 200, heater


@EACH
def test_head_is_that_of_water(usual: Usual) -> None:
    head_pa = si(usual, usual.head, "pressure") / si(usual, 1, "length")
    assert head_pa == pytest.approx(WATER_PA_PER_M, rel=0.003)


@EACH
def test_boiler_is_filled_below_its_relief_valve_and_above_its_emitters(usual: Usual) -> None:
    fill_pa = si(usual, usual.boiler_fill, "pressure")
    assert fill_pa < si(usual, usual.boiler_relief, "pressure")
    assert fill_pa > WATER_PA_PER_M * si(usual, usual.floor, "length")


@EACH
def test_pipes_are_in_the_tables(usual: Usual) -> None:
    for name in (*usual.tubes, usual.circulation_tube, usual.heating_tube):
        assert tube(name).volume_m3_per_m > 0.0
