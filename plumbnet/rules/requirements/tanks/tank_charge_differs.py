"""A tank whose air charge is not the line pressure where it hangs."""

from collections.abc import Iterator

from plumbnet.layout.units import PRESSURE
from plumbnet.rules.example_layouts import TANK_HOUSE
from plumbnet.rules.facts import Facts, TankFacts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import NO_WATER, Answer, Breach, Measured, Met, NotApplicable
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import renewed_first, right_charge

BAD = TANK_HOUSE.altered("""
  tank: {kind: expansion_tank, volume: 5 gal, precharge: 40 psi}  # <- tank-charge-differs
""")


@requirement(
    "tank-charge-differs",
    Severity.WARNING,
    bad=BAD,
    good=TANK_HOUSE,
    asks="A tank is charged to the line pressure where it hangs, or as its sizing method has it.",
    of="expansion tanks",
    held_to=("charge_tolerance",),
)
def tank_charge_differs(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """A tank's air charge is not the line pressure where it hangs.

    Charged too low, it stands part full of water before heating starts; charged too high, it takes nothing
    until the pressure has climbed to its charge. Either way room is lost. Set the charge with the tank empty
    of water, to the pressure at the tank's own height. A tank on a well is charged to just under the cut-in.
    """
    renewed = renewed_first(facts)
    for tank in facts.tanks:
        if tank.static_pa is None or tank.is_waterlogged:
            yield NotApplicable((tank.name,), NO_WATER if tank.static_pa is None else "it has lost its air")
            continue
        measured = Measured(abs(tank.precharge_pa - tank.static_pa), profile.charge_tolerance.value_pa, PRESSURE)
        if not tank.is_charged_wrong(profile.charge_tolerance.value_pa):
            charge = f"{facts.pressure(tank.precharge_pa)} where {facts.pressure(tank.static_pa)} stands"
            yield Met((tank.name,), charge)
        else:
            below = tank.precharge_pa < tank.static_pa
            charged, line = facts.pressure(tank.precharge_pa), facts.pressure(tank.static_pa)
            effect = "stands part full before anything is heated" if below else "takes nothing until that is reached"
            yield Breach(
                (tank.name,),
                f"{tank.name} is charged to {charged}, {'below' if below else 'above'} the {line} of the line there; "
                f"it {effect}.",
                _charged(facts, tank, renewed),
                measured,
            )


def _charged(facts: Facts, tank: TankFacts, renewed: str) -> str:
    if renewed:
        return f"{renewed}Then shut {tank.name} off, drain it, charge it to what stands there, and open it again."
    return f"Shut it off, drain it, charge it to {right_charge(facts, tank)}, and open it again."
