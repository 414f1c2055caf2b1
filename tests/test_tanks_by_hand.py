"""Five tanks by hand: growth from IAPWS-95 densities, room by Boyle's law, written out; the program says the same.

Densities by CoolProp 8.0 (the IAPWS-95 formulation), in kg/m3 at the absolute pressure under which the water is warmed.
"""

from dataclasses import dataclass

import pytest

import plumbnet

GALLON = 231 * 0.0254**3
PSI = 6894.757293
AIR_PSI = 14.695949
RELIEF = "relief: {pressure: 150 psi, temperature: 210 degF}"


@dataclass(frozen=True)
class Tank:
    """A house, the density of its water cold and hot, and the pressures at the tank, gauge in psi."""

    fields: str
    gallons: float
    line_psi: float
    cold_hot: tuple[float, float]
    limit_psi: float = 80.0

    @property
    def by_hand_gal(self) -> float:
        """The least tank, charged to the line: growth over the share of it that may fill."""
        cold, hot = self.cold_hot
        growth = self.gallons * (cold / hot - 1.0)
        return growth / (1.0 - (self.line_psi + AIR_PSI) / (self.limit_psi + AIR_PSI))

    @property
    def need_gal(self) -> float:
        """What the program says."""
        text = f"""plumbnet: 1
parts:
  street: {{kind: main, pressure: {self.line_psi} psi, temperature: 50 degF}}
  cv: check_valve
  tee: tee
  heater: {{kind: storage_heater, volume: {self.gallons} gal, {self.fields}, {RELIEF}}}
  tap: fixture
runs:
  - street -> cv -> tee -> heater -> tap.hot
  - tee -> tap.cold
"""
        need = plumbnet.check(plumbnet.read_bytes(text.encode())).heaters[0].need
        assert need is not None
        assert need.tank_m3 is not None
        return need.tank_m3 / GALLON


CASES = [
    Tank("setpoint: 120 degF", 40, 60, (999.9001, 988.7140)),
    Tank("setpoint: 140 degF", 50, 62, (999.9067, 983.3828)),
    Tank("setpoint: 140 degF", 80, 55, (999.8836, 983.3617)),
    Tank("setpoint: 150 degF", 119, 60, (999.9001, 980.4298)),
    Tank("setpoint: 180 degF", 250, 45, (999.8507, 970.5326)),
]


@pytest.mark.parametrize("tank", CASES, ids=lambda tank: f"{tank.gallons} gal at {tank.line_psi} psi")
def test_least_tank_is_that_of_the_hand_calculation_to_three_digits(tank: Tank) -> None:
    assert f"{tank.need_gal:.3g}" == f"{tank.by_hand_gal:.3g}"
