"""A circulator that runs and can drive water round no loop."""

from collections.abc import Iterator

from plumbnet.rules.facts import Facts
from plumbnet.rules.finding import Breach, Severity, finding
from plumbnet.rules.profile import Profile

BAD = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  split: tee
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi}}
  pump: circulator  # <- pump-drives-nothing
  tap: fixture
runs:
  - street -> split -> heater -> tap.hot
  - split -> pump -> tap.cold
"""

GOOD = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  split: tee
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi}}
  far: tee
  pump: circulator
  tap: fixture
runs:
  - street -> split -> heater -> far -> tap.hot
  - far -> pump -> split
"""


@finding("pump-drives-nothing", Severity.WARNING, bad=BAD, good=GOOD)
def pump_drives_nothing(facts: Facts, _profile: Profile) -> Iterator[Breach]:
    """A running circulator has no way round: a dead end, a shut valve or a check against it.

    It stirs water, brings nobody hot water, and wears out. Look for a missing return, a shut valve, or a check
    put in backwards.
    """
    for name in facts.idle_pumps:
        yield Breach(
            (name,),
            f"{name} runs, but there is no way round on which it could drive the water.",
            "Look for a missing return, a shut valve, or a check that faces the wrong way.",
        )
