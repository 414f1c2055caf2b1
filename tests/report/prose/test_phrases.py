"""Phrases that several reports share."""

import pytest
from conftest import system

import plumbnet
from plumbnet.physics.vessels.locked_volume import Bracket
from plumbnet.report.prose.phrases import driven_round, left_as_it_is, spoken, where
from plumbnet.rules.facts.heater_answer import LockedFacts
from plumbnet.rules.sentences import listed

RELIEVED = "relief: {pressure: 150 psi}"


@pytest.mark.parametrize(
    ("names", "words"), [(["a"], "a"), (["a", "b"], "a and b"), (["a", "b", "c"], "a, b and c"), ([], "nothing")]
)
def test_names_are_listed_as_a_person_does(names: list[str], words: str) -> None:
    assert listed(names) == words


def test_kind_is_spoken_with_its_article_and_without_underscores() -> None:
    assert spoken("open_tank") == "an open tank"
    assert spoken("check_valve") == "a check valve"


def test_place_of_a_device_is_between_its_neighbours() -> None:
    house = system("street -> meter -> tee -> tap.hot\ntee -> tap.cold")
    assert where(house, "meter") == "meter (between street and tee)"
    assert where(house, "street") == "street (between meter)"


def test_loop_begins_at_its_pump() -> None:
    said = driven_round(["pump", "split", "heater"])
    assert said.startswith("pump drives water")
    assert said.endswith(" split and heater")


LEFT = {
    "relief opens once it warms by 3.6 to 9 degF, 4 to 12 min of firing; 0.53 to 0.79 gal goes to waste at each "
    "heat-up": LockedFacts("relief", 1e6, Bracket(2.0, 5.0), Bracket(240.0, 720.0), Bracket(0.003, 0.002)),
    "relief opens once it warms by 3.6 degF or more; 0 to 0.79 gal goes to waste at each heat-up": LockedFacts(
        "relief", 1e6, Bracket(2.0, float("inf")), None, Bracket(0.003, 0.0)
    ),
    "street opens once it warms by 3.6 degF": LockedFacts("street", 1e6, Bracket(2.0, 2.0), None, None),
    "300 psi, to which a heater is tested, is passed once it warms by 3.6 to 9 degF": LockedFacts(
        None, 2_068_427.2, Bracket(2.0, 5.0), None, None
    ),
}


@pytest.mark.parametrize("words", LEFT)
def test_heater_left_as_it_is_is_told_from_rigid_walls_to_typical_ones(words: str) -> None:
    facts = plumbnet.check(system("street -> cv -> heater -> tap.hot")).facts
    assert left_as_it_is(facts, LEFT[words]) == words


def test_heater_whose_relief_valve_runs_is_not_told_when_it_will_open() -> None:
    report = plumbnet.check(system("street -> cv -> heater -> tap.hot", street="pressure: 160 psi", heater=RELIEVED))
    locked = report.heaters[0].locked
    assert locked is not None
    assert left_as_it_is(report.facts, locked).startswith("heater/relief runs all the time")
