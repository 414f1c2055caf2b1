"""What differs between two answers, and how bad it is."""

from conftest import system

import plumbnet
from plumbnet.layout.model.acceptance import Acceptance
from plumbnet.rules.accepting.silencing import Silencer, Word
from plumbnet.rules.acceptors import Acceptor
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.study.contingency.outcome import Error, Outcome, Turn, WorldAnswer, answer, outcome

OPEN, CONTROLLED, TRAPPED, SEALED = Verdict.OPEN, Verdict.CONTROLLED, Verdict.TRAPPED, Verdict.SEALED


def test_outcome_tells_turned_heaters_and_new_errors_only() -> None:
    gone, kept, new = Error("a", "x"), Error("b", "x"), Error("c", "y")
    before = WorldAnswer({"one": OPEN, "two": TRAPPED}, frozenset({gone, kept}))
    after = WorldAnswer({"one": TRAPPED, "two": TRAPPED}, frozenset({kept, new}))
    assert outcome(before, after) == Outcome((Turn("one", OPEN, TRAPPED),), (new,))
    assert outcome(before, before).changes_nothing


def test_layout_of_which_nothing_can_be_computed_is_an_outcome() -> None:
    found = outcome(WorldAnswer({"one": OPEN}, frozenset()), WorldAnswer({}, frozenset(), "too high"))
    assert (found, found.changes_nothing) == (Outcome(refused="too high"), False)


def test_the_worst_comes_first() -> None:
    worst_first = (
        Outcome((Turn("a", OPEN, SEALED),)),
        Outcome((Turn("a", OPEN, TRAPPED), Turn("b", CONTROLLED, TRAPPED))),
        Outcome((Turn("a", OPEN, TRAPPED),), (Error("x", "a"),)),
        Outcome((Turn("a", OPEN, TRAPPED), Turn("b", TRAPPED, OPEN))),
        Outcome((Turn("a", OPEN, TRAPPED),)),
        Outcome((Turn("a", OPEN, CONTROLLED),)),
        Outcome(refused="too high"),
        Outcome(errors=(Error("x", "a"),)),
        Outcome((Turn("a", SEALED, TRAPPED),)),
        Outcome(),
    )
    ranks = [one.rank for one in worst_first]
    assert ranks == sorted(set(ranks))


def test_answer_is_that_of_the_report_less_what_the_file_accepts() -> None:
    trapped = system("street -> cv -> heater -> tap.hot", heater="relief: {pressure: 150 psi}")
    report = plumbnet.check(trapped)
    found = answer(report.facts, report.profile)
    assert found.verdicts == {"heater": TRAPPED}
    assert found.errors == {Error(one.name, one.parts[0]) for one in report.findings if one.severity == "error"}
    accepted = Acceptance(finding="trapped-expansion", part="heater", reason="a test")
    silencer = Silencer((Word(accepted, 1, Acceptor.APPLICANT),))
    assert found.errors - answer(report.facts, report.profile, silencer).errors == {
        Error("trapped-expansion", "heater")
    }
