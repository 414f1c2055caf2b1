"""One list for heaters that share water, and the chosen remedies of all lists made together."""

from curing import RELIEVED, house

import plumbnet
from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.model.system import System
from plumbnet.rules.facts.verdict_words import TROUBLED
from plumbnet.study.remedies.remedy_search import remedies
from plumbnet.study.remedies.together import AllTogether, all_together, remedy_lists

SHARED = "street -> cv -> tee -> heater -> tee2 -> tap.hot\ntee -> heater2 -> tee2"
APART = "street -> cv -> tee -> heater -> tap.hot\nstreet -> cv2 -> tee2 -> heater2 -> tap2.hot"
ROW = "street -> cv -> tee -> heater -> tap.hot\ntee -> cv2 -> tee2 -> heater2 -> tap2.hot"


def together(layout: System) -> AllTogether | None:
    report = plumbnet.check(layout)
    return all_together(report, remedy_lists(report.heaters, remedies(report)))


def listed(layout: System) -> list[tuple[tuple[str, ...], int]]:
    report = plumbnet.check(layout)
    return [(one.heaters, len(one.remedies)) for one in remedy_lists(report.heaters, remedies(report))]


def test_heaters_that_share_their_water_have_one_list() -> None:
    assert listed(house(SHARED, heater2=RELIEVED)) == [(("heater", "heater2"), 1)]


def test_heaters_apart_have_a_list_each() -> None:
    assert listed(house(APART, heater2=RELIEVED)) == [(("heater",), 1), (("heater2",), 1)]


def test_one_list_is_no_company() -> None:
    assert together(house(SHARED, heater2=RELIEVED)) is None


def test_first_of_each_list_are_made_together_and_hold_everything() -> None:
    layout = house(APART, heater2=RELIEVED)
    found = together(layout)
    assert found is not None
    assert (found.cures, found.left) == (("heater", "heater2"), ())
    assert len(found.chosen) == 2
    after = plumbnet.check(with_changes(layout, found.changes))
    assert not any(one.verdict in TROUBLED for one in after.heaters)


def test_one_remedy_that_cures_both_lists_is_made_once() -> None:
    # both heaters stand above their limit for one tank that is charged wrong
    runs = f"{ROW}\ntee2 -> tank"
    layout = house(runs, heater2=RELIEVED, tank="volume: 20 gal, precharge: 12 psi")
    report = plumbnet.check(layout)
    lists = remedy_lists(report.heaters, remedies(report))
    found = all_together(report, lists)
    assert found is None or len({one.title for one in found.chosen}) == len(found.chosen)


def test_what_is_done_to_a_hotel_of_two_heater_rooms_is_said_once_for_the_reducer_they_share() -> None:
    runs = """street -> prv -> tee3
              tee3 -> cv -> tee -> heater -> tap.hot
              tee -> tank
              tee3 -> cv2 -> tee2 -> heater2 -> tap2.hot
              tee2 -> tank2"""
    large = RELIEVED.replace("relief:", "volume: 110 gal, relief:")
    layout = house(
        runs,
        street="pressure: 100 psi",
        prv="set: 79 psi",
        heater=large,
        heater2=large,
        tank="volume: 20 gal, precharge: 79 psi",
        tank2="volume: 20 gal, precharge: 79 psi",
    )
    found = together(layout)
    assert found is not None
    assert found.left == ()
    assert sum("prv" in repr(change) for change in found.changes) == 1
