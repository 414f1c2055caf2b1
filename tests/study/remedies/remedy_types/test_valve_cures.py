"""A valve left shut: opened where it stops the water, and nowhere else."""

from conftest import PSI
from curing import HOUSE, RELIEVED, TANKED, cure, cured, efforts, house

from plumbnet.layout.edits.change_text import change_fields
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.study.remedies.candidate import Effort

OPEN = "street -> valve -> tee -> heater -> tap.hot"


def test_shut_valve_between_heater_and_street_is_opened() -> None:
    layout = house(OPEN, valve="state: shut")
    remedy = cure(layout, Effort.OPEN_VALVE)
    assert [change_fields(one) for one in remedy.changes] == [{"open": "valve"}]
    assert cured(layout, remedy).verdict is Verdict.OPEN is remedy.verdict
    assert remedy.title == "Open valve, and lock or tag it open."


CIRCUIT = "street -> loop -> tee -> boiler -> emitter -> pump -> tee\ntee -> tank\nboiler.relief -> relief"
RELIEF = {"relief": "pressure: 30 psi", "tank": "precharge: 12 psi"}


def test_filling_loop_left_open_is_shut() -> None:
    layout = house(CIRCUIT, loop="state: open", **RELIEF)
    remedy = cure(layout, Effort.SHUT_FILLING_LOOP, "boiler")
    assert [change_fields(one) for one in remedy.changes] == [{"set": {"part": "loop", "state": "shut"}}]
    assert remedy.verdict is Verdict.CONTROLLED
    assert remedy.title.startswith("Shut loop, ")
    assert "down to the 12 psi" in remedy.title


def test_filling_loop_that_is_shut_is_left_alone() -> None:
    layout = house(CIRCUIT, **RELIEF | {"tank": "precharge: 12 psi, volume: 0.1 gal"})
    assert Effort.SHUT_FILLING_LOOP not in efforts(layout, "boiler")
    assert Effort.ENLARGE in efforts(layout, "boiler")


def test_valve_locked_shut_stays_shut() -> None:
    assert Effort.OPEN_VALVE not in efforts(house(OPEN, valve="state: shut, locked: true"))


def test_shut_valve_with_a_check_behind_it_cures_nothing() -> None:
    assert Effort.OPEN_VALVE not in efforts(
        house("street -> cv -> valve -> tee -> heater -> tap.hot", valve="state: shut")
    )


def test_shut_valve_before_a_tank_is_opened_and_the_tank_is_not_moved() -> None:
    layout = house(f"{HOUSE}\n tee -> valve -> tank", valve="state: shut")
    assert Effort.OPEN_VALVE in efforts(layout)
    assert Effort.MOVE not in efforts(layout)
    assert cured(layout, cure(layout, Effort.OPEN_VALVE)).verdict is Verdict.CONTROLLED


def test_shut_valve_on_a_branch_is_left_alone() -> None:
    assert Effort.OPEN_VALVE not in efforts(house(f"{HOUSE}\n tee -> valve -> tap2.cold", valve="state: shut"))


def test_two_shut_valves_in_a_row_are_opened_together() -> None:
    layout = house("street -> valve -> valve2 -> tee -> heater -> tap.hot", valve="state: shut", valve2="state: shut")
    assert cure(layout, Effort.OPEN_VALVE).title == "Open valve and valve2, and lock or tag them open."


def test_valve_is_not_opened_to_a_main_that_stands_above_the_limit() -> None:
    layout = house(
        "street -> prv -> tee -> heater -> tap.hot\n street2 -> valve -> tee",
        heater=RELIEVED,
        street="pressure: 60 psi",
        street2="pressure: 95 psi",
        valve="state: shut",
    )
    assert Effort.OPEN_VALVE not in efforts(layout)
    assert 95 * PSI > 80 * PSI
    assert Effort.ADD in efforts(layout)


def test_right_tank_needs_nothing() -> None:
    assert efforts(house(TANKED)) == []
