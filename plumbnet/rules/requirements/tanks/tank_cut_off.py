"""A tank with a one-way device, or a shut valve, between it and the heater that needs it."""

from collections.abc import Iterator

from plumbnet.layout.model import Part, Shut
from plumbnet.rules.example_layouts import TANK_HOUSE
from plumbnet.rules.facts import TROUBLED, Facts, TankFacts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import Answer, Breach, Met, NotApplicable
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import agreeing, listed

BAD = TANK_HOUSE.altered("""
  tank: {kind: expansion_tank, volume: 5 gal, precharge: 60 psi}  # <- tank-cut-off
  check: check_valve
runs:
  - street -> meter -> split -> check -> heater -> tap.hot
  - split -> tank
""")


@requirement(
    "tank-cut-off",
    Severity.ERROR,
    bad=BAD,
    good=TANK_HOUSE,
    asks="Heated water can push into every expansion tank.",
    of="expansion tanks",
)
def tank_cut_off(facts: Facts, _profile: Profile) -> Iterator[Answer]:
    """A tank is there, and a heater that needs one, but no water can pass from the heater to the tank.

    A check, a reducer or a shut valve stands between, so the tank never takes a drop of what the heater gives
    off. Connect the tank between the last check and the heater, or open the valve. The pressure tank of a
    well stays with its pump; there the heater needs an expansion tank of its own.
    """
    is_needed = any(heater.verdict in TROUBLED for heater in facts.heaters)
    for tank in facts.tanks:
        if tank.is_waterlogged:
            yield NotApplicable((tank.name,), "it has lost its air, which is told first")
        elif tank.reached:
            yield Met((tank.name,), "nothing stands between it and heated water")
        elif not is_needed:
            yield NotApplicable((tank.name,), "no heater needs it")
        else:
            between = f": {agreeing(tank.stopped_by, 'stands')} between" if tank.stopped_by else ""
            yield Breach(
                (tank.name, *tank.stopped_by), f"no heated water can reach {tank.name}{between}.", _advice(facts, tank)
            )


def _advice(facts: Facts, tank: TankFacts) -> str:
    shut = [name for name in tank.stopped_by if _is_shut(facts.system.parts[name])]
    if shut:
        return f"Open {listed(shut)} and lock or tag it open."
    if tank.serves_a_pump:
        return f"Leave {tank.name} with its pump; fit the heater an expansion tank of its own, in its cold pipe."
    return f"Move {tank.name} to the cold pipe between the last check and the heater, and charge it to the line there."


def _is_shut(part: Part) -> bool:
    return any(isinstance(passage, Shut) for passage in part.passages())
