"""A reducer's screw: the sets that hold, as a range, with the charge to match and no tap left short."""

import pytest
from curing import RELIEVED, cure, cured, efforts, house

import plumbnet
from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.edits.change_text import change_fields
from plumbnet.layout.model.change import Change
from plumbnet.layout.model.system import System
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.study.remedies.candidate import Effort

RUNS = """street -> prv -> tee -> heater -> tap.hot
          tee -> tank"""
BIG = RELIEVED.replace("relief:", "volume: 110 gal, setpoint: 140 degF, relief:")
EMPTY = "shut off from the line and empty of water"


def reduced(set_psi: float = 79, gallons: float = 20, runs: str = RUNS, **parts: str) -> System:
    """A large heater behind a reducer, with a tank charged to its set."""
    return house(
        runs,
        street="pressure: 100 psi",
        prv=f"set: {set_psi} psi",
        heater=BIG,
        tank=f"volume: {gallons} gal, precharge: {set_psi} psi",
        **parts,
    )


def holds(layout: System, set_psi: float) -> bool:
    """Whether the heater is held with the reducer and the charge at one pressure."""
    sets = [{"part": "prv", "set": f"{set_psi} psi"}, {"part": "tank", "precharge": f"{set_psi} psi"}]
    changed = with_changes(layout, [Change.model_validate({"set": one}) for one in sets])
    return plumbnet.check(changed).heaters[0].verdict is Verdict.CONTROLLED


def test_range_is_told_with_the_highest_set_and_the_charge_to_match() -> None:
    remedy = cure(reduced(), Effort.SET_REDUCER)
    assert remedy.title == (
        "Set prv to 70 psi (any set from 20 psi to 70 psi holds, with the charge to match), and charge tank to 70 "
        f"psi, {EMPTY}."
    )
    assert [change_fields(change) for change in remedy.changes] == [
        {"set": {"part": "prv", "set": "70 psi"}},
        {"set": {"part": "tank", "precharge": "70 psi"}},
    ]
    assert cured(reduced(), remedy).verdict is Verdict.CONTROLLED


@pytest.mark.parametrize("set_psi", range(20, 80, 5))
def test_every_set_of_the_range_holds_and_the_next_above_does_not(set_psi: int) -> None:
    assert holds(reduced(), set_psi) == (set_psi <= 70)


def test_screw_alone_is_enough_where_the_tank_is_charged_lower_already() -> None:
    layout = house(RUNS, street="pressure: 100 psi", prv="set: 80 psi", tank="volume: 10 gal, precharge: 60 psi")
    remedy = cure(layout, Effort.SET_REDUCER)
    assert remedy.title == "Set prv to 70 psi (any set from 20 psi to 70 psi holds)."


def test_tap_high_up_keeps_its_pressure() -> None:
    layout = reduced(runs=f"{RUNS}\ntee -> tap2.cold", tap2="elevation: 60 ft")
    assert "(any set from 50 psi to 70 psi holds, " in cure(layout, Effort.SET_REDUCER).title
    layout = reduced(runs=f"{RUNS}\ntee -> tap2.cold", tap2="elevation: 130 ft")
    assert Effort.SET_REDUCER not in efforts(layout)


def test_reducer_without_a_tank_or_beside_an_unreduced_pipe_is_left_alone() -> None:
    assert Effort.SET_REDUCER not in efforts(house("street -> prv -> tee -> heater -> tap.hot", prv="set: 79 psi"))
    beside = f"{RUNS}\nstreet2 -> cv -> tee"
    assert Effort.SET_REDUCER not in efforts(reduced(runs=beside, street2="pressure: 78 psi"))


def test_screw_that_spares_half_a_tank_comes_before_the_larger_tank() -> None:
    layout = reduced(gallons=4.5)
    titles = [remedy.title for remedy in (cure(layout, Effort.SET_REDUCER), cure(layout, Effort.ENLARGE))]
    assert titles[0].startswith("Set prv to 40 psi (any set from 20 psi to 40 psi ")
    assert titles[1] == "Set prv to 60 psi; then exchange tank for one of 10 gal, charged to 60 psi."
