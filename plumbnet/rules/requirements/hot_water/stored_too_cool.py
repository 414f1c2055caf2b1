"""A store of hot drinking water set lower than the rules ask for."""

from collections.abc import Iterator

from plumbnet.layout.model import Circuit
from plumbnet.layout.units import TEMPERATURE
from plumbnet.rules.example_layouts import PLAIN_HOUSE
from plumbnet.rules.facts import Facts, StoreFacts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import NOT_ASKED, Answer, Breach, Measured, Met, NotApplicable, Untold
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.ruling import StoredRuling

_BETWEEN_SCALES_K = 0.5
"""Rounding of a temperature between the scales: 60 degC is 140 degF, 49 degC is 120.2 degF."""

BAD = PLAIN_HOUSE.altered("""
plumbnet: 1
rules: uk-2010
parts: ...
  street: {kind: main, pressure: 45 psi}
  check: check_valve
  split: tee
  tank: {kind: expansion_tank, volume: 10 gal, precharge: 45 psi}
  heater:  # <- stored-too-cool
    kind: storage_heater
    volume: 40 gal
    setpoint: 50 degC
    relief: {pressure: 7 bar, temperature: 90 degC}
runs:
  - street -> check -> split -> heater -> tap.hot
  - split -> tank
""")

GOOD = BAD.altered("""
  heater:
    kind: storage_heater
    volume: 40 gal
    setpoint: 60 degC
    relief: {pressure: 7 bar, temperature: 90 degC}
""")


@requirement(
    "stored-too-cool",
    Severity.WARNING,
    bad=BAD,
    good=GOOD,
    rests_on="least_stored",
    practice="common practice: hot drinking water is stored hot enough that legionella dies, 60 degC (140 degF)",
    asks="Hot drinking water is stored at a given temperature or hotter.",
    of="stores of hot water",
)
def stored_too_cool(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """A store of hot drinking water is set lower than the rules ask for.

    Legionella grows in warm water, and dies in hot. Set it higher, and have mixing valves where people wash, who are
    scalded by what is hot enough to kill it. A store that only warms the water before another, hot enough, is not held
    to this: all that is drawn from it passes that one.
    """
    ruling = profile.least_stored
    if ruling is None:
        yield NOT_ASKED
        return
    for store in facts.stores:
        if facts.circuit_of(store.name) is Circuit.HEATING:
            yield NotApplicable((store.name,), "nobody drinks its water: it stands in a heating circuit")
        else:
            yield _answer(facts, ruling, store)


def _answer(facts: Facts, ruling: StoredRuling, store: StoreFacts) -> Answer:
    least_k = ruling.value_k - _BETWEEN_SCALES_K
    if store.setpoint_k is None:
        return NotApplicable((store.name,), "it is heated elsewhere, and asked for there")
    if ruling.only_electric and store.is_electric is False:
        return NotApplicable((store.name,), "electricity does not heat it, and the rules name no other")
    measured = Measured(store.setpoint_k, ruling.value_k, TEMPERATURE, at_least=True)
    if store.setpoint_k >= least_k:
        return Met((store.name,), measured=measured)
    if store.passes_k is not None and store.passes_k >= least_k:
        return NotApplicable(
            (store.name,), f"all that is drawn from it passes a store set to {facts.temperature(store.passes_k)}"
        )
    if ruling.only_electric and store.is_electric is None:
        return Untold((store.name,), "whether electricity heats it (electric), since the rules name no other")
    return Breach(
        (store.name,),
        f"{store.name} stores hot water at {facts.temperature(store.setpoint_k)}, below "
        f"{facts.temperature(ruling.value_k)}.",
        f"Set it to {facts.temperature(ruling.value_k)} or more, and have a mixing valve wherever that would scald "
        "whoever washes; or let all its water pass a store that is as hot.",
        measured,
    )
