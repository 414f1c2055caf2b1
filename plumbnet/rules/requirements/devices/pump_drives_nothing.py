"""A circulator that runs and can drive water round no loop."""

from collections.abc import Iterator

from plumbnet.rules.example_layouts import LOOP_HOUSE
from plumbnet.rules.facts import Facts, HinderedFacts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import Answer, Breach, Met
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile

BAD = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  split: tee
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi, temperature: 210 degF}}
  pump: circulator  # <- pump-drives-nothing
  tap: fixture
runs:
  - street -> split -> heater -> tap.hot
  - split -> pump -> tap.cold
"""


@requirement(
    "pump-drives-nothing",
    Severity.WARNING,
    bad=BAD,
    good=LOOP_HOUSE,
    asks="A circulator that runs drives water round a loop.",
    of="circulators that run",
)
def pump_drives_nothing(facts: Facts, _profile: Profile) -> Iterator[Answer]:
    """A running circulator has no way round: a dead end, a shut valve or a check against it.

    It stirs water, brings nobody hot water, and wears out. Look for a missing return, a shut valve, or a check
    put in backwards. Or a pressure reducer stands in its loop, and the pump cannot lift water from the set of that
    reducer to the pressure against which it must come back: the zone behind a reducer then wants a return of its own.
    """
    hindered = {one.pump: one for one in facts.hindered_pumps}
    for name in facts.circulators:
        if name in hindered:
            yield _hindered(facts, hindered[name])
        elif name in facts.idle_pumps:
            yield Breach(
                (name,),
                f"{name} runs, but there is no way round on which it could drive the water.",
                "Look for a missing return, a shut valve, or a check that faces the wrong way.",
            )
        else:
            yield Met((name,), "it drives water round")


def _hindered(facts: Facts, one: HinderedFacts) -> Breach:
    stands, own, comes = (facts.pressure(each) for each in (one.stands_pa, one.set_pa, one.comes_pa))
    return Breach(
        (one.pump,),
        f"{one.pump} runs and drives nothing: {stands} stands {_place(one)}, where its water must come back, and from "
        f"{one.reducer}, set to {own}, it comes with {comes}{_head(facts, one)}.",
        f"Let the return of the zone behind {one.reducer} end at a heater of that zone, or at a heater or exchanger "
        f"behind {one.reducer}, or give that zone a loop of its own{_or_head(one)}.",
    )


def _place(one: HinderedFacts) -> str:
    if one.at == one.pump:
        return "at its outlet"
    return f"behind {one.reducer}" if one.at == one.reducer else f"at {one.at}"


def _head(facts: Facts, one: HinderedFacts) -> str:
    if not one.head_helps:
        return ", whatever the pump's head"
    if one.head_pa is None:
        return "; the pump's head is not given and is taken as too little"
    return f"; the pump's head of {facts.pressure(one.head_pa)} is too little"


def _or_head(one: HinderedFacts) -> str:
    needed = one.head_helps and one.head_pa is None
    return f"; if {one.pump} does lift that far, write its head" if needed else ""
