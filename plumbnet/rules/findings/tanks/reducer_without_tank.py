"""A reducer with heated water behind it and no expansion tank, where the rules ask for one behind each."""

from collections.abc import Iterator

from plumbnet.rules.example_layouts import Example
from plumbnet.rules.facts import Facts, ReducerFacts
from plumbnet.rules.finding import Severity, finding
from plumbnet.rules.four_answers import NOT_ASKED, Answer, Breach, Met, NotApplicable
from plumbnet.rules.rule_profile import Profile

BAD = Example("""\
plumbnet: 1
rules: upc-2024
parts:
  street: {kind: main, pressure: 70 psi}
  reducer: {kind: pressure_reducer, set: 55 psi, bypass: true}  # <- reducer-without-tank
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi}}
  tap: fixture
runs:
  - street -> reducer -> heater -> tap.hot
""")

GOOD = BAD.altered("""
  reducer: ...
  split: tee
  tank: {kind: expansion_tank, volume: 5 gal, precharge: 55 psi}
runs:
  - street -> reducer -> split -> heater -> tap.hot
  - split -> tank
""")


@finding(
    "reducer-without-tank",
    Severity.ERROR,
    bad=BAD,
    good=GOOD,
    rests_on="tank_behind_reducer",
    asks="An expansion tank hangs behind each reducer behind which water is heated.",
    of="pressure reducers",
)
def reducer_without_tank(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """Heated water stands behind a reducer that has no expansion tank, and the rules ask for one behind each.

    They ask whether the reducer has a bypass or not. Fit the tank in the cold distribution piping downstream of the
    reducer. A relief valve in its place is a matter of a licensed design, where the rules allow it at all.
    """
    if not profile.tank_behind_reducer.is_asked:
        yield NOT_ASKED
        return
    for reducer in facts.reducers:
        if not reducer.is_heated:
            yield NotApplicable((reducer.name,), "no heated water stands behind it")
        elif reducer.has_tank:
            yield Met((reducer.name,), "water behind it can push into an expansion tank")
        elif _is_relieved(reducer, profile):
            yield Met((reducer.name,), "an expansion relief valve that the rules know stands in for the tank")
        else:
            yield Breach(
                (reducer.name,),
                f"heated water stands behind {reducer.name}, and no expansion tank.",
                f"Fit one in the cold piping downstream of {reducer.name}, charged to its set of "
                f"{facts.pressure(reducer.set_pa)}.",
            )


def _is_relieved(reducer: ReducerFacts, profile: Profile) -> bool:
    """Whether an expansion relief valve stands in for the tank; what is to be said of it is another finding."""
    ruling = profile.expansion_relief
    is_low = reducer.relief_set_pa is not None and ruling.takes_set(reducer.relief_set_pa)
    return is_low and ruling.value != "does-not-count"
