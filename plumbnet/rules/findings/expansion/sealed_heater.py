"""A heater that is closed and from which not even a relief valve can be reached."""

from collections.abc import Iterator

from plumbnet.rules.facts import Facts, Verdict
from plumbnet.rules.finding import Breach, Severity, finding
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import closed, first_stops, fit_a_tank

BAD = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  meter: {kind: meter, check: true}
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF}  # <- sealed-heater
  tap: fixture
runs:
  - street -> meter -> heater -> tap.hot
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


@finding("sealed-heater", Severity.ERROR, bad=BAD, good=GOOD)
def sealed_heater(facts: Facts, _profile: Profile) -> Iterator[Breach]:
    """A heater is closed and no relief valve can be reached: heated, something breaks.

    Turn the heater off and keep it off until a temperature and pressure relief valve is fitted to its own
    tapping with nothing between. That makes it safe and not yet right: then fit a control for the expansion.
    """
    for heater in facts.heaters:
        if heater.verdict is Verdict.SEALED:
            yield Breach(
                (heater.name, *first_stops(heater)),
                f"DANGER: {closed(facts, heater)} No relief valve can open; heated, something breaks.",
                "Turn the heater off and keep it off until a relief valve is on its own tapping with nothing between. "
                f"That makes it safe, not right. {fit_a_tank(facts, heater)}",
            )
