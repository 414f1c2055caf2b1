"""What became of the comments of a review."""

from dataclasses import replace

import pytest
from conftest import layout
from reviewing import requirement, review, written

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.layout.units.units import PRESSURE
from plumbnet.rules.acceptors import Acceptor
from plumbnet.rules.answering import Answered
from plumbnet.rules.finding import Accepted, Claimed
from plumbnet.rules.four_answers import AnswerWord, Measured
from plumbnet.rules.requirement import REQUIREMENTS, ruling_of
from plumbnet.study.compare.comments_answered import NO_FINDING, CommentNow, CommentState, comments_now
from plumbnet.study.compare.review_file import last_review
from plumbnet.study.renaming.part_renames import Renames

RUNS = "street -> valve -> cv -> tee -> heater -> tap.hot\ntee -> tap.cold\ntee -> tank"
HEATER = "rating: 150 psi, relief: {pressure: 150 psi, temperature: 210 degF, capacity: 50000 Btu/h}"
"""With all that a requirement asks the file to say."""


def checked(more: str = "", tank: str = "", runs: str = RUNS) -> Report:
    text = layout(runs, heater=HEATER, tank=tank) + more
    return plumbnet.check(plumbnet.read_bytes(text.encode(), file="f.yaml"))


SMALL = checked(tank="volume: 1 gal")
RIGHT = checked()


def now(after: Report, *requirements: object, names: Renames | None = None) -> list[CommentNow]:
    asked = last_review(written(review(SMALL, *requirements)), SMALL, file="old.json")
    return list(comments_now(asked, after, names or Renames()))


def states(found: list[CommentNow]) -> list[tuple[int, str, CommentState]]:
    return [(one.number, one.name, one.state) for one in found]


def test_comment_whose_finding_stands_is_open_with_the_words_of_now() -> None:
    (one,) = now(checked(tank="volume: 2 gal"), requirement("tank-too-small", "heater", "tank", number=4))
    assert states([one]) == [(4, "tank-too-small", CommentState.OPEN)]
    assert "takes" in one.text
    assert one.asked is not None
    assert one.text != one.asked.text
    assert one.accepted is None


def test_comment_whose_finding_is_gone_is_answered() -> None:
    (one,) = now(RIGHT, requirement("tank-too-small", "heater", "tank", number=1))
    assert one.state is CommentState.ANSWERED
    assert one.now is not None
    assert one.now.word is AnswerWord.MET
    assert one.now.measured is not None
    assert one.now.measured.value < one.now.measured.bound


def test_comment_whose_other_parts_are_others_now_is_answered_by_its_leading_one() -> None:
    """Trapped by the check, and then held by the tank."""
    (one,) = now(RIGHT, requirement("trapped-expansion", "heater", "cv", number=1))
    assert one.state is CommentState.ANSWERED
    assert one.now is not None
    assert one.now.parts == ("heater", "tank")


def test_comment_that_the_applicant_accepts_is_open_still() -> None:
    more = "accept: [{finding: tank-too-small, part: heater, reason: so}]\n"
    (one,) = now(checked(more, tank="volume: 1 gal"), requirement("tank-too-small", "heater", "tank", number=1))
    assert one.state is CommentState.OPEN
    assert one.accepted is not None
    assert one.accepted.reason == "so"


def test_comment_about_what_is_no_longer_there_is_answered_and_says_so() -> None:
    (one,) = now(RIGHT, requirement("tank-waterlogged", "old-tank", number=1))
    assert (one.state, one.text, one.now) == (CommentState.ANSWERED, "old-tank is no longer there", None)


def test_comment_follows_its_part_through_another_name() -> None:
    renamed = Renames(names={"boiler": "heater", "vessel": "tank"})
    asked = requirement("tank-too-small", "boiler", "vessel", number=1)
    (one,) = now(checked(tank="volume: 2 gal"), asked, names=renamed)
    assert (one.parts, one.state) == (("heater", "tank"), CommentState.OPEN)


def test_comment_that_could_not_be_told_stays_open_as_long_as_nothing_says_that_it_is_met() -> None:
    (one,) = now(RIGHT, requirement("no-such-requirement", "heater", number=1, answer="cannot-be-told"))
    assert (one.state, one.text) == (CommentState.OPEN, "it still cannot be told")
    (one,) = now(RIGHT, requirement("no-such-requirement", "heater", number=1))
    assert (one.state, one.text) == (CommentState.ANSWERED, NO_FINDING)


