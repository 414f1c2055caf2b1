"""A reducer with heated water behind it and no tank, where the rules ask for one: its words and its bounds."""

from dataclasses import replace

import pytest
from conftest import PSI, system

import plumbnet
from plumbnet.network.outlets.cut_sets import Stops
from plumbnet.rules.facts.all_facts import Facts
from plumbnet.rules.facts.device_facts import ReducerFacts
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.rules.four_answers import Breach
from plumbnet.rules.requirement import REQUIREMENTS
from plumbnet.rules.rule_profile import profile

FACTS = plumbnet.check(system("street -> prv -> heater", street="pressure: 90 psi", prv="bypass: true")).facts
(HEATER,), (BARE,) = FACTS.heaters, FACTS.reducers


def found(facts: Facts, rules: str = "upc-2024") -> list[Breach]:
    return list(REQUIREMENTS["reducer-without-tank"].breaches(facts, profile(rules)))


def behind(reducer: ReducerFacts) -> Facts:
    return replace(FACTS, heaters=(), reducers=(reducer,))


def test_reducer_that_wants_a_tank_is_told_with_what_to_do() -> None:
    (one,) = found(behind(BARE))
    assert one.parts == ("prv",)
    assert one.text == "heated water stands behind prv, and no expansion tank."
    assert one.advice == "Fit one in the cold piping downstream of prv, charged to its set of 50 psi."
    assert found(behind(BARE), "general") == []


def test_reducer_with_no_heated_water_behind_it_needs_no_tank() -> None:
    assert found(behind(replace(BARE, is_heated=False))) == []


@pytest.mark.parametrize(
    ("upstream_pa", "is_found"), [(None, True), (80 * PSI + 1_000.0, False), (80 * PSI + 1_001.0, True)]
)
def test_tank_is_asked_behind_a_reducer_that_the_code_calls_for(upstream_pa: float | None, *, is_found: bool) -> None:
    assert bool(found(behind(replace(BARE, upstream_pa=upstream_pa)))) is is_found


@pytest.mark.parametrize(
    ("verdict", "stops", "is_found"),
    [
        (Verdict.TRAPPED, (("prv",),), False),
        (Verdict.SEALED, (("cv", "prv"),), False),
        (Verdict.TRAPPED, (("cv",),), True),
        (Verdict.OPEN, (), True),
    ],
)
def test_reducer_is_not_told_beside_the_heater_that_it_shuts_in(
    verdict: Verdict, stops: tuple[tuple[str, ...], ...], *, is_found: bool
) -> None:
    heater = replace(HEATER, verdict=verdict, stopped_by=Stops(stops))
    assert bool(found(replace(FACTS, heaters=(heater,)))) is is_found
