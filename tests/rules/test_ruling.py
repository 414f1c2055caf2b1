"""Rulings: what a profile is made of."""

import pytest
from pydantic import ValidationError

from plumbnet.rules.ruling import (
    ChoiceRuling,
    ExpansionReliefRuling,
    Ground,
    OutdoorTapsRuling,
    PressureRuling,
    Ruling,
    SiteRuling,
    TemperatureDifferenceRuling,
    VacuumReliefRuling,
    joined,
)


def ruling(clause: str, *, verified: bool) -> Ruling:
    return Ruling(clause=clause, verified=verified)


@pytest.mark.parametrize(
    ("clause", "verified", "ground"),
    [
        ("UPC 608.3", True, Ground.READ),
        ("UPC 608.3", False, Ground.MEMORY),
        ("common practice: nine tenths", False, Ground.PRACTICE),
        ("common practice: nine tenths", True, Ground.PRACTICE),
    ],
)
def test_clause_was_read_or_is_practice_or_is_from_memory(clause: str, ground: Ground, *, verified: bool) -> None:
    assert ruling(clause, verified=verified).ground is ground
    assert ruling(clause, verified=verified).is_certain is (ground is not Ground.MEMORY)


def test_grounds_are_told_in_these_words() -> None:
    assert [str(ground) for ground in Ground] == ["read", "common practice", "from memory"]


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


def test_difference_of_temperatures_is_one_and_no_temperature() -> None:
    fields = {"value": "5 degF", "clause": "x", "verified": True}
    ruling = TemperatureDifferenceRuling.model_validate(fields, context={"units": "us"})
    assert ruling.value_k == pytest.approx(5 / 1.8)


def test_what_is_to_be_seen_on_site_says_what() -> None:
    with pytest.raises(ValidationError, match="asks"):
        SiteRuling(asks="", clause="x", verified=False)


def test_clauses_are_joined_in_their_order_with_practice_behind_documents() -> None:
    read, recalled = ruling("Code 1", verified=True), ruling("Code 2", verified=False)
    practice = ruling("common practice: so", verified=False)
    assert joined([practice]) is practice
    assert joined([read, read]) == read
    cases = {
        "Code 1; Code 2": (read, recalled),
        "Code 2; Code 1": (recalled, read),
        "Code 1; common practice: so": (practice, read),
        "Code 2; common practice: so": (practice, recalled),
    }
    assert {clause: joined(both).clause for clause, both in cases.items()} == {clause: clause for clause in cases}
    assert [joined(both).ground for both in cases.values()] == [
        Ground.MEMORY,
        Ground.MEMORY,
        Ground.READ,
        Ground.MEMORY,
    ]
    assert joined([practice, practice]).ground is Ground.PRACTICE


def test_taps_outdoors_are_held_to_the_limit_or_to_one_of_their_own_or_to_none() -> None:
    def ruling(**values: object) -> OutdoorTapsRuling:
        return OutdoorTapsRuling.model_validate({"clause": "", "verified": False, **values}, context={"units": "us"})

    held, exempt = ruling(value="held"), ruling(value="exempt")
    assert (held.limit_pa(5e5, outdoors=True), exempt.limit_pa(5e5, outdoors=True)) == (5e5, None)
    assert ruling(value="exempt", highest="10 bar").limit_pa(5e5, outdoors=True) == 1e6
    assert {one.limit_pa(5e5, outdoors=False) for one in (held, exempt)} == {5e5}


@pytest.mark.parametrize(
    ("value", "is_asked", "above", "below"),
    [
        ("not-asked", False, False, False),
        ("above-outlets", True, True, False),
        ("fed-from-below", True, False, True),
        ("both", True, True, True),
    ],
)
def test_vacuum_relief_is_asked_of_the_stores_that_are_named(
    value: str, *, is_asked: bool, above: bool, below: bool
) -> None:
    ruling = VacuumReliefRuling.model_validate({"clause": "", "verified": False, "value": value})
    assert (ruling.is_asked, ruling.asks_above_outlets, ruling.asks_fed_from_below) == (is_asked, above, below)
