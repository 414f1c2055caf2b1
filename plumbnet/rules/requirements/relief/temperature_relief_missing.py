"""A store of hot drinking water whose relief valves relieve pressure only."""

from collections.abc import Iterator

from plumbnet.rules.example_layouts import RELIEF_HOUSE
from plumbnet.rules.facts import Facts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import NOT_ASKED, Answer, Breach, Met, NotApplicable
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import agreeing

BAD = RELIEF_HOUSE.altered("""
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF}  # <- temperature-relief-missing
  relief: {kind: relief_valve, pressure: 150 psi}
""")

GOOD = BAD.altered("  relief: {kind: relief_valve, pressure: 150 psi, temperature: 210 degF}")


@requirement(
    "temperature-relief-missing",
    Severity.ERROR,
    bad=BAD,
    good=GOOD,
    rests_on="temperature_relief",
    asks="A store of hot drinking water has temperature relief, beside that of pressure or in one valve with it.",
    of="heaters",
)
def temperature_relief_missing(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """A store of hot drinking water has relief valves for pressure only, where the rules ask for temperature too.

    With the thermostat stuck, its water can pass the boiling point long before the pressure opens a valve, and flash to
    steam once one opens. Fit a combined valve, or one for temperature besides. What has no relief valve at all is a
    finding of its own, `relief-missing`; what stands open to the air cannot overheat far.
    """
    if not profile.temperature_relief.is_asked:
        yield NOT_ASKED
        return
    opens_k = {relief.name: relief.opens_k for relief in facts.reliefs}
    for heater in facts.heaters:
        combined = [name for name in heater.relieved_by if opens_k[name] is not None]
        if not facts.system.parts[heater.name].keeps_hot:
            yield NotApplicable((heater.name,), "it keeps no hot water to be drawn")
        elif heater.vented:
            yield NotApplicable((heater.name,), "it stands open to the air, with no valve between")
        elif not heater.relieved_by:
            yield NotApplicable((heater.name,), "it has no relief valve of its own, which is asked for apart")
        elif combined:
            yield Met((heater.name, *combined), f"{agreeing(combined, 'opens')} by temperature too")
        else:
            yield Breach(
                (heater.name, *heater.relieved_by),
                f"{heater.name} has no temperature relief: {agreeing(heater.relieved_by, 'relieves')} pressure only.",
                "Have a temperature and pressure relief valve fitted to its tapping, or one for temperature besides, "
                "with nothing between; if the valve there is a combined one, write its temperature.",
            )