def test_new_ones_are_numbered_on_from_the_highest_errors_first() -> None:
    after = checked(tank="volume: 1 gal, precharge: 40 psi")
    asked = (requirement("tank-waterlogged", "tank", number=7), requirement("sealed-heater", "heater", number=3))
    found = now(after, *asked)
    assert states(found) == [
        (3, "sealed-heater", CommentState.ANSWERED),
        (7, "tank-waterlogged", CommentState.ANSWERED),
        (8, "tank-too-small", CommentState.NEW),
        (9, "tank-charge-differs", CommentState.NEW),
    ]
    assert found[2].asked is None


def test_requirement_without_a_number_is_no_comment() -> None:
    assert now(RIGHT, requirement("tank-too-small", "heater", "tank", answer="met")) == []


def test_one_finding_keeps_one_of_two_comments_open() -> None:
    two = [requirement("tank-too-small", "heater", each, number=n) for n, each in enumerate(("other", "tank"), 1)]
    found = now(checked(tank="volume: 1 gal"), *two)
    assert states(found) == [(1, "tank-too-small", CommentState.ANSWERED), (2, "tank-too-small", CommentState.OPEN)]
    assert found[0].now is None


def test_comment_that_the_inspector_accepts_is_answered_and_no_new_one() -> None:
    found = checked(tank="volume: 1 gal")
    own = tuple(Accepted(one, "seen", 3, Acceptor.INSPECTOR, "own.yaml") for one in found.findings)
    after = replace(found, findings=(), accepted=own)
    (one,) = now(after, requirement("tank-too-small", "heater", "tank", number=1))
    assert (one.state, one.accepted) == (CommentState.ANSWERED, own[0])
    assert now(after, requirement("tank-waterlogged", "tank", answer="met")) == []


def test_word_of_the_applicant_that_does_not_count_stands_beside_the_comment() -> None:
    found = checked(tank="volume: 1 gal")
    claimed = tuple(Claimed(one, "so", 9, "it does not count") for one in found.findings)
    (one,) = now(replace(found, claimed=claimed), requirement("tank-too-small", "heater", "tank", number=1))
    assert (one.state, one.accepted) == (CommentState.OPEN, claimed[0])


def test_what_was_accepted_in_the_review_and_still_is_is_no_new_comment() -> None:
    more = "accept: [{finding: tank-too-small, part: heater, reason: so}]\n"
    unnumbered = requirement("tank-too-small", "heater", "tank")
    assert now(checked(more, tank="volume: 1 gal"), unnumbered) == []
    assert states(now(checked(tank="volume: 1 gal"), unnumbered)) == [(1, "tank-too-small", CommentState.NEW)]
    other = requirement("tank-too-small", "heater", "other")
    assert len(now(checked(more, tank="volume: 1 gal"), other)) == 1


@pytest.mark.parametrize(
    ("word", "state"),
    [
        (AnswerWord.MET, CommentState.ANSWERED),
        (AnswerWord.NOT_APPLICABLE, CommentState.ANSWERED),
        (AnswerWord.UNTOLD, CommentState.OPEN),
    ],
)
def test_requirement_answers_for_itself(word: AnswerWord, state: CommentState, monkeypatch: pytest.MonkeyPatch) -> None:
    """Of one that answers nothing of the layout at hand there are words to put into its mouth."""
    rule, measured = REQUIREMENTS["relief-below-input"], Measured(50e3, 40e3, PRESSURE, at_least=True)
    said = Answered(rule, word, ("heater/relief", "heater"), 5, ruling_of(rule, RIGHT.profile), "because.", measured)
    other = Answered(rule, AnswerWord.MET, ("other/relief",), 9, said.ruling, "of another.")
    monkeypatch.setattr("plumbnet.study.compare.comments_answered.answers_of", lambda *_: iter([other, said]))
    (one,) = now(RIGHT, requirement("relief-below-input", "heater/relief", "boiler", number=2))
    assert (one.state, one.text, one.now) == (state, "because.", said)
