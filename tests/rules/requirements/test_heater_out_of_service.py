"""The finding "heater-out-of-service": a heater that is taken as cold is told, and judged once it is put back."""

from conftest import system

import plumbnet
from plumbnet.layout.model.change import Change
from plumbnet.rules.answering import answers_of
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import AnswerWord

RUNS = "street -> cv -> tee -> spare -> heater -> tap.hot"
SPARE = "kind: storage_heater, volume: 40 gal, setpoint: 140 degF, state: out_of_service"


def test_heater_out_of_service_is_told_in_these_words_and_has_no_verdict() -> None:
    report = plumbnet.check(system(RUNS, spare=SPARE))
    assert [one.name for one in report.heaters] == ["heater"]
    (one,) = (one for one in report.findings if one.name == "heater-out-of-service")
    assert (one.severity, one.parts) == (Severity.NOTE, ("spare",))
    assert one.text == "spare is out of service: it is taken as cold, and has no verdict."
    assert one.advice == "Before it is lit again, check the layout with it in service; a sweep does so for each alone."


def test_heater_that_is_put_back_is_judged_and_told_no_more() -> None:
    back = Change.model_validate({"set": {"part": "spare", "state": "in_service"}})
    report = plumbnet.check(system(RUNS, spare=SPARE).with_changes([back]))
    assert [one.name for one in report.heaters] == ["spare", "heater"]
    words = [one.word for one in answers_of(report.facts, report.profile) if one.rule.name == "heater-out-of-service"]
    assert words == [AnswerWord.MET, AnswerWord.MET]


def test_layout_with_nothing_but_heaters_out_of_service_is_read_and_has_the_note_alone() -> None:
    report = plumbnet.check(system("street -> cv -> heater -> tap.hot", heater="state: out_of_service"))
    assert report.heaters == ()
    assert [one.name for one in report.findings] == ["heater-out-of-service"]
