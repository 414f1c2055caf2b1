"""Which heaters a code asks for a relief valve; words and bounds of the finding stand with those of the others."""

import pytest
from conftest import system

import plumbnet
from plumbnet.rules.answering import answers_of
from plumbnet.rules.four_answers import AnswerWord
from plumbnet.rules.rule_profile import profile, profile_names, read_profile

NAME = "relief-missing"
TANKLESS = system("street -> tankless -> tap.hot")


def told(rules: str) -> list[tuple[AnswerWord, str]]:
    facts = plumbnet.check(TANKLESS, rules=rules).facts
    return [(one.word, one.text) for one in answers_of(facts, profile(rules)) if one.rule.name == NAME]


@pytest.mark.parametrize("rules", profile_names())
def test_heater_that_fires_on_flow_is_asked_for_one_where_the_code_asks_every_heater(rules: str) -> None:
    if rules in {"irc-2021", "irc-2024"}:
        assert told(rules) == [(AnswerWord.BROKEN, "tankless has no relief valve of its own.")]
    else:
        assert told(rules) == [(AnswerWord.NOT_APPLICABLE, "it fires only while water is drawn")]


def test_relief_valve_of_a_heater_that_fires_on_flow_is_seen() -> None:
    relieved = system("street -> tankless -> tap.hot", tankless="relief: {pressure: 150 psi}")
    assert NAME not in {one.name for one in plumbnet.check(relieved, rules="irc-2021").findings}


def test_town_that_asks_every_heater_is_quoted_for_those_that_fire_on_flow_alone() -> None:
    text = (
        "profile: town\ntitle: Town\nextends: ipc-2021\n"
        "relief_for: {value: every, clause: Town ordinance 12-3, verified: true}\n"
    )
    town = read_profile(text.encode(), file="town.yaml")
    both = system("street -> tee -> tankless -> tap1.hot\ntee -> heater -> tap2.hot")
    clauses = {one.parts[0]: one.clause for one in plumbnet.check(both, rules=town).findings if one.name == NAME}
    assert clauses["tankless"].startswith("Town ordinance 12-3; ")
    assert "Town" not in clauses["heater"]
