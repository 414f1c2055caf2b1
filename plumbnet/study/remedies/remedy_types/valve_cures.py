"""A shut valve that stops the water, opened; a filling loop that was left open, shut."""

from collections.abc import Iterator

from plumbnet.layout.edits import change_of
from plumbnet.layout.model import Part, Shut
from plumbnet.layout.model.kinds import FillingLoop
from plumbnet.rules import listed
from plumbnet.rules.facts import HeaterFacts
from plumbnet.study.remedies.candidate import Candidate, Effort
from plumbnet.study.remedies.remedy_context import RemedyContext


def open_valve(scene: RemedyContext, heater: HeaterFacts) -> Iterator[Candidate]:
    """Open what was left shut: between the heater and the street, or between the heater and a tank.

    A valve locked shut is shut for a reason and stays so.
    """
    between_tanks = [tank.stopped_by for tank in scene.report.facts.tanks if not tank.reached]
    for devices in dict.fromkeys([*heater.stopped_by.sets, *between_tanks]):
        shut = tuple(name for name in devices if can_be_opened(scene.system.parts[name]))
        if shut:
            yield Candidate(
                Effort.OPEN_VALVE,
                f"open {listed(shut)}",
                f"open {listed(shut)}, and lock or tag {'it' if len(shut) == 1 else 'them'} open",
                tuple(change_of("open", name) for name in shut),
            )


def shut_filling_loop(scene: RemedyContext, heater: HeaterFacts) -> Iterator[Candidate]:
    """Shut the filling loops that were left open between the cold pipe and the heater's circuit."""
    stops = dict.fromkeys(name for devices in heater.stopped_by.sets for name in devices)
    loops = {name: part for name in stops if isinstance(part := scene.system.parts[name], FillingLoop)}
    if loops:
        names = listed(tuple(loops))
        lowest = scene.report.facts.pressure(min(part.fill_pa for part in loops.values()))
        yield Candidate(
            Effort.SHUT_FILLING_LOOP,
            f"shut {names}",
            f"shut {names}, and let the circuit down to the {lowest} to which it is filled",
            tuple(change_of("set", {"part": name, "state": "shut"}) for name in loops),
        )


def can_be_opened(part: Part) -> bool:
    """Whether a hand can open it: a valve that stands shut and is not locked."""
    is_shut = any(isinstance(passage, Shut) for passage in part.passages())
    return is_shut and getattr(part, "state", None) == "shut" and not getattr(part, "locked", True)
