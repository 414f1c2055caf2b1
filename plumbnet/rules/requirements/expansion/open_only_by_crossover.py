"""A heater that only an accidental joint of hot and cold keeps open."""

from collections.abc import Iterator

from plumbnet.rules.facts import Facts, Verdict
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import Answer, Breach, Met, NotApplicable
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import listed

BAD = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  split: tee
  check: check_valve
  heater:  # <- open-only-by-crossover
    {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi, temperature: 210 degF}}
  shower: {kind: fixture, crossover: true}
runs:
  - street -> split -> check -> heater -> shower.hot
  - split -> shower.cold
"""

GOOD = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  split: tee
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi, temperature: 210 degF}}
  shower: {kind: fixture, crossover: true}
runs:
  - street -> split -> heater -> shower.hot
  - split -> shower.cold
"""


@requirement(
    "open-only-by-crossover",
    Severity.WARNING,
    bad=BAD,
    good=GOOD,
    asks="A heater is open by more than a joint of hot and cold that nobody counts on.",
    of="heaters",
)
def open_only_by_crossover(facts: Facts, _profile: Profile) -> Iterator[Answer]:
    """A heater is open only through a joint of hot and cold that nobody counts on.

    A crossed fixture or a mixing valve without checks lets the water out today; the repair that takes it
    away closes the system. Treat the heater as closed: mend the joint and fit a control for the expansion in
    the same visit.
    """
    for heater in facts.heaters:
        if heater.open_by_accident:
            yield Breach(
                (heater.name, *heater.open_by_accident),
                f"{heater.name} is open only because hot and cold are joined at {listed(heater.open_by_accident)}.",
                "Treat it as closed: mend the joint, and fit a control for the expansion in the same visit.",
            )
        elif heater.verdict is Verdict.OPEN:
            yield Met((heater.name,), "it is open without any such joint")
        else:
            yield NotApplicable((heater.name,), f"it is {heater.verdict.value}, and not open")
