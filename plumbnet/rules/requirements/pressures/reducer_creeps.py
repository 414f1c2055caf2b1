"""A pressure reducer whose seat leaks, so that it holds its set only while water is drawn."""

from collections.abc import Iterator

from plumbnet.layout.model import Reducing
from plumbnet.rules.example_layouts import PLAIN_HOUSE
from plumbnet.rules.facts import Facts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import Answer, Breach, Met
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile

BAD = PLAIN_HOUSE.altered("""
  street: {kind: main, pressure: 75 psi}
  reducer: {kind: pressure_reducer, set: 50 psi, bypass: true, state: creeping}  # <- reducer-creeps
runs:
  - street -> reducer -> heater -> tap.hot
""")

GOOD = BAD.altered("""
  reducer: {kind: pressure_reducer, set: 50 psi, bypass: true}
""")


@requirement(
    "reducer-creeps",
    Severity.ERROR,
    bad=BAD,
    good=GOOD,
    asks="A pressure reducer shuts at its set while nobody draws.",
    of="pressure reducers",
    practice="common practice: a gauge behind it, all taps shut, climbs no higher than its set",
)
def reducer_creeps(facts: Facts, _profile: Profile) -> Iterator[Answer]:
    """A pressure reducer creeps: with no water running, what lies behind it comes up to what stands before it.

    Grit or wear at the seat is the commonest failure of a reducer. It is put right before a tank is charged or chosen
    by what stands behind it, for that is not what will stand there.
    """
    for name, part in facts.system.parts.items():
        set_pa = part.creeps_past_pa()
        if set_pa is not None:
            yield Breach(
                (name,),
                f"{name} creeps: with no water running it does not hold its set, {facts.pressure(set_pa)}.",
                f"Clean or renew its seat, or exchange it; only then charge, set or add anything behind {name}.",
            )
        elif any(isinstance(passage, Reducing) for passage in part.passages()):
            yield Met((name,), "it shuts tight")
