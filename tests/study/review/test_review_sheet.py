"""The review of a layout."""

from conftest import system

import plumbnet
from plumbnet.rules.four_answers import AnswerWord
from plumbnet.study.review.review_sheet import review_of


def test_review_counts_its_answers_and_knows_which_of_them_are_comments() -> None:
    report = plumbnet.check(system("street -> cv -> heater -> tap.hot\nheater.relief -> relief"))
    review = review_of(report, reviewer="R. Hale", date="30 November 2026")
    assert (review.reviewer, review.date, review.report) == ("R. Hale", "30 November 2026", report)
    assert sum(review.counts.values()) == len(review.answers)
    assert review.counts[AnswerWord.BROKEN] == len(report.findings)
    numbers = [review.number_of(one) for one in review.answers if review.number_of(one) is not None]
    assert sorted(number for number in numbers if number) == [one.number for one in review.comments]
    met = next(one for one in review.answers if one.word is AnswerWord.MET)
    assert review.number_of(met) is None


def test_what_is_to_be_seen_on_site_is_what_the_rules_name() -> None:
    report = plumbnet.check(system("street -> heater -> tap.hot"))
    site = review_of(report).site
    assert any("discharge pipe" in one.asks for one in site)
