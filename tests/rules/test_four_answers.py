"""Every requirement answers for every subject: each once, and in one of four ways."""

from collections import Counter
from collections.abc import Callable, Iterable

import pytest
from conftest import system, times
from hypothesis import given
from oracles.random_layouts import Layout, layouts

import plumbnet
from plumbnet.layout.file.loader import read_system
from plumbnet.layout.model.system import System
from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.rules.answering import Answered, answers_of
from plumbnet.rules.facts.all_facts import Facts
from plumbnet.rules.four_answers import AnswerWord, Breach, Met, NotApplicable, Untold
from plumbnet.rules.requirement import REQUIREMENTS
from plumbnet.rules.rule_profile import profile

SUBJECTS: dict[str, Callable[[Facts], Iterable[str]]] = {
    "heaters": lambda facts: (one.name for one in facts.heaters),
    "taps": lambda facts: (one.name for one in facts.taps),
    "expansion tanks": lambda facts: (one.name for one in facts.tanks),
    "safety relief valves": lambda facts: (one.name for one in facts.reliefs),
    "expansion relief valves": lambda facts: (one.name for one in facts.expansion_reliefs),
    "stores of hot water": lambda facts: (one.name for one in facts.stores),
    "pressure reducers": lambda facts: (one.name for one in facts.reducers),
}
"""Who is asked, by the words with which a requirement names its subjects."""
OFTEN = {"expansion-relief-does-not-count", "pumped-up"}
"""Of a heater that several valves hold each is told, and a heater may pump several places up."""


def answers(drawn: System, name: str, rules: str = "general") -> list[Answered]:
    facts = plumbnet.check(drawn, rules=rules).facts
    return [one for one in answers_of(facts, profile(rules)) if one.rule.name == name]


@pytest.mark.parametrize("name", REQUIREMENTS)
def test_what_is_asked_is_a_sentence_and_its_subjects_have_a_name(name: str) -> None:
    assert REQUIREMENTS[name].asks.endswith(".")
    assert REQUIREMENTS[name].asks[0].isupper()
    assert REQUIREMENTS[name].of


def _named(drawn: System) -> str:
    """The one profile that a file names."""
    return drawn.rules if isinstance(drawn.rules, str) else "general"


@pytest.mark.parametrize("name", REQUIREMENTS)
def test_bad_layout_is_broken_where_check_finds_it_and_good_layout_is_not(name: str) -> None:
    bad, good = (
        read_system(text.encode(), file="a.yaml") for text in (REQUIREMENTS[name].bad, REQUIREMENTS[name].good)
    )
    report = plumbnet.check(bad)
    broken = [one for one in answers_of(report.facts, report.profile) if one.rule.name == name and one.finding]
    assert [one.finding for one in broken] == [one for one in report.findings if one.name == name]
    assert all(one.word is AnswerWord.BROKEN and one.line == one.finding.line for one in broken if one.finding)
    assert AnswerWord.BROKEN not in {one.word for one in answers(good, name, _named(good))}


@times(0.4)
@given(layouts(most=8))
def test_every_requirement_answers_once_for_every_subject_that_its_words_name(layout: Layout) -> None:
    for rules in ("general", "upc-2024", "uk-2010"):
        try:
            facts = plumbnet.check(layout.system, rules=rules).facts
        except LayoutError:
            return
        told = list(answers_of(facts, profile(rules)))
        assert {one.rule.name for one in told} == set(REQUIREMENTS)
        for name, rule in REQUIREMENTS.items():
            own = [one for one in told if one.rule.name == name]
            if rule.of in SUBJECTS and all(one.parts for one in own):
                subjects = set(SUBJECTS[rule.of](facts))
                answered = Counter(part for one in own for part in _about(one, subjects))
                assert answered.keys() == subjects, name
                assert name in OFTEN or set(answered.values()) <= {1}, name


def _about(one: Answered, subjects: set[str]) -> set[str]:
    """The subjects that an answer is about: the first of its parts, and of several heaters that do it together all."""
    return subjects.intersection(one.parts if one.finding else one.parts[:1])


