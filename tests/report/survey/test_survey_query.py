from plumbnet.report.survey.survey_query import SurveyQuery
from plumbnet.rules.accepting.own_acceptances import OwnAcceptances
from plumbnet.rules.circuit_rules import given_rules
from plumbnet.rules.rule_profile import profile
from plumbnet.study.whatif.bulk_changes import FitEach, SetEach, Supposed


def test_fields_hold_all_that_answers_hang_on() -> None:
    done = (SetEach("meter", {"check": True}), FitEach("main", "meter", {}))
    asked = SurveyQuery(given_rules("ipc-2021"), "metric", Supposed("repair", done))
    fields = asked.fields()
    assert fields.pop("rules_sha256") == profile("ipc-2021").sha256
    assert fields == {
        "plumbnet": "0.1.0",
        "rules": "ipc-2021",
        "units": "metric",
        "own_acceptances": None,
        "own_sha256": None,
        "scenario": "repair",
        "to_each": '[{"each": "meter", "set": {"check": true}}, {"behind": "main", "fit": "meter", "with": {}}]',
    }


def test_nothing_asked_beyond_the_files_themselves_leaves_fields_empty() -> None:
    fields = SurveyQuery(None, None, Supposed()).fields()
    assert [name for name, value in fields.items() if value is None] == [
        "rules",
        "rules_sha256",
        "units",
        "own_acceptances",
        "own_sha256",
        "scenario",
    ]
    assert fields["to_each"] == "[]"


def test_other_acceptances_are_another_question() -> None:
    none, own = OwnAcceptances(), OwnAcceptances("own.yaml", "abc")
    asked = [SurveyQuery(None, None, Supposed(), one).fields() for one in (None, none, own)]
    assert [(one["own_acceptances"], one["own_sha256"]) for one in asked] == [
        (None, None),
        ("none", ""),
        ("own.yaml", "abc"),
    ]


def test_rules_of_some_circuits_are_told_in_a_line() -> None:
    asked = SurveyQuery(given_rules({"heating": "us-boiler"}), None, Supposed())
    fields = asked.fields()
    assert fields["rules"] == "heating: us-boiler"
    assert fields["rules_sha256"] == f"heating: {profile('us-boiler').sha256}"
