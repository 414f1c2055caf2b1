"""The finding "reducer-creeps": the seat is renewed before anything is charged or fitted by what stands behind it."""

from conftest import system

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.layout.model.change import Change
from plumbnet.rules.answering import answers_of
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import AnswerWord
from plumbnet.study.remedies.remedy_search import remedies

RUNS = "street -> prv -> tee -> heater -> tap.hot\ntee -> tank\ntee -> tap.cold"
STREET = "kind: main, pressure: 95 psi"
WORN = "kind: pressure_reducer, set: 55 psi, state: creeping"
HEATER = "relief: {pressure: 150 psi, temperature: 210 degF}"
TANK = "kind: expansion_tank, volume: 4.4 gal, precharge: 55 psi"


def house(prv: str = WORN) -> Report:
    return plumbnet.check(system(RUNS, street=STREET, prv=prv, tank=TANK, heater=HEATER))


def advice(report: Report, name: str) -> str:
    return next(one.advice for one in report.findings if one.name == name)


def test_reducer_that_creeps_is_told_in_these_words() -> None:
    (one,) = (one for one in house().findings if one.name == "reducer-creeps")
    assert (one.severity, one.parts) == (Severity.ERROR, ("prv",))
    assert one.text == "prv creeps: with no water running it does not hold its set, 55 psi."
    assert one.advice == "Clean or renew its seat, or exchange it; only then charge, set or add anything behind prv."


def test_tank_behind_it_is_charged_by_what_stands_there_once_the_seat_is_renewed() -> None:
    assert advice(house(), "tank-charge-differs").endswith("charge it to what stands there, and open it again.")
    assert "95 psi" not in advice(house(), "tank-charge-differs")


def test_tap_that_stands_too_high_is_helped_by_the_seat_before_by_another_reducer() -> None:
    assert advice(house(), "static-above-limit").startswith("Where its water comes through prv, renew that seat first")


def test_once_renewed_it_is_met_and_nothing_else_stands() -> None:
    renewed = Change.model_validate({"set": {"part": "prv", "state": "sound"}})
    report = plumbnet.check(house().system.with_changes([renewed]))
    assert [one.word for one in answers_of(report.facts, report.profile) if one.rule.name == "reducer-creeps"] == [
        AnswerWord.MET
    ]
    assert report.findings == ()


def test_no_second_reducer_is_put_behind_one_that_creeps() -> None:
    titles = [one.title for one in remedies(house())["heater"]]
    assert titles[0] == "Renew the seat of prv, or the whole reducer: it creeps."
    assert not [title for title in titles if title.startswith("Fit a pressure reducer")]
