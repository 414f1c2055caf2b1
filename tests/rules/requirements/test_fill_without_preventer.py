"""The fill of a heating circuit: who stands in it, under which code that is enough, and in which words it is told."""

import pytest
from conftest import system

import plumbnet
from plumbnet.layout.file.loader import read_system
from plumbnet.layout.model.system import System
from plumbnet.rules.answering import Answered, answers_of
from plumbnet.rules.finding import Finding, Severity
from plumbnet.rules.four_answers import AnswerWord
from plumbnet.rules.requirement import REQUIREMENTS
from plumbnet.rules.rule_profile import profile

NAME = "fill-without-preventer"
REDUCER = "set: 12 psi"
CIRCUIT = "boiler -> pump -> emitter -> tee9 -> boiler"
FILLED = "street -> tee -> tap.cold\ntee -> {} -> prv -> tee9\n" + CIRCUIT
EUROPE, UPC = ("en-806", "en-12828", "uk-2010"), ("upc-2018", "upc-2021", "upc-2024")
INTERNATIONAL = ("ipc-2021", "ipc-2024", "irc-2021", "irc-2024")
BROAD = ("general", "us-boiler", "npc-2020", "npc-2025", "ontario-2024", "as-nzs-3500")
"""Those that take a double check and a vented dual check alike."""
EVERY = (*BROAD, *UPC, *INTERNATIONAL, *EUROPE)


def told(drawn: System, rules: str = "general") -> list[Finding]:
    return [one for one in plumbnet.check(drawn, rules=rules).findings if one.name == NAME]


def answered(drawn: System, rules: str = "general") -> list[Answered]:
    facts = plumbnet.check(drawn, rules=rules).facts
    return [one for one in answers_of(facts, profile(rules)) if one.rule.name == NAME]


def behind(kind: str, **parts: str) -> System:
    return system(FILLED.format("cv"), cv=f"kind: {kind}", prv=REDUCER, **parts)


GLYCOL = "antifreeze: {glycol: propylene, share: 0.3}"


@pytest.mark.parametrize(
    ("kind", "taken_by", "with_glycol_by"),
    [
        ("check_valve", (), ()),
        ("dual_check", (), ()),
        ("vacuum_breaker", (), ()),
        ("double_check", (*BROAD, *UPC), ()),
        ("vented_dual_check", (*BROAD, *INTERNATIONAL, *EUROPE), EUROPE),
        ("reduced_pressure_assembly", EVERY, EVERY),
    ],
)
def test_each_code_takes_the_sorts_that_it_names(
    kind: str, taken_by: tuple[str, ...], with_glycol_by: tuple[str, ...]
) -> None:
    plain, glycol = behind(kind), behind(kind, boiler=GLYCOL)
    assert {rules for rules in EVERY if not told(plain, rules)} == set(taken_by)
    assert {rules for rules in EVERY if not told(glycol, rules)} == set(with_glycol_by)


def test_plain_check_is_told_with_what_the_rules_ask_for() -> None:
    (one,) = told(read_system(REQUIREMENTS[NAME].bad.encode(), file="bad.yaml"), "ipc-2021")
    assert (one.severity, one.parts) == (Severity.ERROR, ("fill-check", "boiler"))
    assert one.text == (
        "fill-check (single check) is the best that keeps the water of boiler from the drinking water; "
        "the rules ask for vented dual check, reduced pressure or air gap."
    )
    assert one.advice == "Fit such a preventer in the line of fill-check; the code says who tests it."
    assert one.clause.startswith("IPC 608.16.2 (2015 text")


def test_reducer_alone_is_no_preventer_and_is_told_at_the_part_before_it() -> None:
    drawn = system("street -> tee -> tap.cold\ntee -> prv -> tee9\n" + CIRCUIT, prv=REDUCER, boiler=GLYCOL)
    (one,) = told(drawn, "upc-2024")
    assert one.parts == ("tee", "prv", "boiler")
    assert one.text == (
        "no backflow preventer keeps the water of boiler from the drinking water at prv; "
        "the rules ask for reduced pressure or air gap where there is antifreeze."
    )
    assert plumbnet.check(drawn).facts.circuit_of("tee").value == "water"


