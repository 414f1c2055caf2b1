"""An expansion tank that no valve parts from its supply, so that its charge cannot be read."""

from collections.abc import Iterator

from plumbnet.rules.example_layouts import TANK_HOUSE
from plumbnet.rules.facts import Facts, TankServiceFacts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import NO_WATER, NOT_ASKED, Answer, Breach, Met, NotApplicable, Untold
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import listed

BAD = TANK_HOUSE.altered("""
  street: ...
  second: {kind: main, pressure: 60 psi}
  check: check_valve
  stop: valve
  split: ...
  tank: {kind: expansion_tank, volume: 5 gal, precharge: 60 psi}  # <- tank-cannot-be-served
runs:
  - street -> stop -> meter -> split -> heater -> tap.hot
  - second -> check -> split -> tank
""")

GOOD = BAD.altered("""
  stop: ...
  other: valve
runs:
  - street -> stop -> meter -> split -> heater -> tap.hot
  - second -> check -> other -> split -> tank
""")


@requirement(
    "tank-cannot-be-served",
    Severity.WARNING,
    bad=BAD,
    good=GOOD,
    rests_on="tank_service",
    asks="An expansion tank can be parted from its supply and let down, so that its charge is read and set.",
    of="expansion tanks",
)
def tank_cannot_be_served(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """No valve parts an expansion tank from its supply, so that its charge cannot be read without stopping more.

    The charge is read and set with no water behind the membrane. For drinking water a valve in the supply is enough:
    shut it, open a tap, and read. A tank of a heating circuit has a valve of its own, locked open, and a drain behind
    it, or the whole circuit is emptied each year. Never put a valve that any hand can shut between a heater and its
    tank. A sketch without valves does not say where they are, and is not blamed.
    """
    if not profile.tank_service.is_asked:
        yield NOT_ASKED
        return
    for tank in facts.tank_service:
        yield _answer(tank)


def _answer(tank: TankServiceFacts) -> Answer:
    if not tank.is_wet:
        return NotApplicable((tank.name,), NO_WATER)
    if not tank.held_to:
        return Met((tank.name,), "it can be parted by valves from all that would have to be let down with it")
    if not tank.are_valves_drawn:
        return Untold((tank.name,), "by which valve it is parted from its supply (none is drawn)")
    if tank.carries_heat:
        return Breach(
            (tank.name, *tank.held_to),
            f"No valve parts {tank.name} from {listed(tank.held_to)}: to read its charge the circuit is let down.",
            f"Have a valve fitted before {tank.name}, locked open, with a drain between the two.",
        )
    return Breach(
        (tank.name, *tank.held_to),
        f"No valve parts {tank.name} from {listed(tank.held_to)}: its charge cannot be read with no water behind it.",
        f"Have a valve fitted in the supply, before {tank.name} and the heaters that it serves, not between them.",
    )
