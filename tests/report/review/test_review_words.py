"""Words of a review sheet."""

from conftest import system

import plumbnet
from plumbnet.layout.units.units import PRESSURE
from plumbnet.report.review.review_words import (
    CHAPTERS,
    answer_rows,
    clause_with_state,
    found_in_words,
    measured_in_words,
)
from plumbnet.rules.answering import Answered, answers_of
from plumbnet.rules.four_answers import AnswerWord, Measured
from plumbnet.rules.requirement import REQUIREMENTS
from plumbnet.rules.rule_profile import profile
from plumbnet.rules.ruling import Ruling

PSI = 6894.757293168361


def answers(name: str, runs: str, **parts: str) -> list[Answered]:
    facts = plumbnet.check(system(runs, **parts)).facts
    return [one for one in answers_of(facts, profile("general")) if one.rule.name == name]


def test_every_requirement_stands_in_a_chapter_that_has_a_title() -> None:
    assert {rule.chapter for rule in REQUIREMENTS.values()} <= set(CHAPTERS)


def test_value_is_told_with_its_bound_and_its_sense() -> None:
    assert measured_in_words(Measured(61 * PSI, 80 * PSI, PRESSURE), "us") == "61 psi, at most 80 psi"
    assert measured_in_words(Measured(61e3, 8e3, PRESSURE, at_least=True), "metric") == "61 kPa, at least 8 kPa"


def test_what_was_found_is_words_or_a_value_or_what_is_missing() -> None:
    runs = "street -> tee -> heater -> tap.hot\nheater.relief -> relief"
    (one,) = answers("relief-below-input", runs)
    assert found_in_words(one, "us") == "the file does not say the capacity of relief"
    (one,) = answers("relief-below-input", runs, relief="pressure: 150 psi, capacity: 50000 Btu/h")
    assert found_in_words(one, "us") == "50,000 Btu/h, at least 40,000 Btu/h"
    (one,) = answers("unreached-part", runs)
    assert found_in_words(one, "us") == "water comes to every part"


def test_clause_says_whether_it_was_read_or_recalled_and_practice_says_so_itself() -> None:
    assert clause_with_state(Ruling(clause="Code 1", verified=True)) == "[Code 1; read]"
    assert clause_with_state(Ruling(clause="Code 1", verified=False)) == "[Code 1; from memory]"
    assert clause_with_state(Ruling(clause="common practice: so", verified=False)) == "[common practice: so]"


def test_subjects_with_one_answer_stand_in_one_row_with_the_range_of_their_values() -> None:
    taps = {f"tap{number}": f"elevation: {number} ft" for number in range(10)}
    runs = "street -> tee\n" + "\n".join(f"tee -> {name}.cold" for name in taps)
    (row,) = answer_rows(answers("static-above-limit", runs, **taps), "us")
    assert row.subjects == "tap0, tap1, tap2, tap3, tap4, tap5, tap6, tap7 and 2 more"
    assert (row.word, row.found) == (AnswerWord.MET, "56.1 psi to 60 psi, at most 80 psi")
    assert len(row.answers) == 10


def test_what_is_broken_stands_by_itself_and_a_single_subject_has_its_line() -> None:
    runs = "street -> tee -> tap1.cold\ntee -> tap2.cold\ntee -> tap3.cold"
    parts = {"street": "pressure: 79 psi", "tap1": "elevation: -9 ft", "tap2": "elevation: -9 ft"}
    rows = list(answer_rows(answers("static-above-limit", runs, **parts), "us"))
    assert [row.word for row in rows] == [AnswerWord.BROKEN, AnswerWord.BROKEN, AnswerWord.MET]
    assert [row.subjects.partition(" (line ")[0] for row in rows] == ["tap1", "tap2", "tap3"]
    assert all(" (line " in row.subjects for row in rows)
    (row,) = answer_rows(answers("unreached-part", runs), "us")
    assert row.subjects == "the layout"
