"""A heater with neither a relief valve of its own nor an open vent."""

from collections.abc import Iterator

from plumbnet.layout.model import RELIEF
from plumbnet.rules.acceptors import MayAccept
from plumbnet.rules.example_layouts import PLAIN_HOUSE, RELIEF_HOUSE
from plumbnet.rules.facts import Facts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import Answer, Breach, Met, NotApplicable
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import FIRES_ON_FLOW, listed

BAD = PLAIN_HOUSE.altered("""
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF}  # <- relief-missing
""")


def _relief_for(facts: Facts, _profile: Profile, heater: str) -> Iterator[str]:
    """Of one that fires on flow, which heaters are asked; the others are whatever the value."""
    if any(one.name == heater and one.on_flow for one in facts.heaters):
        yield "relief_for"


@requirement(
    "relief-missing",
    Severity.ERROR,
    bad=BAD,
    good=RELIEF_HOUSE,
    asks="A heater has a relief valve of its own, or stands open to the air.",
    of="heaters",
    held_to=(_relief_for,),
    may_accept=MayAccept.INSPECTOR,
)
def relief_missing(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """A heater has neither a relief valve of its own nor an open vent.

    If its thermostat sticks, the water boils under pressure and the heater can burst. Fit a relief valve, with nothing
    between it and the heater, for temperature and pressure where the rules ask for both. A heater that fires only on
    flow is asked for one here only where a pump keeps it firing, or where the rules ask for one on every heater.
    """
    behind = {name for relief in facts.reliefs if not relief.touches_vessel for name in relief.touches}
    beside = _beside(facts)
    for heater in facts.heaters:
        if heater.relieved_by:
            yield Met((heater.name, *heater.relieved_by), f"{listed(heater.relieved_by)}, joined by pipe alone")
        elif heater.vented:
            yield Met((heater.name,), "it stands open to the air, with no valve between")
        elif heater.on_flow and not heater.loops and profile.relief_for.value != "every":
            yield NotApplicable((heater.name,), FIRES_ON_FLOW)
        elif behind & beside.get(heater.name, set()):
            yield NotApplicable((heater.name,), "it has one, of which is told that something stands between")
        else:
            is_store = facts.system.parts[heater.name].keeps_hot
            sort = "temperature and " if is_store and profile.temperature_relief.is_asked else ""
            yield Breach(
                (heater.name,),
                f"{heater.name} has no relief valve of its own.",
                f"Keep it off until a {sort}pressure relief valve is on its own tapping, nothing between.",
            )


def _beside(facts: Facts) -> dict[str, set[str]]:
    """Parts that a pipe joins to the relief tapping of each heater that has one."""
    found: dict[str, set[str]] = {}
    for pipe in facts.system.pipes:
        for near, far in (pipe.ends, pipe.ends[::-1]):
            if near.port == RELIEF:
                found.setdefault(near.part, set()).add(far.part)
    return found
