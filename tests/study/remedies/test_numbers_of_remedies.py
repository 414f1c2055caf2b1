"""The number under which a remedy is printed finds it again."""

import re

import pytest
from running import run

import plumbnet
from plumbnet.study.remedies.remedy import Found, UnknownRemedy, remedy_numbered
from plumbnet.study.remedies.remedy_search import remedies

TWO = "systems/two-heaters-own-checks.yaml"


@pytest.fixture(scope="module")
def found() -> Found:
    return remedies(plumbnet.check(plumbnet.read(TWO)))


def only(found: Found, heater: str) -> Found:
    return {heater: found[heater]}


def test_number_is_the_one_that_is_printed(found: Found) -> None:
    printed = re.findall(r"^    (\d+)\. (.*)", run("remedies", TWO, "heater-b").output, re.MULTILINE)
    assert len(printed) == len(found["heater-b"]) > 1
    for number, words in printed:
        assert remedy_numbered(only(found, "heater-b"), int(number)).title.startswith(words)


@pytest.mark.parametrize("number", [0, 99, -1])
def test_number_that_there_is_not_is_told(found: Found, number: int) -> None:
    with pytest.raises(UnknownRemedy) as caught:
        remedy_numbered(only(found, "heater-b"), number)
    count = len(found["heater-b"])
    assert str(caught.value) == f"there is no remedy {number} for heater-b; it has remedies 1 to {count}"


def test_one_remedy_is_told_as_one(found: Found) -> None:
    with pytest.raises(UnknownRemedy, match="there is no remedy 2 for heater-b; it has one remedy, number 1"):
        remedy_numbered({"heater-b": found["heater-b"][:1]}, 2)


def test_heater_must_be_named_where_several_have_remedies(found: Found) -> None:
    with pytest.raises(UnknownRemedy) as caught:
        remedy_numbered(found, 1)
    assert str(caught.value) == (
        'each heater has remedies with numbers of its own; name one of them: "heater-a" and "heater-b"'
    )
    assert remedy_numbered({**only(found, "heater-a"), "heater-b": ()}, 1) == found["heater-a"][0]


def test_nothing_to_choose_from_is_told() -> None:
    with pytest.raises(UnknownRemedy, match="no heater here needs a remedy"):
        remedy_numbered({}, 1)
    with pytest.raises(UnknownRemedy, match="no remedy was found"):
        remedy_numbered({"heater": ()}, 1)
