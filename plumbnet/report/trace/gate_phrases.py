"""The gates of a part that water meets on its way, in words: what they do to it, and why."""

from plumbnet.analysis.water_walk import Direction, GateAnswer, Gated, GateMet
from plumbnet.rules.facts import Facts

_PASSES = {
    Direction.FORWARD: "lets it pass",
    Direction.BYPASS: "lets it back through its bypass",
    Direction.BACK: "has no check and lets it back",
}
_ANSWERS = {
    GateAnswer.PASSES: "{passes}",
    GateAnswer.PASSES_ABOVE: "{passes} once it stands above {opens}",
    GateAnswer.PASSES_PAST_LIMIT: "{passes} only above {opens}, which is past the limit",
    GateAnswer.OUTRUN: "{passes} only above {opens}",
    GateAnswer.SET_STANDS_BEYOND: "STOPS it",
    GateAnswer.ONE_WAY: "STOPS it",
    GateAnswer.OPEN_NOW: "is open now, and nobody guarantees it",
    GateAnswer.SHUT: "is shut and STOPS it",
}
_REASONS = {
    GateAnswer.OUTRUN: ": {before} takes any amount before",
    GateAnswer.SET_STANDS_BEYOND: ": what lies beyond stands at the set pressure already",
    GateAnswer.ONE_WAY: ": water passes only the other way",
    GateAnswer.OPEN_NOW: ": not counted",
}


def gated(facts: Facts, part: Gated) -> str:
    """What the gates of a part do; where one lets the water pass and another stops it, by their connections."""
    passing = next((gate for gate in part.gates if gate.answer.passes), None)
    stopping = next((gate for gate in part.gates if not gate.answer.passes), None)
    if passing is None or stopping is None:
        return _what(facts, part.gates[0]) + _REASONS.get(part.gates[0].answer, "").format(before=part.gates[0].before)
    passes, stops = _what(facts, passing), _what(facts, stopping)
    return f"{passes} to its {passing.toward} connection, and {stops} at its {stopping.toward} one"


def _what(facts: Facts, gate: GateMet) -> str:
    opens = "" if gate.opens_pa is None else facts.pressure(gate.opens_pa)
    return _ANSWERS[gate.answer].format(passes=_PASSES[gate.direction], opens=opens)
