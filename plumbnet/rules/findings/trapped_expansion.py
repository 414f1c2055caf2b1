"""A heater whose expansion has nowhere to go but the relief valve, or not even that."""

from collections.abc import Iterator

from plumbnet.rules.facts import Facts, HeaterFacts, Verdict
from plumbnet.rules.finding import Breach, Severity, finding
from plumbnet.rules.profile import Profile

BAD = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  meter: {kind: meter, check: true}
  heater:  # <- trapped-expansion
    {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi}}
  tap: fixture
runs:
  - street -> meter -> heater -> tap.hot
"""

GOOD = BAD.replace(", check: true", "")

SEALED = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  meter: {kind: meter, check: true}
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF}  # <- sealed-heater
  tap: fixture
runs:
  - street -> meter -> heater -> tap.hot
"""


@finding("trapped-expansion", Severity.ERROR, bad=BAD, good=GOOD)
def trapped_expansion(facts: Facts, _profile: Profile) -> Iterator[Breach]:
    """A heater is closed and the pressure passes the limit at each heat-up.

    The safety relief valve then weeps or lifts day after day, scales up, and one day does not open.
    Fit an expansion tank in the cold pipe between the last check and the heater, sized and charged for the
    line pressure there, or another control that the local code accepts.
    """
    for heater in facts.heaters:
        if heater.verdict is Verdict.TRAPPED and not heater.tanks:
            yield Breach((heater.name, *_stops(heater)), _closed(facts, heater), _cure(facts, heater))


@finding("sealed-heater", Severity.ERROR, bad=SEALED, good=BAD)
def sealed_heater(facts: Facts, _profile: Profile) -> Iterator[Breach]:
    """A heater is closed and no relief valve can be reached: something will break.

    Take the heater out of use until a temperature and pressure relief valve is fitted to its own tapping
    with nothing between, then fit a control for the expansion.
    """
    for heater in facts.heaters:
        if heater.verdict is Verdict.SEALED:
            yield Breach(
                (heater.name, *_stops(heater)),
                f"{_closed(facts, heater)} No relief valve can open.",
                "Keep the heater off until a relief valve is fitted to its own tapping with nothing between; "
                f"then: {_cure(facts, heater)}",
            )


def _stops(heater: HeaterFacts) -> tuple[str, ...]:
    return heater.stopped_by.sets[0] if heater.stopped_by.sets else ()


def _closed(facts: Facts, heater: HeaterFacts) -> str:
    stops = " or ".join(" and ".join(names) for names in heater.stopped_by.sets)
    stopped = f"stopped by {stops}" if stops else "no pipe leads back to the main or to open air"
    grows = facts.volume(heater.shared_expansion_m3)
    return (
        f"{heater.name} is closed ({stopped}); its water grows by {grows} and nothing keeps it at or below "
        f"{facts.pressure(heater.limit_pa)}."
    )


def _cure(facts: Facts, heater: HeaterFacts) -> str:
    need = heater.need
    if need is None or need.tank_m3 is None:
        return "No tank can do this while the static pressure stands at the limit; lower the static pressure first."
    size = facts.volume(need.nominal_m3 or need.tank_m3)
    return f"Fit an expansion tank of {size} charged to {facts.pressure(need.precharge_pa)} at {need.at}."
