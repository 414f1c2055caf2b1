"""The answer for a heater in one sentence of at most two lines of a projector, in the words of a trace."""

from plumbnet.analysis import Report
from plumbnet.layout.model import Role
from plumbnet.rules import agreeing, listed, stops_in_words
from plumbnet.rules.facts import Facts, HeaterFacts, RungFacts, TankFacts, Verdict

_MOST_PASSED = 3


def board_sentence(report: Report, heater: HeaterFacts) -> str:
    """What becomes of a heater's growth: where it goes, what holds it, or what stops it and what opens then."""
    match heater.verdict:
        case Verdict.OPEN:
            return _way_out(report, heater)
        case Verdict.CONTROLLED:
            return f"{_stopped(heater)}, but {_taken(report.facts, heater)}."
        case Verdict.ON_DEMAND:
            return f"{_stopped(heater)}, but it fires only while water runs out of an open tap."
        case Verdict.TRAPPED:
            return f"{_stopped(heater)}{_tank_lost(report.facts)}. {_opens(report.facts, heater)}"
        case Verdict.SEALED:
            lost = _tank_lost(report.facts)
            return f"{_stopped(heater)}{lost}, and not even a relief valve opens. DANGER: heated, something breaks."


def safety_rung(heater: HeaterFacts) -> RungFacts | None:
    """The first safety relief valve that opens; None where none does."""
    return next((rung for rung in heater.ladder if rung.role is Role.SAFETY_RELIEF), None)


def _stopped(heater: HeaterFacts) -> str:
    sets = heater.stopped_by.sets
    if not sets:
        return "No way leads out"
    several = any(len(names) > 1 for names in sets)
    return f"{stops_in_words(sets)} {'stop' if several else 'stops'} it"


def _way_out(report: Report, heater: HeaterFacts) -> str:
    rung = heater.way_out
    if rung is None:
        return "Its growth has a way out."
    parts = report.system.parts
    passed = [name for name in rung.way[1:-1] if not parts[name].is_fitting and not _is_plain(report, name)]
    past = f", past {listed(passed[-_MOST_PASSED:])}" if passed else ""
    return f"The growth goes back to {rung.way[-1]}{past}."


def _is_plain(report: Report, name: str) -> bool:
    """Whether a part has nothing that anybody may turn or exchange, as a heat trap has not."""
    part = report.system.parts[name]
    return not part.failures and not part.can_be_shut() and part.stands() == "as drawn"


def _taken(facts: Facts, heater: HeaterFacts) -> str:
    takers = heater.tanks or tuple(rung.outlet for rung in heater.ladder if rung.role.is_control)[:1]
    takes = agreeing(takers, "takes") if takers else "a control takes"
    settled = "" if heater.settled_pa is None else f": at most {facts.pressure(heater.settled_pa)}"
    return f"{takes} up the growth{settled}, limit {facts.pressure(heater.limit_pa)}"


def _tank_lost(facts: Facts) -> str:
    """The first tank that takes nothing, and why."""
    lost = next((tank for tank in facts.tanks if tank.stopped_by or tank.is_waterlogged), None)
    return "" if lost is None else f"; {_why_lost(lost)}"


def _why_lost(tank: TankFacts) -> str:
    if tank.is_waterlogged:
        return f"{tank.name} is full of water and takes none"
    return f"{agreeing(tank.stopped_by, 'cuts')} {tank.name} off"


def _opens(facts: Facts, heater: HeaterFacts) -> str:
    limit, relief = facts.pressure(heater.limit_pa), safety_rung(heater)
    if heater.settled_pa is not None:
        return f"It comes to {facts.pressure(heater.settled_pa)}, above the limit of {limit}."
    opens = "" if relief is None else f"; {relief.outlet} opens at {facts.pressure(relief.opens_pa)}"
    return f"Nothing holds it below {limit}{opens}."
