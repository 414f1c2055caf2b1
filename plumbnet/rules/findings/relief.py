"""A heater without a relief valve of its own, and a relief valve with something between it and the heater."""

from collections.abc import Iterator

from plumbnet.rules.facts import Facts
from plumbnet.rules.finding import Breach, Severity, finding
from plumbnet.rules.profile import Profile

MISSING = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF}  # <- relief-missing
  tap: fixture
runs:
  - street -> heater -> tap.hot
"""

FITTED = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF}
  relief: {kind: relief_valve, pressure: 150 psi}
  tap: fixture
runs:
  - street -> heater -> tap.hot
  - heater.relief -> relief
"""

BEHIND_VALVE = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF}
  stop: valve
  relief: {kind: relief_valve, pressure: 150 psi}  # <- relief-behind-valve
  tap: fixture
runs:
  - street -> heater -> tap.hot
  - heater.relief -> stop -> relief
"""


@finding("relief-missing", Severity.ERROR, bad=MISSING, good=FITTED)
def relief_missing(facts: Facts, _profile: Profile) -> Iterator[Breach]:
    """A heater has no relief valve on its own tapping, nor an open vent.

    If its thermostat sticks the water boils under pressure. Fit a temperature and pressure relief valve with
    nothing between it and the heater. A heater that fires only on flow is asked for one here only where a
    pump keeps it firing; the local code may ask for one anyway.
    """
    behind = {name for relief in facts.reliefs if not relief.touches_vessel for name in relief.touches}
    for heater in facts.heaters:
        fires_alone = not heater.on_flow or heater.loops
        if fires_alone and not heater.relieved_by and not heater.vented and not (behind & _beside(facts, heater.name)):
            yield Breach(
                (heater.name,),
                f"{heater.name} has no relief valve of its own.",
                "Fit a temperature and pressure relief valve to its tapping, with nothing between.",
            )


def _beside(facts: Facts, heater: str) -> set[str]:
    """Parts that a pipe joins to the heater's relief tapping."""
    ends = [(pipe.start, pipe.end) for pipe in facts.system.pipes]
    joined = ends + [(end, start) for start, end in ends]
    return {end.part for start, end in joined if start.part == heater and start.port == "relief"}


@finding("relief-behind-valve", Severity.ERROR, bad=BEHIND_VALVE, good=FITTED)
def relief_behind_valve(facts: Facts, _profile: Profile) -> Iterator[Breach]:
    """A safety relief valve touches no heater: something stands between that can shut or stick.

    A relief valve that can be cut off protects nothing. Move it to the heater's own tapping.
    """
    for relief in facts.reliefs:
        if not relief.touches_vessel:
            between = " and ".join(relief.touches) or "nothing but pipe"
            yield Breach(
                (relief.name, *relief.touches),
                f"{relief.name} sits on no heater: {between} stands between.",
                "Connect it to the heater's own tapping, with nothing between.",
            )
