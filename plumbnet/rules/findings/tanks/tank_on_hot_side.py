"""A tank that hangs on the hot pipe of a heater."""

from collections.abc import Iterator

from plumbnet.rules.facts import Facts
from plumbnet.rules.finding import Breach, Severity, finding
from plumbnet.rules.rule_profile import Profile

BAD = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  meter: {kind: meter, check: true}
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi}}
  split: tee
  tank: {kind: expansion_tank, volume: 5 gal, precharge: 60 psi}  # <- tank-on-hot-side
  tap: fixture
runs:
  - street -> meter -> heater -> split -> tap.hot
  - split -> tank
"""

GOOD = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  meter: {kind: meter, check: true}
  split: tee
  tank: {kind: expansion_tank, volume: 5 gal, precharge: 60 psi}
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi}}
  tap: fixture
runs:
  - street -> meter -> split -> heater -> tap.hot
  - split -> tank
"""


@finding("tank-on-hot-side", Severity.WARNING, bad=BAD, good=GOOD, rests_on="control_side")
def tank_on_hot_side(facts: Facts, profile: Profile) -> Iterator[Breach]:
    """A tank hangs on the hot pipe of a water heater.

    It works, but the heat ages its membrane and warms its air, and codes ask for the cold side. Move it to
    the cold pipe of the heater, behind the last check. The tank of a heating circuit belongs in that circuit
    and is not meant here.
    """
    if profile.control_side.value != "cold":
        return
    for tank in facts.tanks:
        if tank.on_hot_side and tank.reached:
            yield Breach(
                (tank.name,),
                f"{tank.name} hangs on the hot pipe of a heater, where heat ages its membrane.",
                "Move it to the heater's cold pipe, downstream of the last check.",
            )
