"""What was thought of a device: by who let water run past what stops it, and by who had it stop where it does not."""

from collections.abc import Iterator

from plumbnet.analysis.water_walk import Conduct, Direction, GateAnswer, Gated, GateMet, Meeting, water_walk
from plumbnet.layout.model import Part
from plumbnet.rules.facts import TankFacts
from plumbnet.study.beliefs.asked_heater import AskedHeater, has_hidden_check, is_leaking, is_shut, reducing
from plumbnet.study.beliefs.hint import Hint


def past_the_stop(asked: AskedHeater) -> Hint:
    """Of who let the water of a closed heater run back to the street."""
    device, way, leak = asked.stop, asked.heater.way_out, asked.leak
    if device is None:
        return asked.says("no-way-there")
    reducer = reducing(asked.parts[device])
    if leak is not None:
        return asked.says("leaking-check-is-open", leak=leak, device=device)
    if reducer is not None and reducer.bypass and way is not None:
        return asked.says_of("bypass-needs-no-tank", way, reducer=device)
    if reducer is not None and any(gate.answer is GateAnswer.OPEN_NOW for gate in _gates_met(asked, device)):
        return asked.says("open-reducer-counted-on", device=device, set=asked.facts.pressure(reducer.set_pa))
    return asked.says(_passed_over(asked.parts[device]), device=device)


def _passed_over(part: Part) -> str:
    """How a device was passed over that stops water, by what it is."""
    reducer = reducing(part)
    if is_shut(part):
        return "shut-valve-passed-over"
    if reducer is not None and not reducer.bypass:
        return "reducer-passed-over"
    return "meter-is-no-valve" if has_hidden_check(part) else "check-passed-over"


def stopped_at(asked: AskedHeater, device: str) -> Hint:
    """Of who had the water stop at a device that is not what stops it."""
    part = asked.parts[device]
    first = asked.heater.way_out or next(iter(asked.heater.ladder), None)
    if part.driven() is not None and first is not None:
        return asked.says_of("pump-raises-pressure", first, pump=device)
    gate = next(_gates_met(asked, device), None)
    if gate is not None and _is_bypass(gate):
        opens_pa = asked.heater.static_pa if gate.opens_pa is None else gate.opens_pa
        return asked.says("bypass-overlooked", device=device, opens=asked.facts.pressure(opens_pa or 0.0))
    if Conduct.LETS_THROUGH in _met(asked, device) or (gate is not None and _is_passed_back(gate)) or is_leaking(part):
        return asked.says("open-device-stops", device=device)
    return asked.says("stops-elsewhere", device=device)


def lost_tank_belief(asked: AskedHeater, tank: TankFacts) -> Hint | None:
    """Of who counted on a tank without air, or one that the growth does not come to; None where it is neither."""
    device = next(iter(tank.stopped_by), asked.stop)
    if tank.is_waterlogged:
        return asked.says("worn-tank-counted", tank=tank.name)
    if device is None or any(rung.outlet == tank.name for rung in asked.heater.ladder):
        return None
    return asked.says("any-tank-anywhere", tank=tank.name, device=device)


def _met(asked: AskedHeater, device: str) -> list[Meeting]:
    """What a device does to the water, each time that it comes there."""
    return [step.met for step in water_walk(asked.report, asked.heater).steps if step.part == device]


def _gates_met(asked: AskedHeater, device: str) -> Iterator[GateMet]:
    return (gate for one in _met(asked, device) if isinstance(one, Gated) for gate in one.gates)


def _is_bypass(gate: GateMet) -> bool:
    return gate.answer.passes and gate.direction is Direction.BYPASS


def _is_passed_back(gate: GateMet) -> bool:
    """Whether water passes it against its direction; with it, it leads away from the street."""
    return gate.answer.passes and gate.direction is not Direction.FORWARD
