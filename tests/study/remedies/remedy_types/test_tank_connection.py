"""Tanks moved and added."""

import pytest
from curing import HOUSE, RELIEVED, cure, cured, efforts, house, psi

from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.edits.change_text import change_fields
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.study.remedies.candidate import Effort

CUT_OFF = """street -> tee -> cv -> heater -> tap.hot
             tee -> tank"""


def test_tank_is_added_at_the_tee_with_the_size_and_charge_it_needs() -> None:
    layout = house()
    remedy = cure(layout, Effort.ADD)
    assert [change_fields(one) for one in remedy.changes] == [
        {
            "add": {
                "part": "heater-tank",
                "kind": "expansion_tank",
                "run": "tee -> heater-tank",
                "volume": "5 gal",
                "precharge": "60 psi",
            }
        }
    ]
    assert remedy.title.startswith("Fit an expansion tank of 5 gal")
    assert remedy.title.endswith("charged to 60 psi, at tee.")
    assert cured(layout, remedy).verdict is Verdict.CONTROLLED is remedy.verdict


def test_added_tank_takes_only_what_the_small_one_leaves() -> None:
    layout = house(f"{HOUSE}\n tee -> tank", tank="volume: 2 gal")
    (change,) = cure(layout, Effort.ADD).changes
    assert change_fields(change)["add"] == {
        "part": "heater-tank",
        "kind": "expansion_tank",
        "run": "tee -> heater-tank",
        "volume": "2 gal",
        "precharge": "60 psi",
    }


def test_several_tanks_are_hung_side_by_side_where_no_size_is_large_enough() -> None:
    layout = house(heater=f"volume: 40000 gal, {RELIEVED}")
    remedy = cure(layout, Effort.ADD)
    names = [change.add.part for change in remedy.changes if change.add is not None]
    assert names[:2] == ["heater-tank", "heater-tank-2"]
    assert len(names) == len(set(names)) > 2
    assert cured(layout, remedy).verdict is Verdict.CONTROLLED


def test_no_tank_is_added_where_the_static_pressure_stands_at_the_limit() -> None:
    assert Effort.ADD not in efforts(house(street="pressure: 85 psi"))


def test_name_of_a_new_tank_is_not_one_that_is_there() -> None:
    runs = f"{HOUSE}\n tee -> heater-tank.cold"
    layout = house(runs, **{"heater-tank": "kind: fixture"})
    assert "heater-tank-2" in with_changes(layout, cure(layout, Effort.ADD).changes).parts


def test_tank_that_is_cut_off_is_moved_behind_the_check_and_keeps_its_size() -> None:
    layout = house(CUT_OFF, tank="volume: 8 gal, precharge: 50 psi, elevation: 20 ft")
    remedy = cure(layout, Effort.MOVE)
    assert [next(iter(change_fields(one))) for one in remedy.changes] == ["remove", "insert", "add"]
    moved = with_changes(layout, remedy.changes).parts["tank"].cushion()
    assert moved is not None
    assert psi(moved.precharge_pa) == 60.0
    assert moved.volume_m3 == pytest.approx(8 * 0.003785411784)
    assert cured(layout, remedy).verdict is Verdict.CONTROLLED


def test_tank_that_is_too_small_to_cure_is_not_moved() -> None:
    assert efforts(house(CUT_OFF, tank="volume: 1 gal")) == [Effort.ADD]


def test_tank_that_serves_another_heater_is_not_moved_away() -> None:
    runs = """street -> cv -> tee -> heater -> tap.hot
              tee -> tank
              tee -> cv2 -> heater2 -> tap2.hot"""
    layout = house(runs, heater2=RELIEVED, tank="volume: 15 gal")
    assert Effort.MOVE not in efforts(layout, "heater2")
    assert Effort.PAIR in efforts(layout, "heater2")  # a tank of its own, and one more before cv2 for its holidays


def test_tank_of_a_well_stays_with_its_pump() -> None:
    runs = """well -> tee -> cv -> heater -> tap.hot
              tee -> tank"""
    assert Effort.MOVE not in efforts(house(runs, tank="volume: 20 gal, precharge: 28 psi"))
