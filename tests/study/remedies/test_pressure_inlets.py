"""Where the static pressure comes in, and where a new reducer would stand."""

from curing import RELIEVED, heater, house, scene

from plumbnet.layout.model.system import End, System
from plumbnet.study.remedies.pressure_inlets import Gap, PressureInlet, gap_behind, pressure_feed


def fed(layout: System) -> PressureInlet | None:
    return pressure_feed(scene(layout), heater(layout))


def test_main_without_a_reducer_is_an_entry() -> None:
    assert fed(house()) == PressureInlet((), (End("street", "out"),))


def test_reducer_on_the_way_is_found_and_what_lies_before_it_is_left_alone() -> None:
    assert fed(house("street -> prv -> prv2 -> tee -> heater -> tap.hot")) == PressureInlet(("prv2",), ())


def test_booster_is_an_entry_of_its_own() -> None:
    assert fed(house("street -> booster -> tee -> heater -> tap.hot")) == PressureInlet((), (End("booster", "out"),))


def test_well_is_not_parted_from_its_tank() -> None:
    assert fed(house("well -> tee -> heater -> tap.hot")) is None


def test_gap_is_the_last_pipe_before_the_first_branch() -> None:
    layout = house("street -> meter -> valve -> tee -> heater -> tap.hot\n tee -> tap.cold")
    assert gap_behind(layout, End("street", "out")) == Gap(End("valve", "out"), End("tee", "joint"))


def test_gap_ends_before_a_heater() -> None:
    layout = house("street -> cv -> heater -> tap.hot", heater=RELIEVED)
    assert gap_behind(layout, End("street", "out")) == Gap(End("cv", "out"), End("heater", "cold"))


def test_main_with_two_pipes_has_no_gap() -> None:
    layout = house("street -> cv -> heater -> tap.hot\n street -> tap.cold")
    assert gap_behind(layout, End("street", "out")) is None
