"""Rulings: what a profile is made of."""

import pytest
from pydantic import ValidationError

from plumbnet.rules.ruling import ChoiceRuling, ExpansionReliefRuling, PressureRuling, Ruling


def ruling(clause: str, *, verified: bool) -> Ruling:
    return Ruling(clause=clause, verified=verified)


def test_clause_is_certain_if_it_was_read_or_is_no_more_than_practice() -> None:
    assert ruling("UPC 608.3", verified=True).is_certain
    assert ruling("common practice: nine tenths", verified=False).is_certain
    assert not ruling("UPC 608.3", verified=False).is_certain


def test_choice_is_asked_or_not() -> None:
    assert ChoiceRuling(value="asked", clause="x", verified=True).is_asked
    assert not ChoiceRuling(value="not-asked", clause="x", verified=True).is_asked


def test_value_without_its_clause_is_no_ruling() -> None:
    with pytest.raises(ValidationError, match="clause"):
        PressureRuling.model_validate({"value": 3.0, "verified": True}, context={"units": "us"})


def test_valve_counts_up_to_the_highest_set_and_a_rounding_of_scales() -> None:
    ruling = ExpansionReliefRuling.model_validate(
        {"value": "counts", "highest_set": "500 kPa", "clause": "x", "verified": True}, context={"units": "us"}
    )
    assert ruling.highest_set_pa is not None
    assert ruling.takes_set(ruling.highest_set_pa + 1_000.0)
    assert not ruling.takes_set(ruling.highest_set_pa + 1_001.0)
