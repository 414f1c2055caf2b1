"""A reducer with heated water behind it and no expansion tank, where the rules ask for one behind each."""

from collections.abc import Iterator

from plumbnet.rules.example_layouts import Example
from plumbnet.rules.facts import Facts, ReducerFacts, Verdict
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import NOT_ASKED, Answer, Breach, Met, NotApplicable
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.tank_behind_reducer import wants_tank

BAD = Example("""\
plumbnet: 1
rules: upc-2024
parts:
  street: {kind: main, pressure: 90 psi}
  reducer: {kind: pressure_reducer, set: 55 psi, bypass: true}  # <- reducer-without-tank
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi, temperature: 210 degF}}
runs:
  - street -> reducer -> heater
""")

GOOD = BAD.altered("""
  reducer: ...
  split: tee
  tank: {kind: expansion_tank, volume: 5 gal, precharge: 55 psi}
runs:
  - street -> reducer -> split -> heater
  - split -> tank
""")


@requirement(
    "reducer-without-tank",
    Severity.ERROR,
    bad=BAD,
    good=GOOD,
    rests_on="tank_behind_reducer",
    asks="An expansion tank hangs behind each reducer behind which water is heated.",
    of="pressure reducers",
    held_to=("expansion_relief",),
)
def reducer_without_tank(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """Heated water stands behind a reducer that has no expansion tank, and the rules ask for one behind each.

    They ask whether the reducer has a bypass or not, some of them only where more than a given pressure stands before
    it. Fit the tank in the cold distribution piping downstream of the reducer. A relief valve in its place is a matter
    of a licensed design, where the rules allow it at all.
    """
    ruling = profile.tank_behind_reducer
    if not ruling.is_asked:
        yield NOT_ASKED
        return
    for reducer in facts.reducers:
        if not reducer.is_heated:
            yield NotApplicable((reducer.name,), "no heated water stands behind it")
        elif not ruling.asks_behind(reducer.upstream_pa):
            yield NotApplicable((reducer.name,), "the rules ask for no reducer here, and so for no tank behind it")
        elif reducer.has_tank:
            yield Met((reducer.name,), "water behind it can push into an expansion tank")
        elif not wants_tank(reducer, profile):
            yield Met((reducer.name,), "an expansion relief valve that the rules know stands in for the tank")
        elif _is_told(facts, reducer):
            yield NotApplicable((reducer.name,), "it shuts a heater in, of which is told that it wants a tank")
        else:
            yield Breach(
                (reducer.name,),
                f"heated water stands behind {reducer.name}, and no expansion tank.",
                f"Fit one in the cold piping downstream of {reducer.name}, charged to its set of "
                f"{facts.pressure(reducer.set_pa)}.",
            )


def _is_told(facts: Facts, reducer: ReducerFacts) -> bool:
    """Whether a heater that the reducer shuts in is found closed: the tank is then told with the heater."""
    shut_in = (one for one in facts.heaters if one.verdict in {Verdict.TRAPPED, Verdict.SEALED})
    return any(reducer.name in stops for heater in shut_in for stops in heater.stopped_by.sets)
