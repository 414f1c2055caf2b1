"""What a reviewer reads first of a revision; golden/compare-resubmission.out holds it whole."""

from dataclasses import replace

import pytest
from conftest import layout
from reviewing import requirement, review, written

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.layout.model.circuit import Circuit
from plumbnet.layout.units.units import PRESSURE
from plumbnet.report.comparison.comparison_report import comparison_text
from plumbnet.report.comparison.resubmission_report import (
    OTHER_VALUES,
    first_to_read,
    less_accepted,
    other_rules,
    what_was_asked,
)
from plumbnet.report.prose.prose_blocks import Paragraph, Points, Table
from plumbnet.report.text.findings_text import clause_in_words
from plumbnet.rules.acceptors import Acceptor
from plumbnet.rules.answering import Answered
from plumbnet.rules.circuit_rules import ruled_by
from plumbnet.rules.finding import Accepted, Claimed
from plumbnet.rules.four_answers import AnswerWord, Measured
from plumbnet.rules.requirement import REQUIREMENTS, ruling_of
from plumbnet.rules.rule_profile import read_profile
from plumbnet.study.compare.review_file import last_review
from plumbnet.study.compare.whole_comparison import Comparison, comparison

RUNS = "street -> valve -> cv -> tee -> heater -> tap.hot\ntee -> tap.cold\ntee -> tank"
SMALL = "{{finding: {}, part: {}, reason: the owner is content}}"


def checked(*accepted: tuple[str, str], tank: str = "", capacity: int = 50_000, runs: str = RUNS) -> Report:
    heater = f"rating: 150 psi, relief: {{pressure: 150 psi, temperature: 210 degF, capacity: {capacity} Btu/h}}"
    names = {"heater2" if "heater2" in runs else "heater": heater}
    text = layout(runs, tank=tank, **names)
    said = ", ".join(SMALL.format(*one) for one in accepted)
    return plumbnet.check(plumbnet.read_bytes(f"{text}accept: [{said}]\n".encode(), file="house.yaml"))


def asked(before: Report, after: Report, *requirements: object, **more: object) -> Comparison:
    return comparison(
        before, after, last_review(written(review(before, *requirements, **more)), before, file="old.json")
    )


def test_new_error_that_the_file_accepts_stands_above_all_with_its_clause() -> None:
    compared = comparison(checked(), checked(("relief-below-input", "heater/relief"), capacity=30_000))
    (points,) = first_to_read(compared)
    (accepted,) = compared.after.accepted
    told = (
        "new error relief-below-input (heater/relief), and accepted by the applicant in line 33 "
        '("the owner is content"): heater/relief carries off 30,000 Btu/h; what it serves puts in 40,000 Btu/h. '
        f"Fit a relief valve rated for at least 40,000 Btu/h. {clause_in_words(accepted.finding)}"
    )
    assert points == Points((told,))
    text = comparison_text(compared)
    assert text.index("First to read") < text.index("new error relief-below-input") < text.index("What differs")


def test_error_that_stood_before_and_is_accepted_now_is_told_after_new_ones() -> None:
    before = checked(tank="volume: 1 gal")
    after = checked(
        ("tank-too-small", "heater"), ("relief-below-input", "heater/relief"), tank="volume: 1 gal", capacity=30_000
    )
    (points,) = first_to_read(comparison(before, after))
    assert isinstance(points, Points)
    new, old = points.texts
    assert new.startswith("new error relief-below-input (heater/relief), and accepted by the applicant in line 33 (")
    assert old.startswith(
        'error tank-too-small (heater) stood before, and is accepted by the applicant now in line 33 ("the owner is '
        'content"): '
    )


def test_new_warning_that_the_file_accepts_is_told_among_what_differs() -> None:
    compared = comparison(checked(), checked(("tank-charge-differs", "tank"), tank="volume: 6 gal, precharge: 50 psi"))
    assert list(first_to_read(compared)) == []
    assert list(less_accepted(compared)) == [
        'new warning tank-charge-differs (tank), and accepted by the applicant in line 33 ("the owner is content").'
    ]
    assert "\nWhat differs\n" not in comparison_text(compared)
    assert "- new warning tank-charge-differs (tank), and accepted" in comparison_text(compared)


def test_other_profile_is_told_before_what_differs() -> None:
    before = checked()
    compared = comparison(before, plumbnet.check(before.system, rules="ipc-2021"))
    told, points = other_rules(compared)
    assert told == Paragraph(
        "Judged by General practice (general) before, and by International Plumbing Code 2021 (ipc-2021) now."
    )
    assert isinstance(points, Points)
    assert "bypass.value: counts -> does-not-count" in points.texts
    assert points.texts[-1].endswith(" clauses told otherwise than before")


def test_other_values_under_the_same_name_are_told_with_both_hashes() -> None:
    before = checked()
    head = "profile: town\ntitle: Town\nextends: general\n"
    town = [
        read_profile(f"{head}least_at_tap: {{value: {limit}, clause: c, verified: true}}".encode(), file="town.yaml")
        for limit in ("10 psi", "20 psi")
    ]
    one, other = (replace(before, rules=ruled_by(each)) for each in town)
    told, points = other_rules(comparison(one, other))
    assert told == Paragraph(f"Town (town) is not what it was: SHA-256 {town[0].sha256} before, {town[1].sha256} now.")
    assert points == Points(("least_at_tap.value: 10 psi -> 20 psi",))


