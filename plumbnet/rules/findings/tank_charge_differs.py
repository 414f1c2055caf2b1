"""A tank whose air charge is not the line pressure where it hangs."""

from collections.abc import Iterator

from plumbnet.rules.facts import ROUNDING_PA, Facts, TankFacts
from plumbnet.rules.finding import Breach, Severity, finding
from plumbnet.rules.profile import Profile

BAD = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  meter: {kind: meter, check: true}
  split: tee
  tank: {kind: expansion_tank, volume: 5 gal, precharge: 40 psi}  # <- tank-charge-differs
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi}}
  tap: fixture
runs:
  - street -> meter -> split -> heater -> tap.hot
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


@finding("tank-charge-differs", Severity.WARNING, bad=BAD, good=GOOD)
def tank_charge_differs(facts: Facts, profile: Profile) -> Iterator[Breach]:
    """A tank's air charge is not the line pressure where it hangs.

    Charged too low, it stands part full of water before heating starts; charged too high, it takes nothing
    until the pressure has climbed to its charge. Either way room is lost. Set the charge with the tank empty
    of water, to the pressure at the tank's own height. A tank on a well is charged to just under the cut-in.
    """
    for tank in facts.tanks:
        if not tank.is_waterlogged and tank.static_pa is not None and _differs(tank, profile):
            below = tank.precharge_pa < tank.static_pa
            charged, line = facts.pressure(tank.precharge_pa), facts.pressure(tank.static_pa)
            effect = "stands part full before anything is heated" if below else "takes nothing until that is reached"
            yield Breach(
                (tank.name,),
                f"{tank.name} is charged to {charged}, {'below' if below else 'above'} the {line} of the line there; "
                f"it {effect}.",
                f"Shut it off, drain it, charge it to {_right_charge(facts, tank)}, and open it again.",
            )


def _differs(tank: TankFacts, profile: Profile) -> bool:
    """On a well the charge belongs just under the cut-in, so anything between that and the cut-out will do."""
    tolerance_pa = profile.charge_tolerance.value_pa + ROUNDING_PA
    return not _cut_in_pa(tank) - tolerance_pa <= tank.precharge_pa <= (tank.static_pa or 0.0) + tolerance_pa


def _cut_in_pa(tank: TankFacts) -> float:
    return (tank.static_pa or 0.0) if tank.cut_in_pa is None else tank.cut_in_pa


def _right_charge(facts: Facts, tank: TankFacts) -> str:
    if tank.serves_a_pump:
        return f"just under the {facts.pressure(_cut_in_pa(tank))} at which the pump starts"
    return facts.pressure(tank.static_pa or 0.0)
