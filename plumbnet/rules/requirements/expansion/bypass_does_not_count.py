"""A heater that is open only by the bypass of a reducer, where the rules give a bypass no credit."""

from collections.abc import Iterator

from plumbnet.rules.example_layouts import Example
from plumbnet.rules.facts import Facts, HeaterFacts, Verdict
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import Answer, Breach, Met, NotApplicable
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import listed
from plumbnet.rules.tank_behind_reducer import wants_tank

BAD = Example("""\
plumbnet: 1
rules: ipc-2021
parts:
  street: {kind: main, pressure: 70 psi}
  reducer: {kind: pressure_reducer, set: 55 psi, bypass: true}
  heater:  # <- bypass-does-not-count
    {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi, temperature: 210 degF}}
  tap: fixture
runs:
  - street -> reducer -> heater -> tap.hot
""")

GOOD = BAD.altered("rules: general")


@requirement(
    "bypass-does-not-count",
    Severity.ERROR,
    bad=BAD,
    good=GOOD,
    rests_on="bypass",
    asks="A way back through the bypass of a reducer is not counted on.",
    of="heaters",
)
def bypass_does_not_count(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """A heater is open only by the bypass of a reducer, and the rules give a bypass no credit.

    A bypass is small, sticks, and opens only once the building stands above the main, so some codes take every reducer
    as closing, others once the building would pass the reducer's set. Fit an expansion tank between the reducer and
    the heater.
    """
    ruling = profile.bypass
    if ruling.value == "counts":
        yield NotApplicable((), "the rules count a bypass as a way back")
        return
    for heater in facts.heaters:
        if heater.verdict is not Verdict.OPEN or not heater.open_by_bypass:
            yield NotApplicable((heater.name,), "no bypass keeps it open")
        elif _is_denied(facts, profile, heater):
            limit = " above the reducer's set" if ruling.value == "counts-up-to-set" else ""
            yield Breach(
                (heater.name, *heater.open_by_bypass),
                f"{heater.name} is open only by the bypass of {listed(heater.open_by_bypass)}, which the rules do "
                f"not count as a way back{limit}.",
                f"Fit an expansion tank between {heater.name} and {heater.open_by_bypass[0]}, charged to the set of "
                "the reducer.",
            )
        else:
            why = "a control of expansion is there too" if heater.has_control else "the main stands below the set"
            yield Met((heater.name, *heater.open_by_bypass), why)


def _is_denied(facts: Facts, profile: Profile, heater: HeaterFacts) -> bool:
    """Whether the bypass does not count, no control stands in for it, and its reducer is not told to want a tank."""
    met = [reducer for reducer in facts.reducers if reducer.name in heater.open_by_bypass]
    is_told = any(wants_tank(reducer, profile) for reducer in met)
    if profile.bypass.value == "counts" or heater.has_control or is_told:
        return False
    passes_set = any(r.upstream_pa is not None and r.upstream_pa > r.set_pa for r in met)
    return profile.bypass.value == "does-not-count" or passes_set