def test_of_two_in_one_line_the_best_counts_unless_a_tap_stands_between() -> None:
    line, best = "street -> cv1 -> tee1 -> cv2 -> prv -> tee9\n" + CIRCUIT, "kind: reduced_pressure_assembly"
    assert told(system(line, cv1=best, prv=REDUCER)) == []
    (one,) = told(system(line + "\ntee1 -> tap.cold", cv1=best, prv=REDUCER))
    assert one.text.startswith("cv2 (single check) is the best ")


def test_shut_valve_and_failed_preventer_keep_nothing_out() -> None:
    shut = system("street -> tee -> tap.cold\ntee -> valve -> tee9\n" + CIRCUIT, valve="state: shut")
    assert [one.parts for one in told(shut)] == [("valve", "boiler")]
    stuck = system(FILLED.format("cv"), cv="kind: reduced_pressure_assembly, state: stuck_open", prv=REDUCER)
    assert [one.text.partition(";")[0] for one in told(stuck)] == [
        "no backflow preventer keeps the water of boiler from the drinking water at cv"
    ]


def test_two_fills_of_one_circuit_are_asked_each_for_its_own() -> None:
    runs = FILLED.format("cv1") + "\ntee -> cv2 -> tee9"
    answers = answered(system(runs, cv1="kind: double_check", cv2="kind: check_valve", prv=REDUCER))
    assert [(one.word, one.parts[0]) for one in answers] == [(AnswerWord.MET, "cv1"), (AnswerWord.BROKEN, "cv2")]
    assert answers[0].text == "kept apart by cv1 (double check)"


@pytest.mark.parametrize(
    ("runs", "parts", "name", "text"),
    [
        ("street -> loop -> tee9", {}, "loop", "it is shut or taken off, and parts the two"),
        ("street -> gap\ngap -> tee9", {"gap": "kind: air_gap, elevation: 30 ft"}, "gap", "an air gap parts the two"),
        ("street -> cistern\ncistern -> tee9", {}, "cistern", "an air gap parts the two"),
    ],
)
def test_shut_loop_and_air_gap_part_the_two(runs: str, parts: dict[str, str], name: str, text: str) -> None:
    (one,) = answered(system(f"{runs}\n{CIRCUIT}", **parts), "upc-2024")
    assert (one.word, one.parts, one.text) == (AnswerWord.MET, (name,), text)


def test_air_gap_with_a_pump_and_a_check_behind_it_is_enough() -> None:
    runs = "street -> gap\ngap -> booster -> cv -> tee9\n" + CIRCUIT
    (one,) = answered(system(runs, gap="kind: air_gap"), "upc-2024")
    assert (one.word, one.parts) == (AnswerWord.MET, ("cv", "gap"))


def test_open_loop_is_a_joint_with_a_check_in_it() -> None:
    (one,) = told(system("street -> tee -> loop -> tee9\n" + CIRCUIT, loop="state: open"))
    assert one.text.startswith("loop (single check) is the best that keeps the water of boiler ")
    guarded = system("street -> cv -> loop -> tee9\n" + CIRCUIT, loop="state: open", cv="kind: double_check")
    assert told(guarded) == []


def test_main_that_stands_in_the_circuit_itself_is_told() -> None:
    (one,) = told(system("street -> valve -> tee9\n" + CIRCUIT))
    assert one.parts == ("street", "boiler")


def test_antifreeze_in_water_that_people_draw_is_told() -> None:
    (one,) = told(system("street -> boiler -> tap.hot", boiler=GLYCOL), "ipc-2021")
    assert one.parts == ("boiler",)
    assert one.text == (
        "people draw the water of boiler, which has antifreeze in it; "
        "the rules ask for reduced pressure or air gap between."
    )
    assert one.advice.startswith("Shut it off from the taps, flush them, ")


def test_house_without_a_heating_circuit_has_no_such_fill() -> None:
    (one,) = answered(system("street -> heater -> tap.hot"))
    assert (one.word, one.text) == (AnswerWord.NOT_APPLICABLE, "the layout has no fills of heating circuits")


def test_water_profile_asks_where_circuits_have_rules_of_their_own() -> None:
    drawn = behind("vented_dual_check")
    judged = {"water": "upc-2024", "heating": "us-boiler"}
    (one,) = (each for each in plumbnet.check(drawn, rules=judged).findings if each.name == NAME)
    assert one.clause.startswith("UPC 603.5.10")
