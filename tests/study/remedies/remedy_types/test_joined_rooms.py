"""One tank for two heater rooms that a shut valve keeps apart."""

import pytest
from curing import RELIEVED, house

import plumbnet
from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.model.system import System
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.study.remedies.candidate import Effort
from plumbnet.study.remedies.remedy import Remedy
from plumbnet.study.remedies.remedy_search import remedies
from plumbnet.study.remedies.together import all_together, remedy_lists

ROOMS = """street -> tee3 -> cv -> tee -> heater -> tap.hot
           tee3 -> cv2 -> tee2 -> heater2 -> tap2.hot
           tee -> valve -> tee2"""
TANKED = f"{ROOMS}\ntee -> tank\ntee2 -> tank2"
SMALL = "volume: 2 gal, precharge: 60 psi"


def rooms(runs: str = TANKED, valve: str = "state: shut") -> System:
    tanks = {name: SMALL for name in ("tank", "tank2") if name in runs}
    return house(runs, heater2=RELIEVED, valve=valve, **tanks)


def joined(layout: System) -> list[Remedy]:
    return [one for one in remedies(layout)["heater"] if "lock it open" in one.title]


@pytest.mark.parametrize(
    ("runs", "job"),
    [
        (TANKED, "exchange tank for one of 8 gal, charged to 60 psi."),
        (ROOMS, "fit an expansion tank of 8 gal, charged to 60 psi, at tee."),
    ],
    ids=["enlarged", "added"],
)
def test_valve_is_opened_and_locked_and_one_tank_serves_both_rooms(runs: str, job: str) -> None:
    layout = rooms(runs)
    (found,) = joined(layout)
    assert found.title == f"Open valve and lock it open; then {job}"
    assert (found.effort, found.cures) == (Effort.PAIR, ("heater", "heater2"))
    after = plumbnet.check(with_changes(layout, found.changes))
    assert [one.verdict for one in after.heaters] == [Verdict.CONTROLLED, Verdict.CONTROLLED]


def test_valve_that_is_locked_shut_stays_so() -> None:
    assert joined(rooms(valve="state: shut, locked: true")) == []


def test_room_that_needs_nothing_is_not_joined() -> None:
    assert joined(house(TANKED, heater2=RELIEVED, valve="state: shut", tank=SMALL, tank2="volume: 30 gal")) == []


def test_lists_of_both_rooms_offer_the_same() -> None:
    found = remedies(rooms())
    own, others = ([one.changes for one in found[name] if one.effort is Effort.PAIR] for name in ("heater", "heater2"))
    assert own == others != []


def test_one_tank_and_a_locked_valve_are_chosen_where_they_ask_less_than_two_tanks() -> None:
    report = plumbnet.check(rooms())
    found = all_together(report, remedy_lists(report.heaters, remedies(report)))
    assert found is not None
    assert [one.effort for one in found.chosen] == [Effort.PAIR]
    assert {one.verdict for one in found.after.heaters} == {Verdict.CONTROLLED}


def test_two_tanks_are_chosen_where_they_ask_less() -> None:
    report = plumbnet.check(rooms(ROOMS.replace("tee -> valve -> tee2", "tee -> tank\ntee2 -> tank2")))
    found = all_together(report, remedy_lists(report.heaters, remedies(report)))
    assert found is not None
    assert [one.effort for one in found.chosen] == [Effort.ENLARGE, Effort.ENLARGE]
