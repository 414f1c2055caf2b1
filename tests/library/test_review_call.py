"""A review, in Python."""

from conftest import system

import plumbnet
from plumbnet.study.review.review_sheet import review_of


def test_review_is_that_of_the_report() -> None:
    report = plumbnet.check(system("street -> heater -> tap.hot"))
    assert plumbnet.review(report, reviewer="R. Hale") == review_of(report, reviewer="R. Hale")
