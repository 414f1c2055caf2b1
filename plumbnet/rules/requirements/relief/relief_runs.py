"""A safety relief valve set below what its supply stands at: it never shuts."""

from collections.abc import Iterator

from plumbnet.layout.model.kinds import FillingLoop
from plumbnet.layout.units import PRESSURE
from plumbnet.rules.example_layouts import RELIEF_HOUSE
from plumbnet.rules.facts import Facts, ReliefFacts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import NO_WATER, Answer, Breach, Measured, Met, NotApplicable
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import listed

BAD = RELIEF_HOUSE.altered("""
  street: {kind: main, pressure: 160 psi}
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, input: 40000 Btu/h}
  relief: {kind: relief_valve, pressure: 150 psi, temperature: 210 degF}  # <- relief-runs
""")

GOOD = BAD.altered("  street: {kind: main, pressure: 60 psi}")


@requirement(
    "relief-runs",
    Severity.ERROR,
    bad=BAD,
    good=GOOD,
    asks="The supply of a safety relief valve does not hold it open.",
    of="safety relief valves",
)
def relief_runs(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """The supply stands above the set of a safety relief valve, which runs day and night.

    It wastes water, scales up and may stick when it is needed. Lower the pressure with a reducer; the valve stays.
    """
    for relief in facts.reliefs:
        if relief.static_pa is None:
            yield NotApplicable((relief.name,), NO_WATER)
        elif not relief.runs:
            yield Met((relief.name,), measured=Measured(relief.static_pa, relief.set_pa, PRESSURE))
        else:
            yield Breach(
                (relief.name,),
                _runs(facts, relief, relief.static_pa),
                _advice(facts, profile.highest_below_relief_pa(relief.set_pa)),
                Measured(relief.static_pa, relief.set_pa, PRESSURE),
            )


def _runs(facts: Facts, relief: ReliefFacts, static_pa: float) -> str:
    """What stands at it: by the supply's name where that is the only one and the valve feels its very pressure."""
    static, opens = facts.pressure(static_pa), facts.pressure(relief.set_pa)
    sources = [(name, source) for name, part in facts.system.parts.items() if (source := part.source()) is not None]
    if len(sources) == 1 and facts.pressure(sources[0][1].pressure_pa) == static:
        return f"{sources[0][0]} stands at {static}, above the {opens} set of {relief.name}: it runs all the time."
    return f"{static} stands at {relief.name}, above its set of {opens}: it runs all the time."


def _advice(facts: Facts, most_pa: float) -> str:
    parts = facts.system.parts
    loops = [name for name, part in parts.items() if isinstance(part, FillingLoop) and part.state == "open"]
    shut = f"Shut {listed(loops)}, if it is fed by that; or fit" if loops else "Fit"
    return (
        f"{shut} a pressure reducer, or set the one that is there, so that no more than {facts.pressure(most_pa)} "
        "stands at it, and look for the expansion tank behind the reducer; the valve stays as it is."
    )
