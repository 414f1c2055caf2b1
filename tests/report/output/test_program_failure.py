"""A failure of the program is told as one, in a single sentence."""

import math

import pytest

from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.report.output.program_failure import WHERE_TO_REPORT, program_failed
from plumbnet.rules import rule_profile


def test_innermost_line_of_the_program_is_named() -> None:
    with pytest.raises(AttributeError) as raised:
        rule_profile.profile_at(None)  # type: ignore[arg-type]  # what fails is the point
    told = program_failed(raised.value)
    assert "; rules/profile_base.py, line " in told.text
    assert (told.line, told.hint) == (0, WHERE_TO_REPORT)


def test_error_that_says_nothing_is_named_alone() -> None:
    assert program_failed(MemoryError()).text.endswith("(MemoryError; plumbnet 0.1.0)")


def test_what_an_error_says_is_one_line_of_bearable_length() -> None:
    told = program_failed(ValueError("a\nb " + "c" * 1_000)).text
    assert "ValueError: a b ccc" in told
    assert len(told) < 300


def test_failure_outside_the_program_has_no_place() -> None:
    with pytest.raises(ValueError, match=r".") as raised:
        math.sqrt(-1)
    assert ".py" not in program_failed(raised.value).text


def test_sentence_is_like_that_of_any_other_mistake() -> None:
    assert "by a mistake of its own" in str(LayoutError("a.yaml", [program_failed(KeyError("x"))]))
