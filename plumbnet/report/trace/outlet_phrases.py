"""An outlet that water meets on its way, in words: what it takes, from what pressure on, and what is wrong with it."""

from plumbnet.layout.model import Outlet, Part, Role
from plumbnet.rules import Facts, right_charge

_TAKES = {
    Role.STREET: "takes back any amount once it stands above {0}: the way out",
    Role.AIR: "open to the air, takes any amount above {0}: the way out",
    Role.TANK: "takes water in against its air from {0} on",
    Role.EXPANSION_RELIEF: "opens at {0} and lets the growth off to a drain",
    Role.SAFETY_RELIEF: "opens at {0}: the last safety device, and no control",
}


def taking(facts: Facts, outlet: Outlet, opens_pa: float, *, bound_pa: float) -> str:
    """How an outlet takes water, from a pressure at the heater on; past a bound it says so, but for the last of all."""
    is_past = outlet.role is not Role.SAFETY_RELIEF and opens_pa > bound_pa
    return _TAKES[outlet.role].format(facts.pressure(opens_pa)) + (", past the limit" if is_past else "")


def running(facts: Facts, name: str) -> str:
    """What a relief valve does whose supply stands above its set; empty of any other outlet."""
    for one in (*facts.reliefs, *facts.expansion_reliefs):
        if one.name == name and one.runs and one.static_pa is not None:
            static, opens = facts.pressure(one.static_pa), facts.pressure(one.set_pa)
            return f"runs all the time: {static} stands at it, above its set of {opens}"
    return ""


def charge(facts: Facts, name: str, *, tolerance_pa: float) -> str:
    """What is wrong with the charge of a tank, as the end of a sentence; empty where nothing is, or it is no tank."""
    tank = next((one for one in facts.tanks if one.name == name), None)
    if tank is None or tank.static_pa is None or not tank.is_charged_wrong(tolerance_pa):
        return ""
    charged, line = facts.pressure(tank.precharge_pa), facts.pressure(tank.static_pa)
    effect = "is part full" if tank.precharge_pa < tank.static_pa else "takes nothing before its charge is reached"
    return (
        f"; it is charged to {charged} where the line stands at {line}: it {effect}; charge it to "
        f"{right_charge(facts, tank)}"
    )


def lost(part: Part) -> str:
    """What is wrong with a tank or a relief valve that takes nothing any more; empty of every other part."""
    cushion = part.cushion()
    if cushion is not None and not cushion.is_sound:
        return "full: its air is gone, and it takes nothing"
    is_plugged = any(True for _ in part.safety_sets()) and not any(True for _ in part.outlets())
    return "plugged: it opens at no pressure, DANGER" if is_plugged else ""
