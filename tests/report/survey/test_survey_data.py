import json
from dataclasses import replace

from plumbnet.report.output.writer import Fate
from plumbnet.report.survey.survey_data import survey_json
from plumbnet.report.survey.survey_entry import WhatIfFate
from plumbnet.report.survey.survey_query import SurveyQuery
from plumbnet.report.survey.survey_sums import FilePlace, First, Misread, OtherSort, StandingFinding, SurveySums
from plumbnet.rules.acceptors import Acceptor
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.rules.finding import Severity
from plumbnet.study.whatif.bulk_changes import SetEach, Supposed

SUMS = SurveySums(
    is_supposed=True,
    files={Fate.CHECKED: 3, Fate.NOT_UNDERSTOOD: 1, Fate.NO_LAYOUT: 2},
    missing=4,
    changes={WhatIfFate.MADE: 1, WhatIfFate.NOT_TOUCHED: 2, WhatIfFate.REFUSED: 0},
    worse_files=1,
    better_files=0,
    turns={(Verdict.OPEN, Verdict.TRAPPED): 1, (Verdict.OPEN, None): 1},
    worse_heaters=1,
    better_heaters=0,
    places=First((FilePlace("a\udcff", 3, "heater", (Verdict.OPEN, Verdict.TRAPPED), "meter"),), 1),
    findings=First((StandingFinding("trapped-expansion", Severity.ERROR, 0, 1, 1),), 1),
    errors=1,
    accepted=1,
    accepted_by={(Acceptor.APPLICANT, "heat-soak"): 1},
    used_lines=frozenset(),
    on_trust=0,
    unknown=1,
    others=First((OtherSort("e", None, "not a layout", "it is empty"),), 1),
    misread=First((Misread("d", None, "why", 1),), 1),
)


def test_document_holds_the_question_and_all_sums() -> None:
    asked = SurveyQuery(None, None, Supposed(None, (SetEach("meter", {"check": True}),)))
    said = json.loads(survey_json(asked, SUMS))
    assert said == {
        "plumbnet": "0.1.0",
        "schema": 1,
        "rules": None,
        "rules_sha256": None,
        "own_acceptances": None,
        "own_sha256": None,
        "scenario": None,
        "to_each": [{"each": "meter", "set": {"check": True}}],
        "files": {
            "checked": 3,
            "not_understood": 1,
            "no_layout": 2,
            "missing": 4,
            "what_if": {"made": 1, "not_touched": 2, "refused": 0},
            "worse": 1,
            "better": 0,
        },
        "heaters": {
            "before": {"open": 2, "on-demand": 0, "controlled": 0, "trapped": 0, "sealed": 0},
            "after": {"open": 0, "on-demand": 0, "controlled": 0, "trapped": 1, "sealed": 0},
            "turned": [
                {"before": "open", "after": "trapped", "heaters": 1},
                {"before": "open", "after": None, "heaters": 1},
            ],
            "worse": 1,
            "better": 0,
        },
        "became_trapped": {
            "in_all": 1,
            "first": [
                {
                    "path": "a\udcff",
                    "line": 3,
                    "heater": "heater",
                    "before": "open",
                    "after": "trapped",
                    "stopped_by": "meter",
                }
            ],
        },
        "findings": {
            "in_all": 1,
            "first": [{"name": "trapped-expansion", "severity": "error", "before": 0, "after": 1, "files": 1}],
        },
        "errors": 1,
        "accepted": 1,
        "accepted_by": [{"by": "applicant", "finding": "heat-soak", "stands": 1}],
        "not_understood": {"in_all": 1, "first": [{"path": "d", "line": None, "text": "why", "mistakes": 1}]},
        "no_layout": {
            "in_all": 1,
            "first": [{"path": "e", "line": None, "sort": "not a layout", "text": "it is empty"}],
        },
    }


def test_where_nothing_is_supposed_the_trapped_stand_under_their_own_name() -> None:
    said = json.loads(survey_json(SurveyQuery(None, None, Supposed()), replace(SUMS, is_supposed=False)))
    assert said["trapped"]["in_all"] == 1
    assert "became_trapped" not in said
    assert said["heaters"]["after"] is None