def test_four_answers_of_one_requirement() -> None:
    runs = "street -> tee -> heater -> tap.hot\nheater.relief -> relief"
    capable = "pressure: 150 psi, capacity: 105000 Btu/h"
    for relief, word, text in (
        (capable, AnswerWord.MET, ""),
        (capable.replace("105000", "10000"), AnswerWord.BROKEN, "relief carries off 10,000 Btu/h; "),
        ("pressure: 150 psi", AnswerWord.UNTOLD, "the capacity of relief"),
    ):
        (one,) = answers(system(runs, relief=relief), "relief-below-input")
        assert one.word is word
        assert one.text.startswith(text)
    (one,) = answers(system("street -> heater -> tap.hot"), "relief-below-input")
    assert (one.word, one.parts, one.line) == (AnswerWord.NOT_APPLICABLE, (), 0)
    assert one.text == "the layout has no safety relief valves"


def test_value_stands_against_its_bound() -> None:
    (one,) = answers(system("street -> heater -> tap.hot", street="pressure: 61 psi"), "static-above-limit")
    assert one.measured is not None
    assert (round(one.measured.value), round(one.measured.bound)) == (420580, 551581)
    assert not one.measured.at_least


def test_hose_bibb_that_the_rules_exempt_is_not_asked_about() -> None:
    drawn = system("street -> heater -> tap.cold", street="pressure: 95 psi", tap="outdoor: true")
    (one,) = answers(drawn, "static-above-limit")
    assert (one.word, one.parts) == (AnswerWord.NOT_APPLICABLE, ("tap",))
    assert one.text == "it is outdoors, and the rules exempt it"


def test_what_a_profile_does_not_ask_for_is_not_applicable() -> None:
    (one,) = answers(system("street -> heater -> tap.hot"), "check-missing-at-heater")
    assert (one.word, one.text) == (AnswerWord.NOT_APPLICABLE, "the rules do not ask for it")
    off = profile("general").model_copy(
        update={
            "findings": {
                "relief-missing": profile("general").findings["relief-missing"].model_copy(update={"severity": "off"})
            }
        }
    )
    facts = plumbnet.check(system("street -> heater -> tap.hot")).facts
    (one,) = (each for each in answers_of(facts, off) if each.rule.name == "relief-missing")
    assert (one.word, one.finding, one.text) == (AnswerWord.NOT_APPLICABLE, None, "the rules do not ask for it")


def test_answers_know_their_words() -> None:
    words = [each.word for each in (Met((), ""), Breach((), "", ""), NotApplicable((), ""), Untold((), ""))]
    assert words == list(AnswerWord)


FOUR = set(AnswerWord)
UNTOLD_OF = {"relief-above-rating", "relief-below-input", "tank-cannot-be-served", "vacuum-relief-missing"}
"""Requirements on which a file may say too little."""
ALWAYS_APPLIES = {"unreached-part"}
"""Those whose subject every layout has."""
TANKLESS = system("street -> cv -> tee -> tankless -> tap.hot\ntee -> tank")


def test_every_requirement_has_been_seen_to_give_each_of_its_answers() -> None:
    seen: dict[str, set[AnswerWord]] = {name: set() for name in REQUIREMENTS}
    texts = {text for rule in REQUIREMENTS.values() for text in (rule.bad, rule.good)}
    for drawn in [TANKLESS, *(read_system(text.encode(), file="a.yaml") for text in sorted(texts))]:
        for rules in {_named(drawn), "upc-2024", "en-806"}:
            for one in answers_of(plumbnet.check(drawn, rules=rules).facts, profile(rules)):
                seen[one.rule.name].add(one.word)
    untold = {name for name, words in seen.items() if AnswerWord.UNTOLD in words}
    assert untold == UNTOLD_OF
    rest = FOUR - {AnswerWord.UNTOLD}
    assert {name: rest - words for name, words in seen.items() if rest - words} == {
        name: {AnswerWord.NOT_APPLICABLE} for name in ALWAYS_APPLIES
    }
