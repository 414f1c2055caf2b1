"""An outlet that water meets on its way, in words: what it takes, from what pressure on, and what is wrong with it."""

from plumbnet.analysis.water_walk import Refusing, Taking
from plumbnet.layout.model import Role
from plumbnet.rules import right_charge
from plumbnet.rules.facts import Facts, ReliefFacts, TankFacts

_TAKES = {
    Role.STREET: "takes back any amount once it stands above {0}: the way out",
    Role.AIR: "open to the air, takes any amount above {0}: the way out",
    Role.TANK: "takes water in against its air from {0} on",
    Role.EXPANSION_RELIEF: "opens at {0} and lets the growth off to a drain",
    Role.SAFETY_RELIEF: "opens at {0}: the last safety device, and no control",
}


def taking(facts: Facts, outlet: Taking) -> str:
    """How an outlet takes water, and what is wrong with it; past the limit it says so, but for the last of all."""
    takes = _TAKES[outlet.role].format(facts.pressure(outlet.opens_pa))
    if outlet.is_past_limit and outlet.role is not Role.SAFETY_RELIEF:
        takes += ", past the limit"
    if outlet.running is not None:
        takes = _running(facts, outlet.running)
    return takes if outlet.wrong_charge is None else f"{takes}; {_charge(facts, outlet.wrong_charge)}"


def refusing(outlet: Refusing) -> str:
    """Why an outlet takes none of the water."""
    why = "a reducer on the way shuts" if outlet.before is None else f"{outlet.before} takes any amount"
    return f"takes none of it: {why} before"


def _running(facts: Facts, relief: ReliefFacts) -> str:
    """What a relief valve does whose supply stands above its set."""
    static, opens = facts.pressure(relief.static_pa or 0.0), facts.pressure(relief.set_pa)
    return f"runs all the time: {static} stands at it, above its set of {opens}"


def _charge(facts: Facts, tank: TankFacts) -> str:
    """What is wrong with the charge of a tank."""
    static_pa = tank.static_pa or 0.0
    charged, line = facts.pressure(tank.precharge_pa), facts.pressure(static_pa)
    effect = "is part full" if tank.precharge_pa < static_pa else "takes nothing before its charge is reached"
    return (
        f"it is charged to {charged} where the line stands at {line}: it {effect}; charge it to "
        f"{right_charge(facts, tank)}"
    )
