import pytest

from plumbnet.analysis.water_walk.walk_steps import (
    Conduct,
    Direction,
    GateAnswer,
    Gated,
    GateMet,
    Meeting,
    Refusing,
    Taking,
    WalkStep,
)
from plumbnet.layout.model.part import Role

STOPPED = Gated((GateMet("in", Direction.BACK, GateAnswer.ONE_WAY),))


@pytest.mark.parametrize(
    ("met", "matters"),
    [
        (Conduct.SPREADS, False),
        (Conduct.LETS_THROUGH, False),
        (Conduct.ENDS, False),
        (Conduct.IS_FULL, True),
        (Conduct.IS_PLUGGED, True),
        (Refusing(None), False),
        (Taking(Role.TANK, 0.0, is_past_limit=False), True),
        (STOPPED, True),
    ],
)
def test_gates_and_outlets_matter_unless_they_take_nothing_of_the_water(met: Meeting, *, matters: bool) -> None:
    assert WalkStep("part", "tee", "a", None, "hot", 0, met).matters is matters


def test_walk_goes_on_behind_a_gate_that_passes_at_whatever_pressure() -> None:
    assert {answer for answer in GateAnswer if answer.passes} == {
        GateAnswer.PASSES,
        GateAnswer.PASSES_ABOVE,
        GateAnswer.PASSES_PAST_LIMIT,
    }
