"""What-ifs as text: what is told, in which order; golden/what-if.out and what-ifs.out hold the words."""

from conftest import layout

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.layout.model.change import Change
from plumbnet.report.studies.whatif_report import whatifs_text
from plumbnet.study.whatif.what_if import WhatIf, whatif

RUNS = """street -> valve -> tee -> heater -> tap.hot
          tee -> tank"""
SCENARIOS = """
title: A house
scenarios:
  shut: {note: Left shut after a repair., change: [{close: valve}]}
  bare: {change: [{close: valve}, {remove: tank}]}
  warm: {change: [{set: {part: heater, setpoint: 150 degF}}]}
"""


def report(**parts: str) -> Report:
    text = layout(RUNS, **{"heater": "relief: {pressure: 150 psi}", **parts}) + SCENARIOS
    return plumbnet.check(plumbnet.read_bytes(text.encode(), file="house.yaml"))


def scenarios(of: Report) -> list[WhatIf]:
    return [whatif(of, scenario=name) for name in of.system.scenarios]


def test_one_what_if_stands_side_by_side_and_what_is_worse_comes_first() -> None:
    text = whatifs_text([whatif(report(), scenario="shut")])
    pieces = ("supposed: Left shut", "changes: close valve", "- heater is worse: open", "!  verdict      open ")
    places = [text.index(piece) for piece in pieces]
    assert places == sorted(places)
    assert "\n   static " in text
    assert "\n*  stopped by   nothing " in text


def test_several_what_ifs_are_a_row_each() -> None:
    text = whatifs_text(scenarios(report()))
    rows = [line.split("  ") for line in text.splitlines() if line.startswith(("as it is ", "shut ", "bare ", "warm "))]
    assert [(row[0].strip(), row[-1].strip()) for row in rows] == [
        ("as it is", "open, 60 psi"),
        ("shut", "! controlled, 77.1 psi"),
        ("bare", "! trapped"),
        ("warm", "* open, 60 psi"),
    ]
    assert "A house: 3 what-ifs\n" in text


def test_worse_what_ifs_are_told_before_the_others() -> None:
    before = report()
    text = whatifs_text([whatif(before, scenario="warm"), whatif(before, scenario="bare")])
    told = text.partition("otherwise different")[2]
    assert told.index("bare\n----") < told.index("warm\n----")
    assert told.index("- heater is worse: open before, trapped") < told.index("- new error")
    assert "- no heater is worse or better for it." in told


def test_heaters_beyond_three_go_into_another_table() -> None:
    runs = "\n".join(f"street -> cv{number} -> heater{number}" for number in range(4))
    before = plumbnet.check(plumbnet.read_bytes(layout(runs).encode()))
    text = whatifs_text([whatif(before, [Change(remove=f"cv{number}")]) for number in range(2)])
    first, second = (line for line in text.splitlines() if line.startswith("scenario"))
    assert first.split() == ["scenario", "heater0", "heater1", "heater2"]
    assert second.split() == ["scenario", "heater3"]
    assert "remove cv0  * open, 60 psi" in text


def test_error_that_is_gone_is_told() -> None:
    before = report(valve="state: shut", tank="volume: 1 gal")
    text = whatifs_text([whatif(before, [Change(open="valve")])])
    assert "better: trapped before, open then, at 60" in text
    assert "- gone: error tank-too-small (heater)." in text


def test_relief_valve_that_is_lost_is_told() -> None:
    before = report(valve="state: shut", tank="volume: 1 gal")
    text = whatifs_text([whatif(before, [Change.model_validate({"fail": "heater/relief"})])])
    assert "heater is worse: trapped before, sealed" in text


def test_pressure_that_comes_to_rest_past_the_limit_is_told() -> None:
    before = report(valve="state: shut", tank="volume: 4.5 gal")
    text = whatifs_text([whatif(before, [Change.model_validate({"set": {"part": "tank", "volume": "3 gal"}})])])
    (line,) = (line for line in text.splitlines() if line.startswith("- heater is worse: controlled before"))
    assert "trapped then, at 89 psi" in line
    assert line.endswith(" past the limit.")


def test_heater_that_comes_or_goes_is_told() -> None:
    before = report(valve="state: shut", tank="volume: 1 gal")
    gone = whatifs_text([whatif(before, [Change(remove="heater")])])
    assert "- heater is better: it is gone." in gone
    assert "!  verdict" not in gone
    fields = {"part": "new", "kind": "storage_heater", "volume": 90, "setpoint": 140, "run": "tee -> new"}
    new = whatifs_text([whatif(before, [Change.model_validate({"add": fields})])])
    assert "- new is worse: it is new, and trapped." in new
    assert "!  verdict        not there" in new


def test_nothing_that_differs_is_said_too() -> None:
    text = whatifs_text([whatif(report(), [Change(close="valve"), Change(open="valve")])])
    assert "\n- nothing: " in text


def test_what_the_author_wrote_cannot_reach_the_terminal() -> None:
    text = layout(RUNS) + 'title: "a\\e[31m"\nscenarios: {"x\\e[2J": {note: "n\\e[1m", change: [{close: valve}]}}\n'
    before = plumbnet.check(plumbnet.read_bytes(text.encode(), file="house.yaml"))
    assert "\x1b" not in whatifs_text([whatif(before, scenario=name) for name in before.system.scenarios])


def test_heater_that_only_another_what_if_adds_is_not_there() -> None:
    before = report()
    second = {"kind": "storage_heater", "volume": "40 gal", "setpoint": "140 degF"}
    change = Change.model_validate({"add": {"part": "second", **second, "run": "tee -> second"}})
    adding = whatif(before, [change])
    text = whatifs_text([adding, whatif(before, scenario="warm")])
    (warm,) = (line for line in text.splitlines() if line.startswith("warm "))
    assert warm.split() == ["warm", "*", "open,", "60", "psi", "not", "there"]


def test_what_if_shows_the_same_text_itself() -> None:
    one, *_ = scenarios(report())
    assert one.to_text() == whatifs_text([one])
