"""Check valves on the hot side, and systems that only an accident keeps open."""

from collections.abc import Iterator

from plumbnet.rules.facts import Facts
from plumbnet.rules.finding import Breach, Severity, finding
from plumbnet.rules.profile import Profile

HOT_CHECK = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi}}
  check: check_valve  # <- check-on-hot-side
  tap: fixture
runs:
  - street -> heater -> check -> tap.hot
"""

COLD_CHECK = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  check: check_valve
  split: tee
  tank: {kind: expansion_tank, volume: 5 gal, precharge: 60 psi}
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi}}
  tap: fixture
runs:
  - street -> check -> split -> heater -> tap.hot
  - split -> tank
"""

CROSSOVER = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  split: tee
  check: check_valve
  heater:  # <- open-only-by-crossover
    {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi}}
  shower: {kind: fixture, crossover: true}
runs:
  - street -> split -> check -> heater -> shower.hot
  - split -> shower.cold
"""

NO_CHECK = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  split: tee
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi}}
  shower: {kind: fixture, crossover: true}
runs:
  - street -> split -> heater -> shower.hot
  - split -> shower.cold
"""


@finding("check-on-hot-side", Severity.WARNING, bad=HOT_CHECK, good=COLD_CHECK)
def check_on_hot_side(facts: Facts, _profile: Profile) -> Iterator[Breach]:
    """A check valve sits in a hot pipe, where it closes the piping behind it on its own.

    Hot water caught behind it cools and pulls a vacuum, sun or trace heating makes it climb, and a tank on
    the far side serves the heater one way only. Take it out unless the design needs it.
    """
    for name in facts.hot_side_checks:
        yield Breach(
            (name,),
            f"{name} stands in a hot pipe and closes what lies behind it.",
            "Take it out unless the design needs it there.",
        )


@finding("open-only-by-crossover", Severity.WARNING, bad=CROSSOVER, good=NO_CHECK)
def open_only_by_crossover(facts: Facts, _profile: Profile) -> Iterator[Breach]:
    """A heater is open only through a joint of hot and cold that nobody counts on.

    A crossed fixture or a mixing valve without checks lets the water out today; the repair that takes it
    away closes the system. Treat the heater as closed and give it a control.
    """
    for heater in facts.heaters:
        if heater.open_by_accident:
            yield Breach(
                (heater.name, *heater.open_by_accident),
                f"{heater.name} is open only through {' and '.join(heater.open_by_accident)}, "
                "where hot and cold are joined.",
                "Treat it as closed: mend the joint and fit a control for the expansion.",
            )
