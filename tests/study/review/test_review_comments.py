"""Comments of a review: the worst first, numbered."""

from conftest import system

import plumbnet
from plumbnet.study.review.review_comments import Comment, comments
from plumbnet.study.review.review_sheet import review_of

HOUSE = "street -> valve -> cv -> tee -> heater -> tap.hot\ntee -> tank\nheater.relief -> relief"
"""A tank charged wrong, a relief valve whose capacity nobody wrote, and a tap far too high up."""
PARTS = {"tank": "volume: 10 gal, precharge: 45 psi", "tap": "elevation: 150 ft"}


def told(*, accept: str = "") -> list[Comment]:
    drawn = system(f"{HOUSE}", **PARTS)
    review = review_of(plumbnet.check(drawn))
    kept = [one for one in review.answers if one.finding and one.finding.name != accept]
    rest = [one for one in review.answers if not one.finding]
    return list(comments([*kept, *rest], review.report.accepted))


def test_errors_come_first_then_warnings_then_what_cannot_be_told() -> None:
    found = told()
    assert [one.number for one in found] == list(range(1, len(found) + 1))
    said = [(one.answered.rule.name, one.answered.parts[0]) for one in found]
    assert said == [
        ("tap-without-water", "tap"),
        ("tank-charge-differs", "tank"),
        ("relief-above-rating", "relief"),
        ("relief-below-input", "relief"),
    ]


def test_what_is_not_found_has_no_comment() -> None:
    assert "tank-charge-differs" not in {one.answered.rule.name for one in told(accept="tank-charge-differs")}
