"""A check valve in a hot pipe, where it closes the piping behind it on its own."""

from collections.abc import Iterator

from plumbnet.rules.example_layouts import PLAIN_HOUSE
from plumbnet.rules.facts import Facts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import Answer, Breach, Met
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile

BAD = PLAIN_HOUSE.altered("""
  heater: ...
  check: check_valve  # <- check-on-hot-side
runs:
  - street -> heater -> check -> tap.hot
""")

GOOD = PLAIN_HOUSE.altered("""
  street: ...
  check: check_valve
  split: tee
  tank: {kind: expansion_tank, volume: 5 gal, precharge: 60 psi}
runs:
  - street -> check -> split -> heater -> tap.hot
  - split -> tank
""")


@requirement(
    "check-on-hot-side",
    Severity.WARNING,
    bad=BAD,
    good=GOOD,
    asks="No check shuts in the water of a hot pipe on its own.",
    of="check valves",
)
def check_on_hot_side(facts: Facts, _profile: Profile) -> Iterator[Answer]:
    """A check valve sits in a hot pipe, where it closes the piping behind it on its own.

    Water caught behind it has no tank and no relief valve: as it cools the pressure falls away, and sun or
    trace heating makes it climb. A tank on the far side takes the heater's water and never gives it back.
    Take the check out unless the design needs it. One in a loop that a pump drives stays: it keeps the water from
    turning back, and what lies behind it can push on round the loop to the heater.
    """
    hot_side = frozenset(facts.hot_side_checks)
    driven = frozenset(name for heater in facts.heaters for loop in heater.loops for name in loop)
    for name, part in facts.system.parts.items():
        if name in hot_side & driven:
            yield Met(
                (name,), "a pump drives water through it, round to the heater, and it keeps that from turning back"
            )
        elif name in hot_side:
            yield Breach(
                (name,),
                f"{name} stands in a hot pipe and shuts in the water between itself and the taps.",
                "Take it out unless the design needs it there.",
            )
        elif part.is_check:
            yield Met((name,), "it stands in no hot pipe")
