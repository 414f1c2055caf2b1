"""Heating and cooling again and again with no tap drawn pumps water through a check that it cannot come back by."""

from collections.abc import Iterator

from plumbnet.rules.deciding_values import limit_pumped_past
from plumbnet.rules.example_layouts import Example
from plumbnet.rules.facts import TROUBLED, Facts, PumpedFacts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import Answer, Breach, Met, NotApplicable
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import agreeing, listed, place

BAD = Example("""\
plumbnet: 1
units: metric
parts:
  street: {kind: main, pressure: 400 kPa}
  stop-check: check_valve
  cold-tee: tee
  solar:  # <- pumped-up
    {kind: storage_heater, volume: 400 L, setpoint: 60 degC, relief: {pressure: 1000 kPa, temperature: 95 degC}}
  hot-check: check_valve
  warm-tee: tee
  storage: {kind: storage_heater, volume: 300 L, setpoint: 60 degC, relief: {pressure: 1000 kPa, temperature: 95 degC}}
  tank: {kind: expansion_tank, volume: 80 L, precharge: 400 kPa}
  tap: fixture
runs:
  - street -> stop-check -> cold-tee -> solar -> hot-check -> warm-tee -> storage -> tap.hot
  - warm-tee -> tank
""")

GOOD = BAD.altered("""
  solar: {kind: storage_heater, volume: 400 L, setpoint: 60 degC, relief: {pressure: 1000 kPa, temperature: 95 degC}}
  tank: ...
  first-tank: {kind: expansion_tank, volume: 80 L, precharge: 400 kPa}
runs:
  - street -> stop-check -> cold-tee -> solar -> hot-check -> warm-tee -> storage -> tap.hot
  - warm-tee -> tank
  - cold-tee -> first-tank
""")


@requirement(
    "pumped-up",
    Severity.WARNING,
    bad=BAD,
    good=GOOD,
    asks="Heating and cooling again and again with no tap drawn brings no place above its limit.",
    of="heaters",
    held_to=(limit_pumped_past,),
)
def pumped_up(facts: Facts, _profile: Profile) -> Iterator[Answer]:
    """Each time a heater warms it pushes water through a check, and as it cools the street makes up for it.

    One heat-up leaves everything below its limit; but water that has passed the check does not come back, so that with
    no tap drawn, as during a holiday, the pressure beyond climbs from day to day. A tank on the heater's own side of
    the check stops it: it takes the growth, and gives it back as the heater cools.
    """
    pumping = {name for one in facts.pumped for name in one.heaters}
    for one in facts.pumped:
        yield Breach((*one.heaters, one.part), _text(facts, one), _advice(facts, one))
    for heater in facts.heaters:
        if heater.verdict in TROUBLED:
            yield NotApplicable((heater.name,), "one heat-up is too much already")
        elif heater.name not in pumping:
            yield Met((heater.name,), "no check holds more of its water after each heat-up than a place can bear")


def _text(facts: Facts, one: PumpedFacts) -> str:
    when = "in the end" if one.heat_ups is None else f"at heat-up {one.heat_ups}"
    end = f", and goes on to {facts.pressure(one.top_pa)}" if one.top_pa < float("inf") else ", and goes on without end"
    return (
        f"with no tap drawn, {agreeing(one.heaters, 'pushes')} more water through {listed(one.through)} at each "
        f"heat-up, and none comes back: {one.part} passes {facts.pressure(one.limit_pa)} {when}{end}."
    )


def _advice(facts: Facts, one: PumpedFacts) -> str:
    before = f"before {listed(one.through)}"
    if one.tank_m3 is None:
        return f"Take up the growth of {listed(one.heaters)} {before}, or take out what keeps it from coming back."
    size = f"at least {facts.volume(one.tank_m3)}"
    if one.nominal_m3 is not None:
        size = f"{facts.volume(one.nominal_m3)} ({size})"
    charge = facts.pressure(one.precharge_pa)
    return f"Fit a tank {before} too, {place(one.at)}: {size}, charged to {charge}."
