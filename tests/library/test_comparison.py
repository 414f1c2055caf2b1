"""A layout and its revision."""

from conftest import system

import plumbnet
from plumbnet.library.comparison import compare
from plumbnet.report.studies.comparison_report import comparison_text

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
