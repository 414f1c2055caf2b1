from plumbnet.analysis.water_walk.walk_steps import GateAnswer


def test_walk_goes_on_behind_a_gate_that_passes_at_whatever_pressure() -> None:
    assert {answer for answer in GateAnswer if answer.passes} == {
        GateAnswer.PASSES,
        GateAnswer.PASSES_ABOVE,
        GateAnswer.PASSES_PAST_LIMIT,
    }
