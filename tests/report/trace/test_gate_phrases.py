"""What the gates of a part are told as, by themselves."""

import pytest
from conftest import PSI, system

import plumbnet
from plumbnet.analysis.water_walk.walk_steps import Direction, GateAnswer, Gated, GateMet
from plumbnet.report.trace.gate_phrases import gated

FACTS = plumbnet.check(system("street -> heater -> tap.hot")).facts


def gate(answer: GateAnswer, direction: Direction = Direction.FORWARD, toward: str = "out") -> GateMet:
    return GateMet(toward, direction, answer, 90 * PSI, "vent")


@pytest.mark.parametrize(
    ("answer", "words"),
    [
        (GateAnswer.PASSES, "lets it pass"),
        (GateAnswer.PASSES_ABOVE, "lets it pass once it stands above 90 psi"),
        (GateAnswer.PASSES_PAST_LIMIT, "lets it pass only above 90 psi, which is past the limit"),
        (GateAnswer.OUTRUN, "lets it pass only above 90 psi: vent takes any amount before"),
        (GateAnswer.SET_STANDS_BEYOND, "STOPS it: what lies beyond stands at the set pressure already"),
        (GateAnswer.ONE_WAY, "STOPS it: water passes only the other way"),
        (GateAnswer.OPEN_NOW, "is open now, and nobody guarantees it: not counted"),
        (GateAnswer.SHUT, "is shut and STOPS it"),
    ],
)
def test_each_answer_of_a_gate_has_its_words(answer: GateAnswer, words: str) -> None:
    assert gated(FACTS, Gated((gate(answer),))) == words


@pytest.mark.parametrize(
    ("direction", "words"),
    [
        (Direction.FORWARD, "lets it pass"),
        (Direction.BYPASS, "lets it back through its bypass"),
        (Direction.BACK, "has no check and lets it back"),
    ],
)
def test_way_back_says_what_lets_the_water_back(direction: Direction, words: str) -> None:
    assert gated(FACTS, Gated((gate(GateAnswer.PASSES, direction),))) == words


def test_gates_that_answer_alike_are_told_by_the_first() -> None:
    both = Gated((gate(GateAnswer.PASSES_ABOVE), gate(GateAnswer.PASSES, toward="mixed")))
    assert gated(FACTS, both) == "lets it pass once it stands above 90 psi"


def test_gates_that_answer_otherwise_are_told_by_their_connections_and_without_the_reason() -> None:
    both = Gated((gate(GateAnswer.ONE_WAY, toward="cold"), gate(GateAnswer.PASSES, toward="mixed")))
    assert gated(FACTS, both) == "lets it pass to its mixed connection, and STOPS it at its cold one"
    outrun = Gated((gate(GateAnswer.PASSES, toward="mixed"), gate(GateAnswer.OUTRUN, toward="cold")))
    assert gated(FACTS, outrun) == (
        "lets it pass to its mixed connection, and lets it pass only above 90 psi at its cold one"
    )