def test_comments_stand_in_a_table_with_their_fate() -> None:
    before = checked(tank="volume: 1 gal")
    after = checked(("tank-too-small", "heater2"), tank="volume: 2 gal", runs=RUNS.replace("heater", "heater2"))
    made, counts, table = what_was_asked(
        asked(
            before,
            after,
            requirement("tank-too-small", "heater", "tank", number=3),
            requirement("tank-waterlogged", "tank", number=5),
        )
    )
    assert made == Paragraph("house.yaml, rules general, by A. Plan-Checker, 12 May 2031", "last review")
    assert counts == Paragraph("1 answered, 1 still open, 0 new.", "comments")
    assert isinstance(table, Table)
    assert table.head == ("no.", "", "requirement", "now")
    first, second = table.rows
    assert first[:3] == ("3", "still open", "tank-too-small (heater2, tank); heater in the review")
    assert first[3].endswith(' Accepted by the applicant in line 33 ("the owner is content").')
    assert second == ("5", "answered", "tank-waterlogged (tank)", second[3])


def test_words_on_a_comment_say_whose_they_are_and_whether_they_count() -> None:
    before = checked(tank="volume: 1 gal")
    compared = asked(before, before, requirement("tank-too-small", "heater", "tank", number=1))
    (finding,) = before.findings
    for word, told in (
        (
            Accepted(finding, "seen", 3, Acceptor.INSPECTOR, "own.yaml"),
            'Accepted by the inspector in line 3 of own.yaml ("seen").',
        ),
        (
            Claimed(finding, "so", 9, "no file can accept this of itself"),
            'Accepted by the applicant in line 9 ("so"), which does not count (no file can accept this of itself).',
        ),
    ):
        one = replace(compared.comments[0], accepted=word)
        (*_, table) = what_was_asked(replace(compared, comments=(one,)))
        assert isinstance(table, Table)
        assert table.rows[0][3].endswith(told)


def test_review_without_a_name_or_a_date_or_a_comment() -> None:
    before = checked()
    met = requirement("tank-too-small", "heater", answer="met")
    blocks = list(what_was_asked(asked(before, before, met, reviewer=None, date=None)))
    assert blocks == [
        Paragraph("house.yaml, rules general", "last review"),
        Paragraph("0 answered, 0 still open, 0 new.", "comments"),
    ]


@pytest.mark.parametrize(
    ("word", "text", "told"),
    [
        (AnswerWord.MET, "", "met: 50 psi, at least 40 psi"),
        (AnswerWord.MET, "it is held.", "met: it is held; 50 psi, at least 40 psi"),
        (AnswerWord.NOT_APPLICABLE, "no water comes to it.", "not applicable: no water comes to it"),
        (AnswerWord.UNTOLD, "the capacity of relief", "the file does not say the capacity of relief"),
    ],
)
def test_answer_is_told_with_its_value_against_the_bound(word: AnswerWord, text: str, told: str) -> None:
    before = checked()
    compared = asked(before, before, requirement("tank-too-small", "heater", number=1))
    rule = REQUIREMENTS["tank-too-small"]
    measured = Measured(344_737.9, 275_790.3, PRESSURE, at_least=True) if word is AnswerWord.MET else None
    said = Answered(rule, word, ("heater",), 1, ruling_of(rule, before.profile), text, measured)
    one = replace(compared.comments[0], now=said, text=text)
    (*_, table) = what_was_asked(replace(compared, comments=(one,)))
    assert isinstance(table, Table)
    assert table.rows[0][3] == told


def test_rules_of_each_circuit_are_told_by_their_water() -> None:
    before = checked()
    text = f"rules: {{water: ipc-2021, heating: us-boiler}}\n{before.system.record.text}"
    after = plumbnet.check(plumbnet.read_bytes(text.encode(), file="house.yaml"))
    told = [block for block in other_rules(comparison(before, after)) if isinstance(block, Paragraph)]
    assert [(one.label, one.text.rpartition(" and by ")[2]) for one in told] == [
        ("water", "International Plumbing Code 2021 (ipc-2021) now."),
        ("heating", f"{after.rules.of(Circuit.HEATING).in_full} now."),
    ]


def test_review_of_a_layout_whose_circuits_have_their_own_rules() -> None:
    text = f"rules: {{water: ipc-2021, heating: us-boiler}}\n{checked().system.record.text}"
    before = plumbnet.check(plumbnet.read_bytes(text.encode(), file="house.yaml"))
    compared = comparison(before, before, last_review(written(review(before)), before, file="old.json"))
    made = next(iter(what_was_asked(compared)))
    assert isinstance(made, Paragraph)
    assert made.text == "house.yaml, rules water: ipc-2021; heating: us-boiler, by A. Plan-Checker, 12 May 2031"


def test_review_by_other_values_of_the_same_rules_says_so() -> None:
    before = checked()
    compared = asked(before, before, requirement("tank-too-small", "heater", number=1), rules_sha256="0" * 64)
    assert list(other_rules(compared)) == [Paragraph(OTHER_VALUES, "last review")]
    same = asked(before, before, requirement("a", number=1), rules_sha256=before.profile.sha256)
    assert list(other_rules(same)) == []


def test_without_review_or_other_rules_nothing_is_said_of_them() -> None:
    compared = comparison(checked(), checked())
    assert [*first_to_read(compared), *other_rules(compared), *what_was_asked(compared)] == []
