"""How far an answer holds, in words."""

from conftest import system

import plumbnet
from plumbnet.layout.units.units import PRESSURE, TEMPERATURE
from plumbnet.report.prose.prose_blocks import Paragraph, Points, Table
from plumbnet.report.studies.margins_report import (
    ANY,
    margins_blocks,
    margins_text,
    nearness_in_words,
    number_in_words,
    range_in_words,
    turning_in_words,
)
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.study.contingency.outcome import Error, Outcome, Turn
from plumbnet.study.margins.layout_margins import margins_of
from plumbnet.study.margins.margin import Margin, Margins, Turning, UncertainNumber
from plumbnet.study.remedies.remedy_search import remedies

RELIEVED = "relief: {pressure: 150 psi, temperature: 210 degF}"
PSI = 6894.757293168361
CHARGE = UncertainNumber("tank", "precharge", PRESSURE, 60 * PSI, 0.0, 1e6, accuracy=2 * PSI)
SETPOINT = UncertainNumber("heater", "setpoint", TEMPERATURE, 333.15, 313.15, 353.15, accuracy=5 / 1.8)


def turning(holds_to: float, outcome: Outcome | None = None, *, turns_back: bool = False) -> Turning:
    return Turning(holds_to, holds_to, outcome or Outcome(), turns_back=turns_back)


def found(runs: str, **parts: str) -> Margins:
    report = plumbnet.check(system(runs, heater=RELIEVED, **parts))
    return margins_of(report, found=remedies(report))


def test_number_is_named_by_its_field_and_part() -> None:
    assert number_in_words(CHARGE) == "precharge of tank"


def test_range_is_told_between_two_turns_and_from_or_up_to_one() -> None:
    low, high = turning(55 * PSI), turning(66 * PSI)
    told = [
        range_in_words(Margin(CHARGE, *pair), "us") for pair in ((low, high), (low, None), (None, high), (None, None))
    ]
    assert told == [
        "holds between 55 psi and 66 psi",
        "holds from 55 psi",
        "holds up to 66 psi",
        "holds whatever it is",
    ]


def test_what_turns_is_told_with_verdicts_errors_and_a_way_back() -> None:
    errors = tuple(Error("tap-without-water", name) for name in ("basin", "bath", "sink"))
    one = Turning(
        1.0,
        2.0,
        Outcome((Turn("heater", Verdict.CONTROLLED, Verdict.TRAPPED),), errors),
        (Error("tank-too-small", "heater"),),
        turns_back=True,
    )
    assert turning_in_words(one) == (
        "heater: controlled to trapped; new error tap-without-water (basin and 2 more); "
        "no more error tank-too-small (heater); turns back further on"
    )
    assert turning_in_words(turning(1.0, Outcome(refused="it stands dry"))) == "nothing can be computed: it stands dry"


def test_number_nearer_to_a_turn_than_a_gauge_reads_is_told() -> None:
    near = Margin(CHARGE, None, turning(61 * PSI))
    assert nearness_in_words(near, "us") == (
        "The precharge of tank is 1 psi from a turn, no further than a gauge is read to (2 psi)."
    )
    warm = Margin(SETPOINT, None, turning(335.15))
    assert nearness_in_words(warm, "metric") == (
        "The setpoint of heater is 2 degC from a turn, no further than a thermometer is read to (2.8 degC)."
    )


def test_numbers_that_matter_stand_in_a_table_and_others_in_a_sentence() -> None:
    blocks = list(margins_blocks(found("street -> tee -> heater -> tap.hot")))
    how, table, free = blocks
    assert isinstance(how, Paragraph)
    assert how.text == (
        "Each number is moved by itself, the others as they are, to the nearest value on either side at which a "
        "verdict or an error turns. Tried were pressures up to 145 psi, setpoints within 36 degF, heights within "
        "4.9 ft, volumes from half to double."
    )
    assert isinstance(table, Table)
    (street,) = table.rows
    assert street[:2] == ("pressure of street", "60 psi")
    assert street[4:] == ("80 psi", "new error static-above-limit (tap)")
    assert isinstance(free, Paragraph)
    assert free.text == (
        "Any value of these will do, as far as was tried: setpoint of heater, volume of heater and elevation of tap."
    )


def test_cure_is_told_with_how_far_it_holds() -> None:
    blocks = list(margins_blocks(found("street -> cv -> tee -> heater -> tap.hot")))
    points = next(block for block in blocks if isinstance(block, Points))
    assert points.texts[0].startswith("The pressure of street, 60 psi, holds ")
    assert ANY not in points.texts[0]


def test_cure_that_holds_within_the_accuracy_of_a_gauge_says_so() -> None:
    blocks = list(margins_blocks(found("street -> cv -> tee -> heater -> tap.hot", heater2=RELIEVED)))
    tight = any(isinstance(block, Paragraph) and "within the accuracy of a gauge" in block.text for block in blocks)
    points = next(block for block in blocks if isinstance(block, Points))
    assert tight == any("from a turn, no further than a gauge" in text for text in points.texts)


def test_document_names_file_rules_and_the_heater_looked_at() -> None:
    report = plumbnet.check("systems/bakery-tank-right.yaml")
    text = margins_text(margins_of(report, heater="heater"))
    assert "looked at: heater: its verdict, and errors about it\n" in text
    assert "the verdict of heater, or an error about it, turns." in text.replace("\n", " ")
    assert text.startswith("Bakery on the corner, Lantern Falls, the tank is right: how far it holds\n")
    assert "SHA-256" in text


def test_layout_without_such_numbers_says_so() -> None:
    none = Margins(plumbnet.check("systems/open-house.yaml"), None, (), 0)
    assert list(margins_blocks(none)) == [
        Paragraph("The file has no number of which it is asked how far it may stray.")
    ]
