"""What may be wrong with an expansion tank: too small, cut off, wrongly charged, waterlogged, on the hot side."""

from collections.abc import Iterator

from plumbnet.rules.facts import Facts, TankFacts, Verdict
from plumbnet.rules.finding import Breach, Severity, finding
from plumbnet.rules.profile import Profile

RIGHT = """\
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

TOO_SMALL = RIGHT.replace("volume: 5 gal, precharge: 60 psi}", "volume: 1 gal, precharge: 60 psi}").replace(
    "relief: {pressure: 150 psi}}", "relief: {pressure: 150 psi}}  # <- tank-too-small"
)

CUT_OFF = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  split: tee
  tank: {kind: expansion_tank, volume: 5 gal, precharge: 60 psi}  # <- tank-cut-off
  check: check_valve
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi}}
  tap: fixture
runs:
  - street -> split -> check -> heater -> tap.hot
  - split -> tank
"""

WRONG_CHARGE = RIGHT.replace("precharge: 60 psi}", "precharge: 40 psi}  # <- tank-charge-differs")

WATERLOGGED = RIGHT.replace("precharge: 60 psi}", "precharge: 60 psi, state: waterlogged}  # <- tank-waterlogged")

ON_HOT_SIDE = """\
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


@finding("tank-too-small", Severity.ERROR, bad=TOO_SMALL, good=RIGHT)
def tank_too_small(facts: Facts, _profile: Profile) -> Iterator[Breach]:
    """A tank is there and takes water, but not enough of it below the limit.

    The pressure passes the limit at each heat-up. Exchange the tank for a larger one, or add another.
    """
    for heater in facts.heaters:
        if heater.verdict is Verdict.TRAPPED and heater.tanks:
            yield Breach(
                (heater.name, *heater.tanks),
                f"{' and '.join(heater.tanks)} can take {facts.volume(heater.shared_expansion_m3 - heater.short_m3)} "
                f"of the {facts.volume(heater.shared_expansion_m3)} by which the water of {heater.name} grows; "
                f"{facts.volume(heater.short_m3)} finds no room below {facts.pressure(heater.limit_pa)}.",
                _larger(facts, heater.need.nominal_m3 or heater.need.tank_m3 if heater.need else None),
            )


def _larger(facts: Facts, size_m3: float | None) -> str:
    if size_m3 is None:
        return "No tank can do this while the static pressure stands at the limit; lower the static pressure first."
    return f"One tank of {facts.volume(size_m3)}, charged to the line pressure, takes all of it."


@finding("tank-cut-off", Severity.ERROR, bad=CUT_OFF, good=RIGHT)
def tank_cut_off(facts: Facts, _profile: Profile) -> Iterator[Breach]:
    """A tank is there, and a heater that needs it, but a one-way device stands between them.

    The tank sits on the wrong side and never takes a drop. Connect it between the last check and the heater.
    """
    if not any(heater.verdict in {Verdict.TRAPPED, Verdict.SEALED} for heater in facts.heaters):
        return
    for tank in facts.tanks:
        if not tank.reached and not tank.is_waterlogged:
            between = f": {' and '.join(tank.stopped_by)} stands between" if tank.stopped_by else ""
            yield Breach(
                (tank.name, *tank.stopped_by),
                f"water of no heater can reach {tank.name}{between}.",
                "Move the tank to the heater's side of the last check, in the cold pipe.",
            )


@finding("tank-charge-differs", Severity.WARNING, bad=WRONG_CHARGE, good=RIGHT)
def tank_charge_differs(facts: Facts, profile: Profile) -> Iterator[Breach]:
    """A tank's air charge is not the line pressure where it hangs.

    Undercharged, it stands part full of water before heating starts; overcharged, it takes nothing until the
    pressure has climbed to its charge. Either way room is lost. Set the charge with the tank empty of water.
    """
    tolerance_pa = profile.charge_tolerance.value_pa
    for tank in facts.tanks:
        if not tank.is_waterlogged and _differs(tank, tolerance_pa):
            lower_higher = "below" if tank.precharge_pa < (tank.static_pa or 0.0) else "above"
            yield Breach(
                (tank.name,),
                f"{tank.name} is charged to {facts.pressure(tank.precharge_pa)}, {lower_higher} the "
                f"{facts.pressure(tank.static_pa or 0.0)} of the line there.",
                f"Shut it off, drain it, and charge it to {facts.pressure(tank.static_pa or 0.0)}.",
            )


def _differs(tank: TankFacts, tolerance_pa: float) -> bool:
    """On a well the charge belongs just under the cut-in, so anything between that and the cut-out will do."""
    if tank.static_pa is None:
        return False
    lowest_pa = tank.static_pa if tank.lowest_pa is None else tank.lowest_pa
    return not lowest_pa - tolerance_pa <= tank.precharge_pa <= tank.static_pa + tolerance_pa


@finding("tank-waterlogged", Severity.ERROR, bad=WATERLOGGED, good=RIGHT)
def tank_waterlogged(facts: Facts, _profile: Profile) -> Iterator[Breach]:
    """A tank has lost its air and is full of water: it is no tank any more. Exchange it."""
    for tank in facts.tanks:
        if tank.is_waterlogged:
            yield Breach(
                (tank.name,), f"{tank.name} is full of water and takes nothing.", "Exchange the tank or its membrane."
            )


@finding("tank-on-hot-side", Severity.WARNING, bad=ON_HOT_SIDE, good=RIGHT)
def tank_on_hot_side(facts: Facts, _profile: Profile) -> Iterator[Breach]:
    """A tank hangs on the hot pipe. It works, but heat ages its membrane, and codes ask for the cold side."""
    for tank in facts.tanks:
        if tank.on_hot_side and tank.reached:
            yield Breach(
                (tank.name,),
                f"{tank.name} hangs on the hot side of a heater.",
                "Move it to the cold pipe of the heater, behind the last check.",
            )
