"""A heater with neither a relief valve of its own nor an open vent."""

from collections.abc import Iterator

from plumbnet.rules.facts import Facts
from plumbnet.rules.finding import Breach, Severity, finding
from plumbnet.rules.profile import Profile

BAD = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF}  # <- relief-missing
  tap: fixture
runs:
  - street -> heater -> tap.hot
"""

GOOD = """\
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


@finding("relief-missing", Severity.ERROR, bad=BAD, good=GOOD)
def relief_missing(facts: Facts, _profile: Profile) -> Iterator[Breach]:
    """A heater has neither a relief valve of its own nor an open vent.

    If its thermostat sticks, the water boils under pressure and the heater can burst. Fit a temperature and
    pressure relief valve with nothing between it and the heater. A heater that fires only on flow is asked
    for one here only where a pump keeps it firing; the local code may ask for one anyway.
    """
    behind = {name for relief in facts.reliefs if not relief.touches_vessel for name in relief.touches}
    for heater in facts.heaters:
        fires_alone = not heater.on_flow or heater.loops
        if fires_alone and not heater.relieved_by and not heater.vented and not (behind & _beside(facts, heater.name)):
            yield Breach(
                (heater.name,),
                f"{heater.name} has no relief valve of its own.",
                "Keep it off until a temperature and pressure relief valve is on its own tapping, nothing between.",
            )


def _beside(facts: Facts, heater: str) -> set[str]:
    """Parts that a pipe joins to the heater's relief tapping."""
    ends = [(pipe.start, pipe.end) for pipe in facts.system.pipes]
    joined = ends + [(end, start) for start, end in ends]
    return {end.part for start, end in joined if start.part == heater and start.port == "relief"}
