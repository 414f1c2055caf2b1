"""Why a limit reads otherwise at the heater than where it is set."""

import pytest
from conftest import system

import plumbnet
from plumbnet.analysis.water_walk.walk_search import water_walk
from plumbnet.report.trace.limit_sentence import limit_sentence

RUNS = "street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief"


def said(runs: str = RUNS, **parts: str) -> str:
    report = plumbnet.check(system(runs, **parts))
    return limit_sentence(report.facts, water_walk(report, report.heaters[0]))


@pytest.mark.parametrize(
    ("parts", "words"),
    [
        ({}, "The limit is 80 psi: the code allows no more at tap."),
        (
            {"tap": "elevation: 3 ft"},
            (
                "The limit reads 81.3 psi here: the code allows 80 psi at tap, and heater sits 3 ft lower, "
                "where it reads 1.3 psi more."
            ),
        ),
        (
            {"heater": "elevation: 10 ft", "relief": "elevation: 10 ft"},
            (
                "The limit reads 75.7 psi here: the code allows 80 psi at tap, and heater sits 10 ft higher, "
                "where it reads 4.3 psi less."
            ),
        ),
        ({"heater": "rating: 70 psi"}, "The limit is 70 psi: heater is made for no more."),
        ({"relief": "pressure: 75 psi"}, "The limit is 67.5 psi: more would leave no margin below the set of relief."),
    ],
)
def test_limit_is_told_with_what_sets_it_and_the_height_between(parts: dict[str, str], words: str) -> None:
    assert said(**parts) == words


def test_limit_beyond_a_check_that_wants_pressure_to_open_names_what_the_check_takes() -> None:
    told = said("street -> cv -> tee -> heater -> cv2 -> tap.hot", cv2="opens: 2 psi")
    assert told.startswith("The limit reads 82 psi here: the code allows 80 psi at tap, reached through cv2")
    assert told.endswith("and cv2 takes 2 psi.")


def test_limit_that_nothing_sets_says_so() -> None:
    assert "the profile's own" in said("street -> cv -> heater")
