import pytest
from conftest import times
from hypothesis import example, given

from oracles.random_zones import Zones, zones
from oracles.settling_water import HIGHEST_PA, settled_pressures
from plumbnet.physics.equilibrium.equilibrium import OneWayGate, ZoneLoad, settle
from plumbnet.physics.vessels.tank import Tank

EXAMPLES = times(0.8)
CLOSE = 1e-6  # the minimiser comes to about 5e-8 of the pressure; the method itself to rounding

SEALED_BESIDE_A_TANK = Zones(
    {
        "sealed": ZoneLoad({"h": 0.01}, 300e3),
        "idle": ZoneLoad({}, 300e3, (Tank(0.01, 300e3, 300e3),)),
        "held": ZoneLoad({"i": 0.001}, 300e3, (Tank(0.01, 300e3, 300e3),)),
    },
    (OneWayGate("idle", "sealed"),),
)
RING = Zones(
    {
        "A": ZoneLoad({"a": 0.002}, 200e3, (Tank(0.01, 150e3, 200e3, None, 20e3),)),
        "B": ZoneLoad({"b": 0.001}, 200e3, (Tank(0.004, 250e3, 200e3, 0.001),)),
        "C": ZoneLoad({}, 200e3, (), 420e3),
    },
    (OneWayGate("A", "B"), OneWayGate("B", "C"), OneWayGate("C", "A")),
)


@EXAMPLES
@given(zones())
@example(SEALED_BESIDE_A_TANK)
@example(RING)
def test_zones_settle_where_the_stored_energy_is_least(drawn: Zones) -> None:
    least = settled_pressures(drawn.loads, drawn.gates)
    found = {zone: pool.pressure_abs_pa for pool in settle(drawn.loads, drawn.gates) for zone in pool.zones}
    assert {zone: min(level, HIGHEST_PA) for zone, level in found.items()} == pytest.approx(least, rel=CLOSE)
