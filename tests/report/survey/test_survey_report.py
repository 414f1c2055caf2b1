"""What the sums say; tests/cli/commands/test_survey.py shows a whole one."""

from dataclasses import replace

from running import CONTROL
from summed import NOTHING

from plumbnet.report.output.writer import Fate
from plumbnet.report.survey.survey_entry import WhatIfFate
from plumbnet.report.survey.survey_query import SurveyQuery
from plumbnet.report.survey.survey_report import survey_text
from plumbnet.report.survey.survey_sums import FilePlace, First, Misread
from plumbnet.rules.acceptors import Acceptor
from plumbnet.rules.circuit_rules import given_rules
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.rules.rule_profile import profile
from plumbnet.study.whatif.bulk_changes import FitEach, SetEach, Supposed

ACCEPTED = {
    (Acceptor.APPLICANT, "heat-soak"): 1,
    (Acceptor.APPLICANT, "relief-runs"): 2,
    (Acceptor.INSPECTOR, "heat-soak"): 1,
}
DONE = (SetEach("meter", {"check": True}), FitEach("main", "check_valve", {}))
ASKED = SurveyQuery(given_rules("ipc-2021"), None, Supposed("repair", DONE))

SUMS = replace(NOTHING, files={**NOTHING.files, Fate.CHECKED: 3}, changes=dict.fromkeys(WhatIfFate, 1))


def test_question_is_said_in_words() -> None:
    said = survey_text(ASKED, SUMS)
    assert "rules: International Plumbing Code" in said
    assert "what if: scenario repair, " in said
    assert "set every meter: check yes, then fit a " in said
    assert f"rules    ipc-2021, SHA-256 {profile('ipc-2021').sha256}\n" in said


def test_heaters_without_an_answer_have_their_own_column_and_row() -> None:
    turns = {(Verdict.OPEN, None): 2, (None, Verdict.SEALED): 1, (Verdict.OPEN, Verdict.OPEN): 4}
    said = survey_text(ASKED, replace(SUMS, turns=turns))
    assert (
        "before; after:  open  sealed  no answer  all\n"
        "open            4     0       2          6\n"
        "no answer       0     1       0          1\n"
        "all             4     1       2          7\n"
    ) in said


def test_survey_without_heaters_says_so_calmly() -> None:
    assert "before; after:  all\n\n- 0 heaters worse" in survey_text(ASKED, SUMS)


def test_of_what_is_not_named_the_number_is_said() -> None:
    place = FilePlace("\x1b[2Ja.yaml", None, "heater", (Verdict.OPEN, Verdict.TRAPPED), "")
    said = survey_text(ASKED, replace(SUMS, places=First((place,), 22), misread=First((Misread("b", 3, "why", 2),), 2)))
    assert "- \\x1b[2Ja.yaml: heater: open -> trapped\n\nand 21 more heaters\n" in said
    assert "- b:3: why (1 more)\n\nand 1 more file\n" in said
    assert not any(sign in said for sign in CONTROL)


def test_accepted_and_missing_are_counted() -> None:
    said = survey_text(ASKED, replace(SUMS, accepted=4, accepted_by=ACCEPTED, missing=2))
    assert "- 3 accepted by the applicant, each with its reason: heat-soak, relief-runs (2 times)\n" in said
    assert "- 1 accepted by the inspector, each with its reason: heat-soak\n" in said
    assert "- 2 of an earlier run no longer there: kept, and not counted\n" in said
