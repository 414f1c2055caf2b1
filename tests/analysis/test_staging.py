"""What takes part in a warm-up."""

import pytest
from conftest import PSI, drawn

from plumbnet.analysis.settling import Settling
from plumbnet.analysis.staging import Stage
from plumbnet.physics.water import ATMOSPHERE_PA
from plumbnet.rules.profile import GENERAL, profile


def stage(runs: str, **parts: str) -> Stage:
    network = drawn(runs, **parts).network
    return Stage(profile(GENERAL), network, Settling(network), network.heated[0], 0.8)


def test_zones_beyond_a_check_take_part_and_the_street_does_not() -> None:
    plant = stage("street -> cv -> tee -> heater -> cv2 -> tap.hot\ntee -> tank").plant
    assert len(plant.basins) == 2
    assert [sorted(basin.tanks) for basin in plant.basins.values()] == [["tank"], []]


def test_tank_charged_above_the_relief_valve_never_works() -> None:
    plant = stage(
        "street -> cv -> tee -> heater -> tap.hot\ntee -> tank\ntee -> spill", tank="precharge: 120 psi"
    ).plant
    assert next(iter(plant.basins.values())).tanks == {}


def test_valves_fall_a_tenth_before_they_close_and_vents_do_not() -> None:
    plant = stage("street -> cv -> tee -> heater -> tap.hot\ntee -> spill\ntee -> vent", vent="elevation: 200 ft").plant
    spill, vent = sorted(next(iter(plant.basins.values())).outlets, key=lambda one: one.name)
    assert spill.blowdown_pa == pytest.approx(10.0 * PSI)
    assert vent.blowdown_pa == 0.0
    assert not vent.gives_back


def test_pressures_count_at_the_height_of_each() -> None:
    made = stage("street -> cv -> tee -> heater -> tap.hot\ntee -> tank", heater="elevation: 10 ft")
    (body,) = made.plant.bodies
    assert body.fill_abs_pa == pytest.approx(ATMOSPHERE_PA + 60.0 * PSI - body.head_pa)
    assert made.heads_pa["heater"] == body.head_pa == pytest.approx(10.0 * 0.43353 * PSI, rel=1e-3)
    assert made.heads_pa["tank"] == 0.0


def test_limit_is_that_of_the_heater_s_zone() -> None:
    (fired,) = stage("street -> cv -> heater -> tap.hot").fired()
    assert fired.limit_pa == pytest.approx(80.0 * PSI)
