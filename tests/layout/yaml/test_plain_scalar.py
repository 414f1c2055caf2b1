"""What an unquoted word of the file stands for."""

import math

import pytest

from plumbnet.layout.yaml.plain_scalar import WORDS, ScalarValues, resolved


@pytest.mark.parametrize("text", ["", "~", "null", "Null", "NULL"])
def test_nothing_is_null(text: str) -> None:
    assert WORDS[text] is None


@pytest.mark.parametrize(
    ("text", "value"),
    [("true", True), ("True", True), ("TRUE", True), ("false", False), ("False", False), ("FALSE", False)],
)
def test_true_and_false_are_truth_values(text: str, value: bool) -> None:  # noqa: FBT001 - the value under test
    assert WORDS[text] is value


@pytest.mark.parametrize(
    "text",
    [
        "yes",
        "no",
        "on",
        "off",
        "Yes",
        "y",
        "n",
        "tRUE",
        "nULL",
        "1:30",
        "0x1F",
        "0o17",
        "1_000",
        "2021-05-01",
        "1,000",
        "+",
        "-",
        ".",
        "..",
        "e5",
        "1e",
        "1e+",
        ".e1",
        "1 2",
        "12 gal",
        "１",
        "nan",
        "inf",
        "-.nan",
        "<<",
        "=",
    ],
)
def test_words_that_other_readers_take_for_more_are_text(text: str) -> None:
    assert ScalarValues(WORDS)[text] == text


@pytest.mark.parametrize(("text", "value"), [("0", 0), ("-7", -7), ("+62", 62), ("007", 7), ("9" * 30, int("9" * 30))])
def test_whole_numbers_are_whole(text: str, value: int) -> None:
    assert resolved(text) == value
    assert type(resolved(text)) is int


@pytest.mark.parametrize(
    ("text", "value"),
    [("1.5", 1.5), ("1.", 1.0), (".5", 0.5), ("-.5", -0.5), ("1e3", 1000.0), ("1.5E-3", 0.0015), ("9" * 31, 1e31)],
)
def test_numbers_with_point_or_exponent_are_floating(text: str, value: float) -> None:
    assert resolved(text) == value
    assert type(resolved(text)) is float


def test_numbers_without_end_are_floating() -> None:
    assert WORDS[".inf"] == WORDS["+.INF"] == math.inf
    assert WORDS["-.Inf"] == -math.inf
    assert math.isnan(float(str(WORDS[".nan"])))
    assert resolved("1e999") == math.inf
    assert resolved("1" * 1000) == math.inf


def test_digits_beyond_all_measure_are_text() -> None:
    assert resolved("1" * 10_000) == "1" * 10_000


def test_equal_scalars_share_their_value() -> None:
    values = ScalarValues(WORDS)
    assert values["62.5 psi"] is values["62.5 psi "[:-1]]
    assert "62.5 psi" not in WORDS
