"""The nearest turn on one side of a number."""

from conftest import PSI, system

import plumbnet
from plumbnet.study.margins.margin import UncertainNumber
from plumbnet.study.margins.margin_trials import MarginTrials
from plumbnet.study.margins.turning_search import BEHIND_PA, STEPS, TurningSearch, step_of
from plumbnet.study.margins.uncertain_numbers import uncertain_numbers

RELIEVED = "relief: {pressure: 150 psi, temperature: 210 degF}"
TANKED = """street -> cv -> tee -> heater -> tap.hot
            tee -> tank"""


def search(runs: str, part: str, field: str, events: tuple[float, ...] = (), **parts: str) -> TurningSearch:
    report = plumbnet.check(system(runs, heater=RELIEVED, **parts))
    number = next(one for one in uncertain_numbers(report) if (one.part, one.field) == (part, field))
    return TurningSearch(MarginTrials(report), number, events)


def test_event_that_turns_is_told_to_a_few_pascal() -> None:
    with_event = search("street -> heater -> tap.hot", "street", "pressure", (80 * PSI,)).above()
    assert with_event is not None
    assert with_event.turns_at - with_event.holds_to < BEHIND_PA + 100
    assert abs(with_event.holds_to - 80 * PSI) < 100


def test_turn_between_two_events_is_found_by_halving() -> None:
    turn = search("street -> heater -> tap.hot", "street", "pressure").above()
    assert turn is not None
    assert turn.holds_to <= 80 * PSI + 1 < turn.turns_at


def test_island_between_two_events_is_found_and_told_to_turn_back() -> None:
    """The charge counts: between 0 and far too much something holds; an event stands where it begins."""
    one = search(TANKED, "tank", "precharge", tank="volume: 6 gal, precharge: 0 psi")
    assert one.above() is None, "at both ends the heater is trapped, and nobody has looked between"
    looked = TurningSearch(one.trials, one.number, (60 * PSI,)).above()
    assert looked is not None
    assert looked.turns_back
    assert looked.outcome.turns[0].after.value == "controlled"


def test_end_is_the_farthest_value_that_the_part_can_have() -> None:
    one = search("street -> heater -> tap.hot", "street", "highest", street="pressure: 50 psi, highest: 60 psi")
    assert abs(one.end(0.0) - 50 * PSI) < 1
    assert one.end(70 * PSI) == 70 * PSI
    assert one.below() is None


def test_step_of_a_volume_is_a_share_of_it() -> None:
    one = search(TANKED, "tank", "volume", tank="volume: 6 gal").number
    assert step_of(one) == 0.01 * one.told
    charge = UncertainNumber("tank", "precharge", next(iter(STEPS)), 1.0, 0.0, 2.0)
    assert step_of(charge) == STEPS[charge.dimension]
