"""A gate that heated water comes to: whether it passes there, and above what pressure."""

import math
from dataclasses import dataclass

from plumbnet.analysis.water_walk.walk_steps import Direction, GateAnswer, GateMet
from plumbnet.network import Network
from plumbnet.network.outlets import floor_pa
from plumbnet.network.piping import Crossing
from plumbnet.rules.facts import ROUNDING_PA, HeaterFacts


@dataclass(frozen=True, slots=True)
class GateView:
    """Gates as the water of one heater meets them; `head_pa` is the static head of the heater's height."""

    network: Network
    heater: HeaterFacts
    head_pa: float

    def met(self, crossing: Crossing) -> GateMet:
        """What a one-way, conditional or shut passage does to the water."""
        floor = self._floor_pa(crossing)
        answer, first = self._answer(crossing, floor), self.heater.way_out
        return GateMet(
            toward=self.network.piping.ports[crossing.enters].port,
            direction=_direction(crossing),
            answer=answer,
            opens_pa=floor - self.head_pa if floor is not None and answer in _ABOVE else None,
            before=first.outlet if first is not None and answer is GateAnswer.OUTRUN else "",
        )

    def _floor_pa(self, crossing: Crossing) -> float | None:
        """Pressure at datum above which water passes; None where it never does, or where it stays in its zone."""
        return None if crossing.near == crossing.far else floor_pa(crossing, self.network.standing)

    def _answer(self, crossing: Crossing, floor: float | None) -> GateAnswer:
        if crossing.gate.is_shut:
            return GateAnswer.SHUT
        if crossing.way is None:
            return GateAnswer.OPEN_NOW if self._is_wide_open(crossing) else GateAnswer.ONE_WAY
        if crossing.near == crossing.far:
            return GateAnswer.PASSES
        return GateAnswer.SET_STANDS_BEYOND if floor is None else self._at(floor, crossing)

    def _at(self, floor: float, crossing: Crossing) -> GateAnswer:
        """What a gate into another zone does, that water passes above a pressure at datum."""
        first = self.heater.way_out
        if floor <= self.network.standing.at(crossing.near) + ROUNDING_PA:
            return GateAnswer.PASSES
        if first is not None and floor > first.opens_pa + self.head_pa + ROUNDING_PA:
            return GateAnswer.OUTRUN
        is_past = floor > self.heater.bound_pa + self.head_pa
        return GateAnswer.PASSES_PAST_LIMIT if is_past else GateAnswer.PASSES_ABOVE

    def _is_wide_open(self, crossing: Crossing) -> bool:
        """Whether a reducer, met from behind, stands open because what lies behind it is below its set."""
        forward, behind_pa = crossing.gate.forward, self.network.standing.at(crossing.near)
        return forward is not None and behind_pa < forward.below_pa - ROUNDING_PA < math.inf


_ABOVE = {GateAnswer.PASSES_ABOVE, GateAnswer.PASSES_PAST_LIMIT, GateAnswer.OUTRUN}


def _direction(crossing: Crossing) -> Direction:
    if crossing.is_forward:
        return Direction.FORWARD
    return Direction.BYPASS if crossing.is_bypass else Direction.BACK
