"""What differs between two reports, in sentences and side by side."""

from dataclasses import replace

from curing import HOUSE, RELIEVED, TANKED, house

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.layout.model.system import System
from plumbnet.report.studies.difference_report import difference_rows, difference_told, mark
from plumbnet.rules.finding import Accepted
from plumbnet.study.compare.report_difference import difference

OPEN = "street -> tee -> heater -> tap.hot\ntee -> tap.cold"


def sentences(before: Report, after: Report, now: str = "now") -> list[str]:
    return list(difference_told(difference(before, after), after.facts, now=now))


def marked(before: System, after: System) -> dict[str, tuple[str, str, str]]:
    was, now = plumbnet.check(before), plumbnet.check(after)
    (heater,) = difference(was, now).heaters
    return {label: (sign, old, new) for sign, label, old, new in difference_rows(heater, was.facts, now.facts)}


def test_worse_heater_is_told_first_then_what_is_new() -> None:
    first, second = sentences(plumbnet.check(house(OPEN)), plumbnet.check(house()))
    assert first.startswith("heater is worse: open before, trapped")
    assert second.startswith("new error trapped-expansion (heater): ")


def test_better_heater_is_told_with_where_its_pressure_comes_to_rest() -> None:
    first, second = sentences(plumbnet.check(house()), plumbnet.check(house(TANKED)), now="then")
    assert first.startswith("heater is better: trapped before")
    assert "controlled then, at 77.1 psi" in first
    assert second == "gone: error trapped-expansion (heater)."


def test_same_report_twice_says_so() -> None:
    report = plumbnet.check(house())
    (nothing,) = sentences(report, report)
    assert nothing.startswith("nothing: ")


def test_finding_that_is_accepted_now_is_told_so() -> None:
    report = plumbnet.check(house())
    accepted = tuple(Accepted(one, "Letter of the authority.", 9) for one in report.findings)
    first, second = sentences(report, replace(report, findings=(), accepted=accepted))
    assert first.startswith("accepted now: error trapped-expansion")
    assert second.startswith("no heater is worse or better")


def test_heater_that_is_new_is_told_with_its_verdict() -> None:
    report = plumbnet.check(house())
    none = replace(report, facts=replace(report.facts, heaters=()), findings=())
    assert sentences(none, report)[0] == "heater is worse: it is new, and trapped."
    assert sentences(report, none)[0] == "heater is better: it is gone."


def test_rows_stand_side_by_side_with_a_mark_where_they_differ() -> None:
    found = marked(house(OPEN), house(street="pressure: 70 psi"))
    assert found["verdict"] == ("!", "open", "trapped")
    assert found["static"] == ("*", "60 psi", "70 psi")
    assert found["limit"] == ("", "80 psi", "80 psi")
    assert found["stopped by"] == ("*", "nothing", "cv")
    assert marked(house(), house(TANKED))["verdict"] == ("*", "trapped", "controlled")


def test_heater_has_the_mark_of_its_worst() -> None:
    was, now = plumbnet.check(house(OPEN)), plumbnet.check(house())
    warmer = plumbnet.check(house(HOUSE, heater=f"{RELIEVED}, volume: 60 gal"))
    assert [mark(difference(*pair).heaters[0]) for pair in ((was, now), (now, warmer), (now, now))] == ["!", "*", ""]
