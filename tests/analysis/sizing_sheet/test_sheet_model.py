"""The shape of a calculation sheet."""

from dataclasses import FrozenInstanceError, fields

import pytest
from conftest import system

import plumbnet
from plumbnet.analysis.sizing_sheet.sheet_model import SheetResult
from plumbnet.analysis.sizing_sheet.sizing_sheet import sheet
from plumbnet.rules.facts.verdict_words import Verdict


def test_sheet_carries_the_verdict_of_its_heater() -> None:
    made = plumbnet.check(system("street -> heater -> tap.hot"))
    assert sheet(made, made.heaters[0]).verdict is Verdict.OPEN


def test_sheet_cannot_be_changed() -> None:
    made = plumbnet.check(system("street -> heater -> tap.hot"))
    with pytest.raises(FrozenInstanceError):
        sheet(made, made.heaters[0]).title = "another"  # type: ignore[misc]  # that is what is tried


def test_refused_tank_holds_nothing_but_its_place() -> None:
    outcome = SheetResult("split", refusal="no tank")
    given = {field.name for field in fields(outcome) if getattr(outcome, field.name)}
    assert given == {"at", "refusal"}
