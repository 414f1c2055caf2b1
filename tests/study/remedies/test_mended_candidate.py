"""What would be broken by the way, set right with the cure."""

from curing import RELIEVED, TANKED, house, scene

from plumbnet.layout.edits.change_text import change_of
from plumbnet.layout.model.change import Change
from plumbnet.layout.model.system import System
from plumbnet.study.remedies.candidate import Candidate, Effort
from plumbnet.study.remedies.mended_candidate import proved
from plumbnet.study.remedies.remedy_types.tank_connection import add_tank

BEHIND = """street -> cv -> tee -> heater -> tap.hot
            tee -> tank
            tee -> cv2 -> heater2 -> tap2.hot"""


def made(layout: System, *changes: Change) -> Candidate | None:
    before = scene(layout)
    found = proved(before, Candidate(Effort.SET_REDUCER, "set", "do it", changes), "heater")
    return None if found is None else found[0]


def test_what_cures_and_breaks_nothing_stays_as_it_is() -> None:
    layout = house(TANKED, tank="volume: 5 gal, precharge: 30 psi")
    charge = change_of("set", {"part": "tank", "precharge": "60 psi"})
    assert made(layout, charge) == Candidate(Effort.SET_REDUCER, "set", "do it", (charge,))


def test_what_does_not_cure_is_nothing() -> None:
    layout = house(TANKED, tank="volume: 1 gal, precharge: 60 psi")
    assert made(layout, change_of("set", {"part": "tank", "volume": "1.1 gal"})) is None


def test_tank_whose_charge_no_longer_is_that_of_the_line_is_charged_anew() -> None:
    runs = "street -> prv -> cv -> tee -> heater -> tap.hot\ntee -> tank"
    layout = house(runs, street="pressure: 90 psi", prv="set: 75 psi", tank="volume: 5 gal, precharge: 75 psi")
    lower, larger = {"part": "prv", "set": "70 psi"}, {"part": "tank", "volume": "60 gal"}
    found = made(layout, change_of("set", lower), change_of("set", larger))
    assert found is not None
    assert found.title == "do it, and charge tank to 70 psi"
    assert found.changes[-1] == change_of("set", {"part": "tank", "precharge": "70 psi"})


def test_tank_behind_a_check_comes_with_one_before_it_where_heat_ups_would_pump_it_full() -> None:
    before = scene(house(BEHIND, heater2=RELIEVED, tank="volume: 5 gal"))
    candidate = next(iter(add_tank(before, before.heaters["heater2"])))
    found = proved(before, candidate, "heater2")
    assert found is not None
    told, trial = found
    assert told.title.endswith("cv2 to heater2, and fit an expansion tank of 3 gal, charged to 60 psi, at tee")
    assert told.effort is Effort.PAIR
    assert told.size_m3 > candidate.size_m3
    assert trial.after.report.facts.pumped == ()
