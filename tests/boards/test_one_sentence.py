"""The answer in one sentence."""

import pytest
from conftest import system
from touched import HOUSE, reported, states_of

import plumbnet
from plumbnet.boards.one_sentence import board_sentence, safety_rung

FULL = "meter stops it; tank is full of water and takes none"


def said(*touched: tuple[str, str]) -> str:
    report = reported(states_of(HOUSE), *touched)
    return board_sentence(report, report.heaters[0])


@pytest.mark.parametrize(
    ("touched", "sentence"),
    [
        ([], "meter stops it, but tank takes up the growth: at most 77.5 psi, limit 80 psi."),
        ([("meter", "exchanged for one without a check")], "The growth goes back to street, past meter and stop."),
        (
            [("tank-stop", "shut")],
            "meter stops it; tank-stop cuts tank off. Nothing holds it below 80 psi; heater/relief opens at 150 psi.",
        ),
        ([("tank", "waterlogged")], f"{FULL}. Nothing holds it below 80 psi; heater/relief opens at 150 psi."),
        (
            [("tank", "waterlogged"), ("heater/relief", "plugged")],
            f"{FULL}, and not even a relief valve opens. DANGER: heated, something breaks.",
        ),
        (
            [("heater", "exchanged for a tankless one")],
            "meter stops it, but it fires only while water runs out of an open tap.",
        ),
    ],
)
def test_sentence_names_what_the_touch_did(touched: list[tuple[str, str]], sentence: str) -> None:
    assert said(*touched) == sentence


def test_two_ways_that_must_both_be_stopped_are_told_in_the_plural() -> None:
    report = plumbnet.check(system("street -> cv1 -> cv2 -> heater -> tap.hot", heater="relief: 150 psi"))
    assert board_sentence(report, report.heaters[0]).startswith("cv1 and cv2 stop it. Nothing holds it")


def test_tank_too_small_says_what_it_comes_to() -> None:
    report = reported(states_of(HOUSE), ("tank", "volume=2"))
    sentence = board_sentence(report, report.heaters[0])
    assert "above the limit of 80 psi" in sentence or "opens at 150 psi" in sentence
    assert safety_rung(report.heaters[0]) is not None


def test_either_of_two_sets_is_told_as_one() -> None:
    report = plumbnet.check("systems/two-heaters-own-checks.yaml")
    assert board_sentence(report, report.heaters[0]).startswith(
        "either check-a and meter, or check-b and meter stop it"
    )
