"""Findings that a file accepts: silenced for a part, told with the reason, and not counted."""

import pytest

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.layout.file.loader import read_system
from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.report.text.heater_text import report_text

HOUSE = """plumbnet: 1
parts:
  street: {kind: main, pressure: 95 psi}
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi, temperature: 210 degF}}
  tap: fixture
runs:
  - street -> heater -> tap.hot
"""


def checked(*accepted: str, text: str = HOUSE) -> Report:
    listed = "accept:\n" + "".join(f"  - {one}\n" for one in accepted)
    return plumbnet.check(read_system((text + listed).encode(), file="house.yaml"))


def refused(*accepted: str) -> str:
    with pytest.raises(LayoutError) as caught:
        checked(*accepted)
    return str(caught.value).splitlines()[0]


TAP = "{finding: static-above-limit, part: tap, reason: the letter of 12 May}"


def test_accepted_finding_stands_no_more_and_is_told_with_its_reason() -> None:
    assert [one.name for one in plumbnet.check(read_system(HOUSE.encode(), file="house.yaml")).findings] == [
        "static-above-limit"
    ]
    made = checked(TAP)
    assert made.findings == ()
    assert made.is_fine
    assert [(one.finding.name, one.reason, one.line) for one in made.accepted] == [
        ("static-above-limit", "the letter of 12 May", 9)
    ]
    text = report_text(made)
    assert "Accepted in the file, " in text
    assert " (1):\n" in text
    assert "Reason given: the letter of 12 May" in text
    assert made.heaters[0].verdict == "open"


def test_accepting_what_is_not_found_is_told_too() -> None:
    made = checked(TAP, "{finding: tank-cut-off, part: heater, reason: none}")
    assert [(idle.acceptance.finding, idle.acceptance.part) for idle in made.idle] == [("tank-cut-off", "heater")]
    (told,) = [line for line in report_text(made).splitlines() if " not found: " in line]
    assert told.endswith(" tank-cut-off of heater.")


def test_other_parts_and_other_findings_are_not_silenced() -> None:
    other = checked("{finding: static-above-limit, part: heater, reason: wrong part}")
    assert [one.name for one in other.findings] == ["static-above-limit"]
    assert len(other.idle) == 1


def test_verdict_is_not_silenced_with_its_finding() -> None:
    closed = HOUSE.replace("street -> heater", "street -> check -> heater").replace(
        "  tap:", "  check: check_valve\n  tap:"
    )
    made = checked(TAP, "{finding: trapped-expansion, part: heater, reason: to be mended in June}", text=closed)
    assert made.is_fine
    assert made.heaters[0].verdict == "trapped"
    assert "heater: TRAPPED" in report_text(made)


def test_reason_cannot_reach_the_terminal_unescaped() -> None:
    text = report_text(checked(r'{finding: static-above-limit, part: tap, reason: "\e[2J \u202e"}'))
    assert "\x1b" not in text
    assert r"\x1b[2J \u202e" in text


def test_acceptance_of_nothing_known_is_refused_with_its_place() -> None:
    tapp = refused("{finding: static-above-limit, part: tapp, reason: x}")
    assert tapp.startswith("house.yaml:9:41: no part is called ")
    assert tapp.endswith('"tapp": did you mean "tap"?')
    above = refused("{finding: static-above, part: tap, reason: x}")
    assert above.startswith("house.yaml:9:15: no finding is called ")
    assert '"static-above": did you mean ' in above
    assert above.endswith('"static-above-limit"?')
    assert refused("{finding: zzz, part: tap, reason: x}") == (
        'house.yaml:9:15: no finding is called "zzz"; the command plumbnet rules --findings lists them all'
    )
    without = refused("{finding: static-above-limit, part: tap}")
    assert without.startswith('house.yaml:9:5: an acceptance needs "reason"')


@pytest.mark.parametrize("written", ['""', '"  "', '"..."', r'"\e[ "', '"- ?"', '"\u200b\u00a0"'])
def test_reason_without_a_word_is_refused_and_silences_nothing(written: str) -> None:
    told = refused(f"{{finding: static-above-limit, part: tap, reason: {written}}}")
    assert told.startswith("house.yaml:9:54: reason: say why in words, not ")


def test_acceptance_names_a_part_or_else_all_parts() -> None:
    both = refused("{finding: static-above-limit, part: tap, parts: [tap], reason: the letter}")
    assert both == (
        "house.yaml:9:5: accept: an acceptance names the part that the finding is about, or else all its parts"
    )
    assert refused("{finding: static-above-limit, reason: the letter}") == both


def test_unknown_part_among_several_is_refused_at_its_place() -> None:
    assert refused("{finding: static-above-limit, parts: [tap, tapp], reason: the letter}") == (
        'house.yaml:9:48: no part is called "tapp": did you mean "tap"?'
    )


def test_acceptance_by_all_parts_silences_just_that_subject() -> None:
    assert checked("{finding: static-above-limit, parts: [tap], reason: the letter}").is_fine
    assert not checked("{finding: static-above-limit, parts: [tap, heater], reason: the letter}").is_fine


def test_part_that_only_a_scenario_brings_in_can_be_named() -> None:
    scenario = "scenarios: {two: {change: [{insert: {part: v, kind: valve, between: [street, heater]}}]}}\n"
    made = checked("{finding: unreached-part, part: v, reason: x}", text=HOUSE + scenario)
    assert len(made.idle) == 1
