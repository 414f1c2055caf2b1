"""A layout and its revision."""

from pathlib import Path

import pytest
from conftest import layout, system
from reviewing import requirement, review, written

import plumbnet
from plumbnet.library.comparison import compare
from plumbnet.report.comparison.comparison_report import comparison_text

OPEN, CLOSED = system("street -> heater -> tap.hot"), system("street -> cv -> heater -> tap.hot")


def test_what_became_worse_and_what_was_changed_are_told() -> None:
    compared = compare(OPEN, CLOSED)
    assert compared.difference.is_worse
    assert [part.name for part in compared.revision.parts.added] == ["cv"]
    assert not compare(CLOSED, OPEN).difference.is_worse
    assert compared.to_text() == comparison_text(compared)


def test_earlier_layout_is_told_in_the_units_of_the_later() -> None:
    compared = compare(OPEN, plumbnet.check(CLOSED, units="metric"))
    assert (compared.before.facts.units, compared.after.facts.units) == ("metric", "metric")


def test_reports_are_compared_as_they_are() -> None:
    before, after = plumbnet.check(OPEN, rules="ipc-2021"), plumbnet.check(CLOSED, rules="ipc-2021")
    compared = compare(before, after)
    assert compared.before is before
    assert compared.after is after


def test_last_review_is_read_from_bytes_or_a_path(tmp_path: Path) -> None:
    old = layout("street -> cv -> heater -> tap.hot").encode()
    asked = written(review(plumbnet.check(old), requirement("sealed-heater", "heater", number=4)))
    path = tmp_path / "old.json"
    path.write_bytes(asked)
    for given in (asked, path, str(path)):
        compared = compare(old, CLOSED, review=given)
        assert compared.review is not None
        assert compared.comments[0].number == 4


def test_review_that_is_none_is_refused() -> None:
    with pytest.raises(plumbnet.LayoutError, match=r"^review:1:2: this is no JSON: "):
        compare(OPEN, CLOSED, review=b"{")
