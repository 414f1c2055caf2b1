"""Phrases that several reports share."""

import pytest
from conftest import system

from plumbnet.report.words import driven_round, listed, spoken, where


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
    assert driven_round(["pump", "split", "heater"]) == "pump drives water through split and heater"
