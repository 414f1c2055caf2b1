"""A walk of the water to what it tries in turn: the ways back, the shut ends, what takes it, the last safety device."""

import math
from collections.abc import Iterator, Sequence

from plumbnet.analysis.water_walk.walk_steps import Conduct, Gated, Meeting, Refusing, Taking, Try, WalkStep
from plumbnet.layout.model import Role


def tries(steps: Sequence[WalkStep]) -> Iterator[Try]:
    """What the water of a walk tries, in the order in which one would tell it at a board.

    First back, past what stops it or into what takes any amount; then the ends that are shut; then what takes some of
    it, the lowest first; last the safety relief valves. Linear in the steps.
    """
    told = set[int]()
    meets = sorted((number for number, step in enumerate(steps) if _is_told(step.met)), key=lambda at: _rank(steps[at]))
    first_taker = next((place for place, at in enumerate(meets) if _rank(steps[at])[0] > _BACK), len(meets))
    yield from (_try(steps, at, told) for at in meets[:first_taker])
    yield from _ends(steps, told)
    yield from (_try(steps, at, told) for at in meets[first_taker:])


_BACK, _TAKES, _LAST = 0, 1, 2


def _is_told(met: Meeting) -> bool:
    """Whether it is a try by itself: an outlet, sound or not, or a gate that stops the water on one side at least."""
    if isinstance(met, Gated):
        return not all(gate.answer.passes for gate in met.gates)
    return not isinstance(met, Conduct) or met.is_loss


def _rank(step: WalkStep) -> tuple[int, float]:
    """What is told sooner, and among outlets from which pressure on they take water."""
    match step.met:
        case Taking(role, opens_pa) if role is Role.SAFETY_RELIEF:
            return _LAST, opens_pa
        case Taking(role, opens_pa) if not role.is_way_out:
            return _TAKES, opens_pa
        case Refusing():
            return _TAKES, math.inf
        case Conduct.IS_FULL:
            return _TAKES, -math.inf
        case Conduct.IS_PLUGGED:
            return _LAST, math.inf
        case _:
            return _BACK, 0.0


def _try(steps: Sequence[WalkStep], at: int, told: set[int]) -> Try:
    by, start, way = _way(steps, at, told)
    return Try(by, start, way, steps[at].met)


def _way(steps: Sequence[WalkStep], at: int | None, told: set[int]) -> tuple[str, str, tuple[WalkStep, ...]]:
    """The way to a step from the nearest that is told already, or from the heater; all of it is told then."""
    way = list[WalkStep]()
    while at is not None and at not in told:
        told.add(at)
        way.append(steps[at])
        at = steps[at].came_from
    start, by = ("", way[-1].by) if at is None and way else ("" if at is None else steps[at].part, "")
    return by, start, tuple(reversed(way))


def _ends(steps: Sequence[WalkStep], told: set[int]) -> Iterator[Try]:
    """The ends at which nothing is told, together for each gate that the water passes last on its way to them."""
    leaves = set(range(len(steps))) - {step.came_from for step in steps if step.came_from is not None}
    last_gate = dict[int, int | None]()
    found = dict[int | None, list[int]]()
    for number, step in enumerate(steps):
        before = None if step.came_from is None else last_gate[step.came_from]
        last_gate[number] = number if isinstance(step.met, Gated) else before
        if number in leaves and not _is_told(step.met):
            found.setdefault(before, []).append(number)
    for gate, ends in found.items():
        by, start, way = _way(steps, gate, told)
        shut = tuple(dict.fromkeys(steps[at].part for at in ends if steps[at].met is Conduct.ENDS))
        nowhere = tuple(dict.fromkeys(steps[at].part for at in ends if steps[at].met is not Conduct.ENDS))
        yield Try(by, start, way, None, shut, nowhere)
